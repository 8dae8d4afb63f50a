import type { CellValue } from '../formula/cells.ts';
import type { Measures } from '../units/measures.ts';
import { type CheckPlace, checkPlaces } from './check-places.ts';
import { filledText } from './filled-text.ts';
import { KeptByCells } from './kept-by-cells.ts';
import { evaluatorOf, type OptionResults } from './option-results.ts';
import { outlineChecks } from './outline-checks.ts';
import type { PassedStop } from './quote-document.ts';

/** A check and its verdict. */
export interface ToldCheck extends Omit<CheckPlace, 'place' | 'say' | 'row'> {
  /** `unknown` when what it asks cannot be worked out: that is no pass. */
  readonly verdict: 'holds' | 'fails' | 'unknown';
  /** What it says when it does not hold. */
  readonly says: string;
  /** Who went ahead past this stop as it stands. */
  readonly passed?: PassedStop;
  /** Who went ahead past it when it said something else: it stops again. */
  readonly lapsed?: PassedStop;
}

/**
 * Every check of an option with its verdict: lines, columns, then outlines by corners, each in sheet order; numbers in
 * what it says are in `measures`.
 */
export function toldChecks(results: OptionResults, measures: Measures = 'us'): ToldCheck[] {
  return toldOf(results, checkPlaces(results), measures);
}

const keptOpen = new KeptByCells<readonly ToldCheck[]>();

/** Checks that do not hold, or of which nobody can tell. */
export function openChecks(results: OptionResults, measures: Measures = 'us'): readonly ToldCheck[] {
  return keptOpen.of(results, measures, passesOf(results), () => {
    const open = checkPlaces(results).filter(({ cell }) => verdictOf(results.read(cell)) !== 'holds');
    return toldOf(results, open, measures).filter(({ verdict }) => verdict !== 'holds');
  });
}

/** Whether it keeps the price from being given: a stop that does not hold, and that nobody went ahead past. */
export function holdsBack({ severity, verdict, passed }: ToldCheck): boolean {
  return severity === 'stop' && verdict !== 'holds' && passed === undefined;
}

const keptHeld = new KeptByCells<boolean>();

/** Whether any stop keeps the price from being given. */
export function isHeldBack(results: OptionResults): boolean {
  return keptHeld.of(results, 'held', passesOf(results), () => {
    const open = checkPlaces(results).filter(
      ({ cell, severity }) => severity === 'stop' && verdictOf(results.read(cell)) !== 'holds',
    );
    // Only what a stop says tells whether it is the one that was gone past.
    if (open.some((check) => passOf(results, check) === undefined)) return true;
    return toldOf(results, open, 'us').some(holdsBack);
  });
}

/** Of what was gone past, all that stands in the quote. */
function passesOf({ passed }: OptionResults): readonly unknown[] {
  return [passed?.shop, passed?.floor, passed?.system];
}

/** Most checks say after an edit what they said before it. */
const keptTexts = new KeptByCells<ToldCheck>();

function toldOf(results: OptionResults, places: readonly CheckPlace[], measures: Measures): ToldCheck[] {
  const told = places.map((check) =>
    keptTexts.of(results, `${measures} ${check.name}`, [passOf(results, check)], () => tell(results, check, measures)),
  );
  return [...told, ...outlineChecks(results)];
}

function tell(results: OptionResults, check: CheckPlace, measures: Measures): ToldCheck {
  const { place: _place, say: _say, row, ...shown } = check;
  const verdict = verdictOf(results.read(check.cell));
  const label = row === undefined ? check.label : `${row}: ${check.label}`;
  const saidIn = (spoken: Measures): string => saying(verdict, label, () => wordsOf(results, check, spoken));
  const pass = verdict === 'fails' ? passOf(results, check) : undefined;
  const stands = pass !== undefined && pass.said === saidIn('us');
  return { ...shown, verdict, says: saidIn(measures), ...(pass && { [stands ? 'passed' : 'lapsed']: pass }) };
}

function wordsOf(results: OptionResults, { say, place, row }: CheckPlace, measures: Measures): string {
  const words = filledText(say, results, { place, measures, evaluate: evaluatorOf(results) });
  return row === undefined ? words : `${row}: ${words}`;
}

function passOf({ passed }: OptionResults, { absolute, severity, layer, name }: CheckPlace): PassedStop | undefined {
  return absolute || severity !== 'stop' ? undefined : passed?.[layer]?.[name];
}

/** What fails in words; what nobody can tell is not said to fail. */
function saying(verdict: ToldCheck['verdict'], label: string, speak: () => string): string {
  if (verdict === 'holds') return '';
  return verdict === 'fails' ? speak() : `${label}: this cannot be told, since a number it asks for is missing.`;
}

function verdictOf(value: CellValue): ToldCheck['verdict'] {
  if (typeof value !== 'boolean') return 'unknown';
  return value ? 'holds' : 'fails';
}
