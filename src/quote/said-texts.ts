import type { CellPlace, CellValue } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import { cellsRead } from '../formula/dependencies.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { valueText } from '../formula/explain.ts';
import { unitOf } from '../formula/value-type.ts';
import type { SayPiece } from '../template/compiled-stack.ts';
import type { SectionUse } from '../template/sheet-schema.ts';
import { notSaid } from '../template/written-text.ts';
import { wordsInHole } from '../template/written-words.ts';
import { formatNumber, formatQuantity, isMoney, unitSuffix } from '../units/format.ts';
import { hours, waitText } from '../units/hours.ts';
import { type Measures, shownIn } from '../units/measures.ts';
import { amountsIn, labelIn } from '../units/said-units.ts';
import { spokenDate } from '../units/serial-day.ts';
import { KeptTexts } from './kept-texts.ts';
import { cellOfLine, evaluatorOf, lineValue, type OptionResults, writtenLine } from './option-results.ts';

/** What a sheet says to the customer in a line of its own: a text, its holes filled with today's values, or a value. */
export interface SaidText {
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

/**
 * The lines of an option's sections that are for `use`, in sheet order, without those whose `when` does not hold; numbers
 * are in `measures`.
 */
export function saidTexts(results: OptionResults, use: SectionUse, measures: Measures = 'us'): SaidText[] {
  return results.stack.sheets.flatMap((sheet) =>
    sheet.sections
      .filter((section) => section.for === use)
      .flatMap((section) => section.lines.flatMap(({ line }) => said(line.name, results, measures) ?? [])),
  );
}

/**
 * Texts that have one label as one, in the order of the first: a sentence that says why, or the one of two that holds,
 * stands with what it is about.
 */
export function togetherByLabel(texts: readonly SaidText[]): SaidText[] {
  const together = new Map<string, SaidText>();
  for (const said of texts) {
    const first = together.get(said.label);
    together.set(said.label, first === undefined ? said : { ...first, text: `${first.text} ${said.text}` });
  }
  return [...together.values()];
}

/** A free-text line with its holes filled, whether or not its `when` holds. */
export function filledLine(
  results: OptionResults,
  name: string,
  evaluate: PartEvaluator,
  measures: Measures = 'us',
): string {
  const say = results.stack.lines.get(name)?.say ?? [];
  return filledText(say, results, { kind: 'line', name }, measures, ({ tree }) => {
    const value = evaluate(tree, { kind: 'line', name });
    // From one time to another is a wait; other hours are work.
    if (tree.kind === 'binary' && tree.operator === '-' && isHours(tree.type) && typeof value === 'number')
      return waitText(hours(value));
    return spoken(value, tree.type, measures);
  });
}

/** A free-text line with its holes filled; undefined while its `when` does not hold. */
export function toldText(results: OptionResults, name: string): string | undefined {
  return said(name, results, 'us')?.text;
}

/** Most lines say after an edit what they said before it. */
const keptTexts = new KeptTexts<SaidText | undefined>();

function said(name: string, results: OptionResults, measures: Measures): SaidText | undefined {
  const reads = (): readonly number[] => readsOf(name, results);
  return keptTexts.told(results, `${measures} ${name}`, reads, undefined, () => tell(name, results, measures));
}

/** The cells that what a line says is made of. */
function readsOf(name: string, results: OptionResults): readonly number[] {
  const { tree, say = [] } = results.stack.lines.get(name) ?? {};
  const own = cellOfLine(results, name);
  const trees = [...(tree ? [tree] : []), ...say.flatMap((piece) => (piece.kind === 'value' ? [piece.tree] : []))];
  const { plan } = results.option;
  return own === undefined ? trees.flatMap((part) => cellsRead(part, { kind: 'line', name }, plan)) : [own];
}

function tell(name: string, results: OptionResults, measures: Measures): SaidText | undefined {
  const line = results.stack.lines.get(name);
  if (line === undefined || line.definition.kind === 'check') return undefined;
  const label = labelIn(line.definition.label, unitOf(line.type), measures);
  if (line.definition.kind === 'words')
    return { name, label, text: writtenLine(results, name) || (line.definition.unsaid ?? notSaid) };
  if (line.definition.kind !== 'text') {
    const value = lineValue(results, name);
    const wait = isHours(line.type) && typeof value === 'number';
    return { name, label, text: wait ? waitText(hours(value)) : spoken(value, line.type, measures) };
  }
  const evaluate = evaluatorOf(results);
  if (line.tree !== undefined && evaluate(line.tree, { kind: 'line', name }) !== true) return undefined;
  return { name, label, text: filledLine(results, name, evaluate, measures) };
}

function isHours(type: ValueType): boolean {
  return type.kind === 'number' && type.unit.text === 'h';
}

/** How people say what a price is for. */
const saidRates: Readonly<Record<string, string>> = {
  '/ft': 'a foot',
  '/ft²': 'a square foot',
  '/m': 'a metre',
  '/m²': 'a square metre',
  '/h': 'an hour',
  '/piece': 'each',
};

/** As explanations have it, but dates and rates in words, and whole dollars without their cents: people say $9 a foot. */
function spoken(value: CellValue, type: ValueType, measures: Measures): string {
  if (typeof value === 'number' && type.kind === 'number' && type.unit.text === 'date') return spokenDate(value);
  if (typeof value !== 'number' || type.kind !== 'number' || !isMoney(type.unit))
    return valueText(value, type, measures);
  const whole = Number.isInteger(shownIn(value, type.unit, measures).value);
  const options = whole ? { digits: 0, measures } : { measures };
  const rate = saidRates[unitSuffix(type.unit, '', measures)];
  if (rate === undefined) return formatQuantity(value, type.unit, options);
  return `${formatNumber(value, type.unit, options)} ${rate}`;
}

/** What is said with each of its holes filled; amounts among its words are in `measures` too. */
export function filledText(
  say: readonly SayPiece[],
  { option }: OptionResults,
  place: CellPlace,
  measures: Measures,
  fill: (piece: Extract<SayPiece, { kind: 'value' }>) => string,
): string {
  const told = (piece: SayPiece): string => {
    if (piece.kind === 'value') return fill(piece);
    return piece.kind === 'words' ? amountsIn(piece.words, measures) : wordsInHole(option.written, piece, place);
  };
  return say.map(told).join('');
}
