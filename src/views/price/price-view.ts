import { unitOf } from '../../formula/value-type.ts';
import { KeptByCells } from '../../quote/kept-by-cells.ts';
import { lineValue, type OptionResults } from '../../quote/option-results.ts';
import type { QuoteDocument, SheetEntries } from '../../quote/quote-document.ts';
import { type SaidText, saidTexts, togetherByLabel } from '../../quote/said-texts.ts';
import { formatQuantity } from '../../units/format.ts';
import { writeLength } from '../../units/length-text.ts';
import type { Measures } from '../../units/measures.ts';
import { one, type Unit } from '../../units/unit.ts';
import { heldBack } from '../parts/checks/held-price.ts';
import { promiseWords, saidInDays } from '../parts/day-promise.ts';
import { shownLine, wholeDollars } from '../parts/line-words.ts';
import type { NamedResults } from '../parts/named-results.ts';
import { type AskAnswers, answersIn } from './ask-answers.ts';

/** What the Price face shows: nothing a customer may not see. */
export interface PriceView {
  readonly areas: readonly AreaView[];
  readonly floor: string;
  /** False while the areas are still the template's. */
  readonly measured: boolean;
  readonly questions: readonly AskAnswers[];
  /** Questions for sizes of rows. */
  readonly sizes: readonly AskAnswers[];
  readonly options: readonly PricedOption[];
}

export interface AreaView {
  readonly row: string;
  readonly label: string;
  /** Its sides, or its area where that is known. */
  readonly sides: string;
  readonly area: string;
  /** Length and width in feet of a rectangle. */
  readonly sidesFeet: { readonly length: number; readonly width: number } | undefined;
}

export interface PricedOption {
  readonly id: string;
  readonly title: string;
  /** Empty when it cannot be worked out. */
  readonly price: string;
  readonly days: string;
  readonly included: readonly SaidText[];
  readonly extras: readonly AskAnswers[];
  /** What has to be seen to before the price is given, in words a customer may read. */
  readonly held: readonly string[];
}

const keptAreas = new KeptByCells<readonly AreaView[]>();
const keptOptions = new KeptByCells<PricedOption>();

export function priceView(quote: QuoteDocument, options: readonly NamedResults[], measures: Measures): PriceView {
  const [first] = options;
  if (first === undefined) return { areas: [], floor: '', measured: false, questions: [], sizes: [], options: [] };
  const { floor } = quote;
  return {
    areas: keptAreas.of(first.results, measures, [], () => areasOf(first.results, measures)),
    floor: shownLine(first.results, 'floor_area', measures),
    measured: floor.tables['areas'] !== undefined,
    questions: answersIn(first.results, 'floor', 'others', floor, measures),
    sizes: answersIn(first.results, 'floor', 'sizes', floor, measures),
    options: options.map((option) => priced(option, quote, measures)),
  };
}

const noEntries: SheetEntries = { lines: {}, tables: {} };

function priced(option: NamedResults, { options }: QuoteDocument, measures: Measures): PricedOption {
  const { id, title, results } = option;
  const entries = options.find((candidate) => candidate.id === id)?.entries ?? noEntries;
  const held = heldBack(results, measures);
  return keptOptions.of(results, measures, [title, entries, held], () => {
    const price = lineValue(results, 'price');
    return {
      id,
      title,
      price: typeof price === 'number' ? wholeDollars(price) : '',
      days: promiseWords(results),
      included: (['allowances', 'terms'] as const).flatMap((use) =>
        togetherByLabel(saidTexts(results, use, measures)).filter(({ name }) => !saidInDays.includes(name)),
      ),
      extras: answersIn(results, 'system', 'others', entries, measures),
      held,
    };
  });
}

function shapeWords({ stack }: OptionResults, code: unknown): string {
  const definition = stack.tables.get('areas')?.columns.get('shape')?.definition;
  const options = definition?.kind === 'choice' ? definition.options : [];
  return options.find((option) => option.code === code)?.label ?? '';
}

function areasOf(results: OptionResults, measures: Measures): AreaView[] {
  const table = results.option.plan.tables.get('areas');
  const at = (column: string, row: number): number => {
    const cell = table?.columns.get(column)?.[row];
    const value = cell === undefined ? undefined : results.read(cell);
    return typeof value === 'number' ? value : 0;
  };
  const unitAt = (column: string, row: number): Unit => {
    const cell = results.option.plan.cells[table?.columns.get(column)?.[row] ?? -1];
    return cell === undefined ? one : unitOf(cell.type);
  };
  const shape = (row: number) => {
    const cell = table?.columns.get('shape')?.[row];
    return cell === undefined ? undefined : results.read(cell);
  };
  return (results.option.rows.get('areas') ?? []).map(({ id, label }, row) => ({
    row: id,
    label,
    sides:
      shape(row) === 'rectangle'
        ? `${writeLength(at('length', row), measures)} × ${writeLength(at('width', row), measures)}`
        : shapeWords(results, shape(row)),
    area: formatQuantity(at('area', row), unitAt('area', row), { measures }),
    sidesFeet: shape(row) === 'rectangle' ? { length: at('length', row), width: at('width', row) } : undefined,
  }));
}
