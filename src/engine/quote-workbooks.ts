import type { Edit, SingleEdit } from '../quote/edit.ts';
import { MovingCells } from '../quote/kept-by-cells.ts';
import type { OptionResults } from '../quote/option-results.ts';
import type { QuoteDocument, QuoteOption, SheetEntries } from '../quote/quote-document.ts';
import { givenValue, stackEntriesOf } from '../quote/stack-entries.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import { type OptionPlan, planOption } from '../template/plan.ts';
import { underPresentNames } from '../template/present-entries.ts';
import { type SheetFault, tellOnce } from '../template/sheet-fault.ts';
import { writtenWords } from '../template/written-words.ts';
import type { OpenWorkbook, Workbook } from './option-workbook.ts';

/** What an edit did to the numbers of one option. */
export interface OptionChange {
  readonly option: string;
  /** Cells whose value is another now; `all` after a rebuild, and when words were written or a stop was gone past. */
  readonly changed: readonly number[] | 'all';
}

export type FollowResult =
  | { readonly kind: 'followed'; readonly changes: readonly OptionChange[] }
  /** The changed quote cannot be laid out; the workbooks stand as before. */
  | { readonly kind: 'refused'; readonly faults: readonly SheetFault[] };

export type StackFinder = (quote: QuoteDocument, option: QuoteOption) => CompiledStack | undefined;

interface OpenOption {
  readonly option: QuoteOption;
  readonly stack: CompiledStack;
  readonly planned: OptionPlan;
  readonly workbook: Workbook;
  /** Its values, with what was made of them; others once rows, words or columns are. */
  readonly cells: MovingCells;
}

/** The workbooks of a quote, one an option, following its edits: a value edit sets one cell, any other rebuilds. */
export class QuoteWorkbooks {
  private readonly stackOf: StackFinder;
  private readonly openWorkbook: OpenWorkbook;
  private open = new Map<string, OpenOption>();
  private current: QuoteDocument | undefined;

  /** `openWorkbook` says by which evaluator: the closures on the page, HyperFormula where it is the engine of record. */
  constructor(stackOf: StackFinder, openWorkbook: OpenWorkbook) {
    this.stackOf = stackOf;
    this.openWorkbook = openWorkbook;
  }

  /** Lays out and works out a whole quote. On a refusal nothing changes. */
  load(quote: QuoteDocument): FollowResult {
    return this.rebuild(quote, () => true);
  }

  /** Follows an edit that led to `quote`. */
  follow(quote: QuoteDocument, edit: Edit): FollowResult {
    if (edit.kind === 'passStop') return this.passed(quote, edit);
    const singles = edit.kind === 'several' ? edit.edits : [edit];
    const values = this.valuesOf(singles);
    if (singles.every((one) => this.setsWords(one))) return this.written(quote, singles);
    if (values === undefined || this.othersFollow(quote, singles))
      return this.rebuild(quote, (option) => singles.some((one) => touches(one, option)));
    const changes = [...values].map(([option, entered]): OptionChange => {
      const { workbook, cells } = this.open.get(option) ?? {};
      const changed = workbook?.setValues(entered) ?? [];
      cells?.moved(changed);
      return { option, changed };
    });
    this.current = quote;
    return { kind: 'followed', changes };
  }

  /** No number is another, but what is told of the options is. */
  private passed(quote: QuoteDocument, edit: SingleEdit): FollowResult {
    this.current = quote;
    const options = [...this.open.keys()].filter((option) => touches(edit, option));
    return { kind: 'followed', changes: options.map((option) => ({ option, changed: 'all' })) };
  }

  /** Words have no cells: what is told of the options is another, and every number stays. */
  private written(quote: QuoteDocument, edits: readonly SingleEdit[]): FollowResult {
    const faults: SheetFault[] = [];
    const report = tellOnce(faults);
    const next = quote.options.flatMap((option) => {
      const one = this.open.get(option.id);
      if (one === undefined || !edits.some((edit) => touches(edit, option.id))) return [];
      const { stack, planned, workbook } = one;
      const entries = underPresentNames(stackEntriesOf(quote, option), stack.former);
      const written = writtenWords(stack, entries, planned.rows, report);
      return [[option.id, { ...one, planned: { ...planned, written }, cells: cellsOf(workbook) }] as const];
    });
    if (faults.length > 0) return { kind: 'refused', faults };
    for (const [id, one] of next) this.open.set(id, one);
    this.current = quote;
    return { kind: 'followed', changes: next.map(([option]) => ({ option, changed: 'all' })) };
  }

  private setsWords(edit: SingleEdit): boolean {
    return [...this.open].some(([id, { stack }]) => {
      if (!touches(edit, id)) return false;
      if (edit.kind === 'enterLine' || edit.kind === 'restoreLine')
        return stack.lines.get(edit.line)?.definition.kind === 'words';
      if (edit.kind !== 'enterCell') return false;
      return stack.tables.get(edit.table)?.columns.get(edit.column)?.definition.kind === 'words';
    });
  }

  /** The cells edits set in each option they touch; undefined when one of them changes more than values. */
  private valuesOf(edits: readonly SingleEdit[]): Map<string, Map<number, number | string>> | undefined {
    const values = new Map<string, Map<number, number | string>>();
    for (const edit of edits) {
      const entered = cellEdit(edit);
      if (entered === undefined) return undefined;
      for (const [id, target] of this.open) {
        if (!touches(edit, id)) continue;
        const cell = entryCell(target, edit);
        if (cell === undefined) return undefined;
        values.set(id, (values.get(id) ?? new Map<number, number | string>()).set(cell, entered.value));
      }
    }
    return values;
  }

  /** Whether tables that no edit names are others: their rows come and go with those of one that does. */
  private othersFollow(quote: QuoteDocument, edits: readonly SingleEdit[]): boolean {
    const named = new Set(edits.map((edit) => ('table' in edit ? edit.table : '')));
    const before = entriesOf(this.current);
    return entriesOf(quote).some(({ tables }, sheet) => {
      const stood = before[sheet]?.tables ?? {};
      return Object.keys({ ...stood, ...tables }).some((name) => !named.has(name) && stood[name] !== tables[name]);
    });
  }

  results(option: string): OptionResults | undefined {
    const found = this.open.get(option);
    if (found === undefined) return undefined;
    const { stack, planned, cells } = found;
    return { stack, option: planned, read: cells.read, moving: cells, passed: passedIn(this.current, option) };
  }

  close(): void {
    for (const { workbook } of this.open.values()) workbook.close();
    this.open.clear();
  }

  private rebuild(quote: QuoteDocument, touched: (option: string) => boolean): FollowResult {
    const products = new Map(quote.products.map((product) => [product.product, product]));
    const next = new Map<string, OpenOption>();
    const faults: SheetFault[] = [];
    const planned = quote.options.flatMap((option) => {
      const before = this.open.get(option.id);
      if (before !== undefined && !touched(option.id)) {
        next.set(option.id, before);
        return [];
      }
      const stack = this.stackOf(quote, option);
      if (stack === undefined) faults.push({ path: option.title, reason: 'Its sheets cannot be used.' });
      const plan = stack && planOption(stack, stackEntriesOf(quote, option), products);
      faults.push(...(plan?.faults ?? []));
      return plan ? [{ option, stack: plan.stack, planned: plan }] : [];
    });
    if (faults.length > 0) return { kind: 'refused', faults };
    const order = quote.options.map((option) => option.id);
    for (const one of planned) {
      const workbook = this.openWorkbook(one.planned, one.option.id);
      next.set(one.option.id, { ...one, workbook, cells: cellsOf(workbook) });
    }
    for (const [id, { workbook }] of this.open) if (next.get(id)?.workbook !== workbook) workbook.close();
    this.open = new Map(
      order.flatMap((id) => {
        const one = next.get(id);
        return one === undefined ? [] : [[id, one] as const];
      }),
    );
    this.current = quote;
    return { kind: 'followed', changes: planned.map(({ option }) => ({ option: option.id, changed: 'all' })) };
  }
}

function entriesOf(quote: QuoteDocument | undefined): SheetEntries[] {
  return quote === undefined ? [] : [quote.shop, quote.floor, ...quote.options.map(({ entries }) => entries)];
}

function cellsOf(workbook: Workbook): MovingCells {
  return new MovingCells((cell) => workbook.value(cell));
}

/** What was gone past in the sheets of an option. */
function passedIn(quote: QuoteDocument | undefined, option: string): NonNullable<OptionResults['passed']> {
  const system = quote?.options.find(({ id }) => id === option)?.entries.passed;
  const [shop, floor] = [quote?.shop.passed, quote?.floor.passed];
  return { ...(shop && { shop }), ...(floor && { floor }), ...(system && { system }) };
}

/** Whether an edit reaches an option: those of shop and floor reach all. */
function touches(edit: SingleEdit, option: string): boolean {
  return !('sheet' in edit) || edit.sheet.kind !== 'option' || edit.sheet.option === option;
}

/** The value an edit puts into one cell; undefined when it may change more than a number or a code. */
function cellEdit(edit: SingleEdit): { readonly value: number | string } | undefined {
  const stored =
    edit.kind === 'enterLine' || edit.kind === 'enterCell'
      ? edit.value
      : edit.kind === 'restoreLine'
        ? edit.content
        : undefined;
  if (stored === undefined || ('product' in edit && edit.product !== undefined)) return undefined;
  const given = givenValue(stored);
  return given.kind === 'value' ? { value: given.value } : undefined;
}

/** The cell an edit reaches when that is an entry or choice that decides neither rows nor units. */
function entryCell({ stack, planned }: OpenOption, edit: SingleEdit): number | undefined {
  if (edit.kind === 'enterLine' || edit.kind === 'restoreLine') {
    const kind = stack.lines.get(edit.line)?.definition.kind;
    const cell = planned.plan.lines.get(edit.line);
    return (kind === 'entry' || kind === 'choice') && holdsValue(planned, cell) ? cell : undefined;
  }
  if (edit.kind !== 'enterCell') return undefined;
  const table = stack.tables.get(edit.table);
  const kind = table?.columns.get(edit.column)?.definition.kind;
  if ((kind !== 'entry' && kind !== 'choice') || table?.unitColumn === edit.column) return undefined;
  const row = planned.rows.get(edit.table)?.findIndex((candidate) => candidate.id === edit.row) ?? -1;
  const cell = planned.plan.tables.get(edit.table)?.columns.get(edit.column)?.[row];
  return holdsValue(planned, cell) ? cell : undefined;
}

function holdsValue(planned: OptionPlan, cell: number | undefined): cell is number {
  return cell !== undefined && planned.plan.cells[cell]?.content.kind !== 'formula';
}
