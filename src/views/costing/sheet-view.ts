import type { CellPlace, CellValue } from '../../formula/cells.ts';
import type { Checked } from '../../formula/checked-tree.ts';
import type { PartEvaluator } from '../../formula/evaluate-part.ts';
import { unitOf } from '../../formula/value-type.ts';
import { evaluatorOf, type OptionResults, writtenLine } from '../../quote/option-results.ts';
import {
  entriesAt,
  layerOf,
  type QuoteDocument,
  type SheetPlace,
  type StoredTable,
  type StoredValue,
} from '../../quote/quote-document.ts';
import { filledLine } from '../../quote/said-texts.ts';
import { FormulaReader } from '../../template/compile-formula.ts';
import { type CompiledColumn, type CompiledTable, caseOf } from '../../template/compiled-stack.ts';
import type { ComposedSection } from '../../template/composed-sheet.ts';
import type { ColumnFile, LineFile, RowCell, RowFile } from '../../template/line-schema.ts';
import { ownValue } from '../../template/own-value.ts';
import type { OptionRow } from '../../template/plan.ts';
import { writtenIn } from '../../template/written-words.ts';
import type { Measures } from '../../units/measures.ts';
import { labelIn } from '../../units/said-units.ts';
import { serialDay } from '../../units/serial-day.ts';
import { type FieldOption, type FieldParts, type FieldView, fieldView } from './field-view.ts';
import { KeptViews } from './kept-views.ts';
import { tellingColumns } from './telling-columns.ts';

/** A sheet as a screen shows it. */
export interface SheetView {
  readonly title: string;
  readonly sections: readonly SectionView[];
}

export interface SectionView {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly lines: readonly FieldView[];
  readonly tables: readonly TableView[];
}

export interface TableView {
  readonly name: string;
  readonly title: string;
  /** Whether rows may be added and taken away. */
  readonly free: boolean;
  readonly columns: readonly ColumnView[];
  readonly rows: readonly RowView[];
  /** The columns whose numbers a closed card shows, at most three. */
  readonly telling: readonly string[];
}

export interface ColumnView {
  readonly name: string;
  readonly label: string;
  readonly group: string;
  readonly detail: boolean;
  /** Words stand left, numbers right. */
  readonly words: boolean;
}

export interface RowView {
  readonly id: string;
  readonly label: string;
  readonly fields: readonly FieldView[];
}

export type ProductNames = ReadonlyMap<string, FieldOption & { readonly kind: string }>;

/** What was made of a sheet before, to be given again where nothing of it changed. */
export interface KeptSheet {
  readonly sections: KeptViews<SectionView>;
  readonly tables: KeptViews<TableView>;
  readonly rows: KeptViews<RowView>;
  readonly fields: KeptViews<FieldView>;
}

export function nothingKept(): KeptSheet {
  return { sections: new KeptViews(), tables: new KeptViews(), rows: new KeptViews(), fields: new KeptViews() };
}

/** The sheet at `place` with the numbers of one option in `measures`. What is the same as in `kept` is the same object. */
export function sheetView(
  quote: QuoteDocument,
  place: SheetPlace,
  results: OptionResults,
  products: ProductNames,
  kept: KeptSheet = nothingKept(),
  measures: Measures = 'us',
): SheetView {
  const layer = layerOf(place);
  const sheet = results.stack.sheets.find((candidate) => candidate.layer === layer);
  const maker = new SheetViewMaker(quote, place, results, products, kept, measures);
  return { title: sheet?.title ?? '', sections: (sheet?.sections ?? []).map((section) => maker.section(section)) };
}

type ShownInstead = Partial<Pick<FieldView, 'shown' | 'kind' | 'typed'>>;

/** Of a cell that the plan does not have. */
const noType = { kind: 'truth' } as const;

class SheetViewMaker {
  private readonly results: OptionResults;
  private readonly products: ProductNames;
  private readonly lines: Readonly<Record<string, StoredValue>>;
  private readonly tables: Readonly<Record<string, StoredTable>>;
  private readonly evaluator: PartEvaluator;
  private readonly kept: KeptSheet;
  private readonly measures: Measures;

  constructor(
    quote: QuoteDocument,
    place: SheetPlace,
    results: OptionResults,
    products: ProductNames,
    kept: KeptSheet,
    measures: Measures,
  ) {
    const entries = entriesAt(quote, place);
    this.results = results;
    this.evaluator = evaluatorOf(results);
    this.products = products;
    this.kept = kept;
    this.measures = measures;
    this.lines = entries?.lines ?? {};
    this.tables = entries?.tables ?? {};
  }

  section(section: ComposedSection): SectionView {
    const { id, title, note = '' } = section;
    const lines = section.lines.flatMap(({ line }) => this.line(line.name) ?? []);
    const tables = section.tables.flatMap(({ table }) => this.table(table.name) ?? []);
    return this.kept.sections.view(id, [section, ...lines, ...tables], () => ({ id, title, note, lines, tables }));
  }

  private line(name: string): FieldView | undefined {
    const line = this.results.stack.lines.get(name);
    if (line === undefined || line.definition.kind === 'check') return undefined;
    const { definition, type } = line;
    // A text is told only while its condition holds: an unmet “Go” must not stand on the sheet.
    const isConditional = definition.kind === 'text' && line.tree !== undefined;
    if (isConditional && this.evaluate(line.tree, { kind: 'line', name }) !== true) return undefined;
    const cell = this.results.option.plan.lines.get(name);
    const standard =
      definition.kind === 'words' ? definition.words : plain('value' in definition ? definition.value : undefined);
    const stored = this.lines[name];
    const worked =
      definition.kind === 'formula' && stored !== undefined
        ? this.evaluate(line.tree, { kind: 'line', name })
        : undefined;
    return this.field(
      name,
      { definition, type, cell, stored, standard, ownFormula: false, worked },
      this.told(definition),
    );
  }

  /** Of what has no cell: a text with its holes filled, or what a person wrote. */
  private told({ kind, name }: LineFile): ShownInstead {
    if (kind === 'text') return { shown: filledLine(this.results, name, this.evaluator, this.measures) };
    if (kind !== 'words') return {};
    const words = writtenLine(this.results, name);
    return { shown: words, typed: words };
  }

  private table(name: string): TableView | undefined {
    const table = this.results.stack.tables.get(name);
    if (table === undefined) return undefined;
    const columns = [...table.columns.values()].filter(
      ({ definition }) => definition.kind !== 'check' && definition.kind !== 'text',
    );
    const ownCells = this.ownCells(table);
    const rows = (this.results.option.rows.get(name) ?? []).map((row, at): RowView => {
      const { id, label } = row;
      const own = ownCells(id);
      const fields = columns.map((column) => this.cell(table, column, row, at, ownValue(own, column.definition.name)));
      return this.kept.rows.view(`${name}.${id}`, [label, ...fields], () => ({ id, label, fields }));
    });
    const details = columns.map(
      ({ definition }) => definition.detail === true || !this.isShown(definition, name, rows.length),
    );
    return this.kept.tables.view(name, [table, this.measures, ...details, ...rows], () => ({
      name,
      title: table.definition.title,
      free: table.definition.rows === 'free',
      columns: columns.map(({ definition, cases }, at) => ({
        name: definition.name,
        label: labelIn(definition.label, unitOf([...cases.values()][0]?.type ?? noType), this.measures),
        group: definition.group ?? '',
        detail: details[at] ?? false,
        words:
          definition.kind === 'choice' ||
          definition.kind === 'product' ||
          definition.kind === 'key' ||
          definition.kind === 'words',
      })),
      rows,
      telling: tellingColumns(columns),
    }));
  }

  /** Whether some row has a code for which the column is shown. */
  private isShown({ shownFor }: ColumnFile, table: string, rows: number): boolean {
    if (shownFor === undefined) return true;
    const cells = this.results.option.plan.tables.get(table)?.columns.get(shownFor.column) ?? [];
    return cells.slice(0, rows).some((cell) => shownFor.codes.some((code) => code === this.results.read(cell)));
  }

  private cell(
    table: CompiledTable,
    column: CompiledColumn,
    row: OptionRow,
    at: number,
    own: RowCell | undefined,
  ): FieldView {
    const { definition } = column;
    const cell = this.results.option.plan.tables.get(table.definition.name)?.columns.get(definition.name)?.[at];
    const type = (cell === undefined ? undefined : this.results.option.plan.cells[cell]?.type) ?? noType;
    const stored = this.tables[table.definition.name]?.cells?.[row.id]?.[definition.name];
    const ownFormula = typeof own === 'object';
    const standard = ownFormula ? undefined : standardCell(definition, own);
    const worked = stored === undefined ? undefined : this.workedAt(table, column, row, at, own);
    const isName = definition.kind === 'key' || definition.name === table.key;
    const words = writtenIn(this.results.option.written, table.definition.name, definition.name, at);
    const unnamed = words === undefined ? {} : { shown: words, typed: words };
    const instead = isName ? ({ shown: row.label, kind: 'result' } as const) : unnamed;
    const name = `${table.definition.name}.${row.id}.${definition.name}`;
    return this.field(name, { definition, type, cell, stored, standard, ownFormula, worked }, instead);
  }

  /** What each row of a table gives itself, by its id, under what is entered over it. */
  private ownCells(table: CompiledTable): (row: string) => RowFile {
    const standard = new Map(table.rows.map(({ id, cells }) => [id, cells]));
    const added = this.tables[table.definition.name]?.added ?? {};
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
      return this.evaluate(at === 0 && found.first !== undefined ? found.first : found.tree, place);
    if (typeof own !== 'object') return undefined;
    const scope = this.results.stack.scope(table.layer, { table: name, unitCase: row.unitCase, mayReadAbove: false });
    return this.evaluate(new FormulaReader(() => undefined).read(own.formula, scope, found.type, row.id), place);
  }

  private evaluate(tree: Checked | undefined, place: CellPlace): CellValue | undefined {
    return tree && this.evaluator(tree, place);
  }

  /** `instead` stands in place of what a field shows otherwise. */
  private field(
    name: string,
    parts: Omit<FieldParts, 'value' | 'productNames' | 'measures'>,
    instead: ShownInstead,
  ): FieldView {
    const { definition, type, cell, stored, standard, ownFormula, worked } = parts;
    const { products: productNames, measures } = this;
    const value = cell === undefined ? undefined : this.results.read(cell);
    const from = [definition, type, cell, value, stored, standard, ownFormula, worked, productNames, measures];
    return this.kept.fields.view(name, [...from, instead.shown, instead.kind, instead.typed], () => ({
      ...fieldView({ ...parts, value, productNames, measures }),
      ...instead,
    }));
  }
}

function standardCell(definition: ColumnFile, own: Exclude<RowCell, object> | undefined): number | string | undefined {
  if (definition.kind === 'words') return own ?? definition.words;
  return plain(own ?? ('default' in definition ? definition.default : undefined));
}

function plain(value: number | string | undefined): number | string | undefined {
  return typeof value === 'string' ? (serialDay(value) ?? value) : value;
}
