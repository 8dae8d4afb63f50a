import { parseCellName } from '../formula/cell-name.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import type { ScopeColumn, ScopeField, ScopeLine, ScopeTable, Unreadable } from '../formula/scope.ts';
import type { ColumnCompiler } from './compile-column.ts';
import { onlyCase, type ProductFields } from './compiled-stack.ts';
import type { DeclaredNames, DeclaredTable } from './declared-names.ts';
import { typeOfNeed } from './needs.ts';
import type { RowPlace, ScopeMaker } from './scope-maker.ts';
import type { Layer, Need } from './sheet-schema.ts';
import { notSaid } from './written-text.ts';

const height: Readonly<Record<Layer, number>> = { pricelist: 0, shop: 1, floor: 2, system: 3, part: 3 };
const faulty: ValueType = { kind: 'faulty' };

/** Answers what the names of a stack mean, from each layer. */
export class StackNames {
  readonly columns: ColumnCompiler;
  private readonly declared: DeclaredNames;
  private readonly products: ProductFields;
  private readonly lineType: (name: string) => ValueType | undefined;

  constructor(
    declared: DeclaredNames,
    products: ProductFields,
    lineType: (name: string) => ValueType | undefined,
    columns: ColumnCompiler,
  ) {
    this.declared = declared;
    this.products = products;
    this.lineType = lineType;
    this.columns = columns;
  }

  readonly scope: ScopeMaker = (layer, row) => ({
    ...(row !== undefined && { ownTable: row.table }),
    mayReadAbove: row?.mayReadAbove ?? false,
    line: (name) => this.line(name, layer),
    table: (name) => this.table(name, layer, row),
    productField: (kinds, field) => this.productField(kinds, field),
    names: () => this.visible(layer, row),
  });

  private line(name: string, layer: Layer): ScopeLine | undefined {
    const declared = this.declared.lines.get(name);
    if (declared === undefined) {
      const need = this.declared.needs.get(name);
      if (need !== undefined) return needed(need, 'line');
      return this.declared.broken.has(name) ? { kind: 'line', type: faulty } : undefined;
    }
    if (height[declared.layer] > height[layer]) return { kind: 'tooHigh', stands: declared.layer };
    if (declared.line.kind === 'words') return wordsSaying(declared.line.unsaid);
    if (declared.line.kind === 'text') return { kind: 'unreadable', what: 'free text' };
    if (declared.line.kind === 'check') return { kind: 'unreadable', what: 'a check' };
    return { kind: 'line', type: this.lineType(name) ?? faulty };
  }

  private table(name: string, layer: Layer, row: RowPlace | undefined): ScopeTable | undefined {
    const declared = this.declared.tables.get(name);
    if (declared === undefined) return this.neededTable(name);
    const columnNames = declared.table.columns.map((column) => column.name);
    if (height[declared.layer] > height[layer])
      return { column: () => undefined, columnNames, tooHigh: declared.layer };
    const own = row?.table === name ? row : undefined;
    return { columnNames, column: (column) => this.column(declared, column, own) };
  }

  private column(table: DeclaredTable, name: string, own: RowPlace | undefined): ScopeColumn | undefined {
    const definition = table.table.columns.find((column) => column.name === name);
    if (definition === undefined) return undefined;
    if (definition.kind === 'words') return wordsSaying(definition.unsaid);
    if (definition.kind === 'text') return { kind: 'unreadable', what: 'free text' };
    if (definition.kind === 'check') return { kind: 'unreadable', what: 'a check' };
    const mixed = definition.kind === 'entry' && definition.unitBy !== undefined;
    const type = this.columns.typeOf(table, definition, own?.unitCase ?? onlyCase);
    return { kind: mixed ? 'mixedUnits' : 'column', type };
  }

  private neededTable(name: string): ScopeTable | undefined {
    const columns = new Map<string, Need>();
    for (const need of this.declared.needs.values()) {
      const needed = parseCellName(need.name);
      if (needed?.kind === 'column' && needed.table === name) columns.set(needed.column, need);
    }
    const broken = this.declared.broken.has(name);
    if (columns.size === 0 && !broken) return undefined;
    return {
      columnNames: [...columns.keys()],
      column: (column) => {
        const need = columns.get(column);
        if (need !== undefined) return needed(need, 'column');
        return broken ? { kind: 'column', type: faulty } : undefined;
      },
    };
  }

  private productField(kinds: readonly string[], name: string): ScopeField {
    const field = this.products.fields.get(name);
    if (field === undefined) return { kind: 'unknown', fields: [...this.products.fields.keys()] };
    const lacking = kinds.filter((kind) => field.kinds !== undefined && !field.kinds.includes(kind));
    return lacking.length > 0 ? { kind: 'lacking', kinds: lacking } : { kind: 'field', type: field.type };
  }

  private *visible(layer: Layer, row: RowPlace | undefined): Iterable<string> {
    for (const column of this.declared.tables.get(row?.table ?? '')?.table.columns ?? []) yield column.name;
    for (const [name, line] of this.declared.lines) if (height[line.layer] <= height[layer]) yield name;
    for (const [name, table] of this.declared.tables) if (height[table.layer] <= height[layer]) yield name;
    yield* this.declared.needs.keys();
  }
}

function needed<K extends 'line' | 'column'>(need: Need, kind: K): { kind: K; type: ValueType } | Unreadable {
  return need.kind === 'words' ? wordsSaying(undefined) : { kind, type: typeOfNeed(need) };
}

function wordsSaying(unsaid: string = notSaid): Unreadable {
  return { kind: 'unreadable', what: 'words that a person writes', unsaid };
}
