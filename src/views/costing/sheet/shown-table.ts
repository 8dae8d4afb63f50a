import type { CellPlace, CellValue } from '../../../formula/cells.ts';
import { isCode } from '../../../formula/code-text.ts';
import { FormulaReader } from '../../../template/compile-formula.ts';
import { type CompiledColumn, type CompiledTable, caseOf } from '../../../template/compiled-stack.ts';
import type { ColumnFile, RowCell, RowFile } from '../../../template/line-schema.ts';
import { ownValue } from '../../../template/own-value.ts';
import type { OptionRow } from '../../../template/plan.ts';
import { rowWords } from '../../../template/table-rows.ts';
import { writtenIn } from '../../../template/written-words.ts';
import type { ShownField } from '../../parts/shown-field.ts';
import { KeptViews } from '../kept-views.ts';
import { type FieldMaker, plainStandard, type ShownInstead } from './field-maker.ts';
import { type ShownColumn, shownColumn } from './shown-column.ts';
import { tellingColumns } from './telling-columns.ts';

export interface ShownTable {
  readonly name: string;
  readonly title: string;
  /** Whether rows may be added and taken away. */
  readonly free: boolean;
  readonly columns: readonly ShownColumn[];
  readonly rows: readonly ShownRow[];
  /** The columns whose numbers a closed card shows, at most three. */
  readonly telling: readonly string[];
}

export interface ShownRow {
  readonly id: string;
  readonly label: string;
  readonly fields: readonly ShownField[];
}

/** The tables that were made of a sheet before. */
export interface KeptTables {
  readonly tables: KeptViews<ShownTable>;
  readonly rows: KeptViews<ShownRow>;
  readonly columns: KeptViews<readonly ShownColumn[]>;
  /** Tables with a number typed over a formula, which is shown beside it and may read any line below. */
  readonly typedOver: Set<string>;
}

export function noTables(): KeptTables {
  return { tables: new KeptViews(), rows: new KeptViews(), columns: new KeptViews(), typedOver: new Set() };
}

/** Of a cell that the plan does not have. */
const noType = { kind: 'truth' } as const;

/** Makes the tables of a sheet. What is the same as in `kept` is the same object. */
export class TableMaker {
  private readonly maker: FieldMaker;
  private readonly kept: KeptTables;

  constructor(maker: FieldMaker, kept: KeptTables) {
    this.maker = maker;
    this.kept = kept;
  }

  table(name: string): ShownTable | undefined {
    const table = this.maker.results.stack.tables.get(name);
    if (table === undefined) return undefined;
    const before =
      this.maker.holdsAsBefore(name) && !this.kept.typedOver.has(name) ? this.kept.tables.last(name) : undefined;
    if (before !== undefined && this.maker.readsAsBefore(name)) return before;
    const columns = [...table.columns.values()].filter(
      ({ definition }) => definition.kind !== 'check' && definition.kind !== 'text',
    );
    const rows = this.rows(table, columns, before?.rows);
    const details = columns.map(
      ({ definition }) => definition.detail === true || !this.isShown(definition, name, rows.length),
    );
    const heads = this.kept.columns.view(name, [table, this.maker.measures, ...details], () =>
      columns.map((column, at) => shownColumn(column, details[at] ?? false, this.maker.measures)),
    );
    return this.kept.tables.view(name, [table, heads, ...rows], () => ({
      name,
      title: table.definition.title,
      free: table.definition.rows === 'free',
      columns: heads,
      rows,
      telling: tellingColumns(columns),
    }));
  }

  /** The rows of a table; values that read as `before` are the same objects. */
  private rows(table: CompiledTable, columns: readonly CompiledColumn[], before: readonly ShownRow[] = []): ShownRow[] {
    const { name } = table.definition;
    if (before.length === 0) this.kept.typedOver.delete(name);
    const ownCells = this.ownCells(table);
    const cells = columns.map(
      ({ definition }) => this.maker.results.option.plan.tables.get(name)?.columns.get(definition.name) ?? [],
    );
    return (this.maker.results.option.rows.get(name) ?? []).map((row, at): ShownRow => {
      const { id, label } = row;
      const standing = before[at]?.fields;
      const own = ownCells(id);
      const fields = columns.map((column, of) => {
        const shown = this.maker.cellReadsAsBefore(cells[of]?.[at] ?? -1) ? standing?.[of] : undefined;
        const given = column.definition.kind === 'key' ? ownName(own, column.definition.name) : undefined;
        return shown ?? this.cell(table, column, row, at, given ?? ownValue(own, column.definition.name));
      });
      return this.kept.rows.view(`${name}.${id}`, [label, ...fields], () => ({ id, label, fields }));
    });
  }

  /** Whether some row has a code for which the column is shown. */
  private isShown({ shownFor }: ColumnFile, table: string, rows: number): boolean {
    if (shownFor === undefined) return true;
    const cells = this.maker.results.option.plan.tables.get(table)?.columns.get(shownFor.column) ?? [];
    return cells.slice(0, rows).some((cell) => shownFor.codes.some((code) => code === this.maker.results.read(cell)));
  }

  private cell(
    table: CompiledTable,
    column: CompiledColumn,
    row: OptionRow,
    at: number,
    own: RowCell | undefined,
  ): ShownField {
    const { definition } = column;
    const cell = this.maker.results.option.plan.tables.get(table.definition.name)?.columns.get(definition.name)?.[at];
    const type = (cell === undefined ? undefined : this.maker.results.option.plan.cells[cell]?.type) ?? noType;
    const stored = this.maker.tables[table.definition.name]?.cells?.[row.id]?.[definition.name];
    const ownFormula = typeof own === 'object';
    const standard = ownFormula ? undefined : standardCell(definition, own);
    const worked = stored === undefined ? undefined : this.workedAt(table, column, row, at, own);
    if (worked !== undefined) this.kept.typedOver.add(table.definition.name);
    const words = writtenIn(this.maker.results.option.written, table.definition.name, definition.name, at);
    const unnamed = words === undefined ? {} : { shown: words, typed: words };
    const instead = definition.kind === 'key' ? nameOf(table, row) : unnamed;
    const name = `${table.definition.name}.${row.id}.${definition.name}`;
    return this.maker.field(name, { definition, type, cell, stored, standard, ownFormula, worked }, instead);
  }

  /** What each row of a table gives itself, by its id, under what is entered over it. */
  private ownCells(table: CompiledTable): (row: string) => RowFile {
    const standard = new Map(table.rows.map(({ id, cells }) => [id, cells]));
    const added = this.maker.tables[table.definition.name]?.added ?? {};
    return (row) => {
      const cells = ownValue(added, row);
      return cells === undefined ? (standard.get(row) ?? {}) : { ...table.definition.newRow, ...cells };
    };
  }

  /** What the formula of a cell gives that a number was typed over. */
  private workedAt(
    table: CompiledTable,
    column: CompiledColumn,
    row: OptionRow,
    at: number,
    own: RowCell | undefined,
  ): CellValue | undefined {
    const { name } = table.definition;
    const place: CellPlace = { kind: 'cell', table: name, column: column.definition.name, row: at };
    const found = caseOf(column, row.unitCase);
    if (found === undefined) return undefined;
    if (column.definition.kind === 'formula')
      return this.maker.evaluate(at === 0 && found.first !== undefined ? found.first : found.tree, place);
    if (typeof own !== 'object') return undefined;
    const scope = this.maker.results.stack.scope(table.layer, {
      table: name,
      unitCase: row.unitCase,
      mayReadAbove: false,
    });
    return this.maker.evaluate(new FormulaReader(() => undefined).read(own.formula, scope, found.type, row.id), place);
  }
}

/** What a row is called. People name the rows that they add, so there the name is written. */
function nameOf({ definition }: CompiledTable, { label }: OptionRow): ShownInstead {
  return definition.rows === 'free'
    ? { shown: label, typed: label, chosen: '', kind: 'words' }
    : { shown: label, kind: 'result' };
}

/** What a row is called before anybody renames it. */
function ownName(own: RowFile, key: string): string | undefined {
  const name = ownValue(own, key);
  if (typeof name !== 'string') return undefined;
  return isCode(name) || typeof ownValue(own, 'label') === 'string' ? rowWords(own, name) : name;
}

function standardCell(definition: ColumnFile, own: Exclude<RowCell, object> | undefined): number | string | undefined {
  if (definition.kind === 'words') return own ?? definition.words;
  return plainStandard(own ?? ('default' in definition ? definition.default : undefined));
}
