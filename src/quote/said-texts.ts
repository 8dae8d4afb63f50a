import type { CellValue } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import { lineCell } from '../formula/dependencies.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { unitOf } from '../formula/value-type.ts';
import type { SectionUse } from '../template/sheet-schema.ts';
import { notSaid } from '../template/written-text.ts';
import { formatNumber, formatQuantity, isMoney, unitSuffix } from '../units/format.ts';
import { hours, waitText } from '../units/hours.ts';
import { type Measures, shownIn } from '../units/measures.ts';
import { labelIn } from '../units/said-units.ts';
import { filledText, type Hole, isHours, isWorkedOutIn, valueWords } from './filled-text.ts';
import { KeptByCells } from './kept-by-cells.ts';
import { evaluatorOf, lineValue, type OptionResults, writtenLine } from './option-results.ts';

/** What a sheet says to the customer in a line of its own: a text, its holes filled with today's values, or a value. */
export interface SaidText {
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

const keptLists = new KeptByCells<readonly SaidText[]>();

/**
 * The lines of an option's sections that are for `use`, in sheet order, without those whose `when` does not hold; numbers
 * are in `measures`.
 */
export function saidTexts(results: OptionResults, use: SectionUse, measures: Measures = 'us'): readonly SaidText[] {
  return keptLists.of(results, `${measures} ${use}`, [], () =>
    results.stack.sheets.flatMap((sheet) =>
      sheet.sections
        .filter((section) => section.for === use)
        .flatMap((section) => section.lines.flatMap(({ line }) => said(line.name, results, measures) ?? [])),
    ),
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
  const ownWords = ({ tree, value }: Hole): string | undefined => {
    // From one time to another is a wait; other hours are work.
    if (tree.kind === 'binary' && tree.operator === '-' && isHours(tree.type) && typeof value === 'number')
      return waitText(hours(value));
    return moneyWords(value, tree.type, measures);
  };
  return filledText(say, results, { place: { kind: 'line', name }, measures, evaluate, ownWords });
}

/** A free-text line with its holes filled; undefined while its `when` does not hold. */
export function toldText(results: OptionResults, name: string): string | undefined {
  return said(name, results, 'us')?.text;
}

/** Most lines say after an edit what they said before it. */
const keptTexts = new KeptByCells<SaidText | undefined>();

function said(name: string, results: OptionResults, measures: Measures): SaidText | undefined {
  return keptTexts.of(results, `${measures} ${name}`, [], () => tell(name, results, measures));
}

function tell(name: string, results: OptionResults, measures: Measures): SaidText | undefined {
  const line = results.stack.lines.get(name);
  if (line === undefined || line.definition.kind === 'check') return undefined;
  const label = labelIn(line.definition.label, unitOf(line.type), measures);
  if (line.definition.kind === 'words')
    return { name, label, text: writtenLine(results, name) || (line.definition.unsaid ?? notSaid) };
  if (line.definition.kind !== 'text') {
    return { name, label, text: lineWords(name, line.type, results, measures) };
  }
  const evaluate = evaluatorOf(results);
  if (line.tree !== undefined && evaluate(line.tree, { kind: 'line', name }) !== true) return undefined;
  return { name, label, text: filledLine(results, name, evaluate, measures) };
}

/** A line’s value: hours in it are a wait. */
function lineWords(name: string, type: ValueType, results: OptionResults, measures: Measures): string {
  const value = lineValue(results, name);
  if (isHours(type) && typeof value === 'number') return waitText(hours(value));
  const isRounded = isWorkedOutIn(lineCell(name, results.option.plan), results.option.plan);
  return moneyWords(value, type, measures) ?? valueWords(value, type, measures, isRounded);
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

/** Money as people say it: rates in words, whole dollars without their cents, $9 a foot. Undefined for what is no money. */
function moneyWords(value: CellValue, type: ValueType, measures: Measures): string | undefined {
  if (typeof value !== 'number' || type.kind !== 'number' || !isMoney(type.unit)) return undefined;
  const whole = Number.isInteger(shownIn(value, type.unit, measures).value);
  const options = whole ? { digits: 0, measures } : { measures };
  const rate = saidRates[unitSuffix(type.unit, '', measures)];
  if (rate === undefined) return formatQuantity(value, type.unit, options);
  return `${formatNumber(value, type.unit, options)} ${rate}`;
}
