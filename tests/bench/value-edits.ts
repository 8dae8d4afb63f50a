import { type Closures, closuresOf } from '../../src/formula/closures.ts';
import { lineCell } from '../../src/formula/dependencies.ts';
import type { Edit } from '../../src/quote/edit.ts';
import { lineValue } from '../../src/quote/option-results.ts';
import { resultLines } from '../../src/template/result-lines.ts';
import { mustAgree } from './agreement.ts';
import type { BenchQuote } from './bench-quote.ts';
import { type HandEntries, handEntriesOf } from './hand-written-entries.ts';
import { priceByHand } from './hand-written-quote.ts';
import { dispatched } from './structural-edits.ts';
import { millisecondsOf, type Timing, timingOf, timingOfBlocks } from './timing.ts';

/** One number moved over and over. */
export interface MovedEntry {
  readonly what: string;
  readonly line: string;
  /** Whose entry it is; an option's is the first option's. */
  readonly of: 'shop' | 'floor' | 'option';
  /** The same entry by hand. */
  readonly byHand: (entries: HandEntries, value: number) => void;
  /** It goes from `low` to `high` in small steps and begins again, so that no edit repeats the one before it. */
  readonly low: number;
  readonly high: number;
}

export const movedEntries: readonly MovedEntry[] = [
  {
    what: 'shop value (resin waste)',
    line: 'resin_waste',
    of: 'shop',
    byHand: (entries, value) => {
      entries.resinWaste = value;
    },
    low: 0.03,
    high: 0.12,
  },
  {
    what: 'floor value (crack length)',
    line: 'crack_length',
    of: 'floor',
    byHand: (entries, value) => {
      entries.crackLength = value;
    },
    low: 10,
    high: 60,
  },
  {
    what: 'option value (grinding factor)',
    line: 'grind_factor',
    of: 'option',
    byHand: (entries, value) => {
      entries.grindFactor = value;
    },
    low: 0.8,
    high: 1.6,
  },
];

export interface MeasuredEdit {
  readonly numbers: Timing;
  /** The auditor's look at it, every cell of every option. */
  readonly auditor: Timing;
  /** The hand-written quote of the same edit. */
  readonly hand: Timing;
  /** The closures of the same edit, every formula again. */
  readonly closures: Timing;
  /** How many cells one edit changed, on average. */
  readonly changed: number;
}

const steps = 37;
const edits = 400;
const warmUp = 60;
/** Each takes the auditor as long as many edits. */
const audits = 12;

/** Dispatches one entry's edits through the session and reads every result line of every option after each. */
export function measureEdits(bench: BenchQuote, moved: MovedEntry): MeasuredEdit {
  const valueAt = (at: number) => moved.low + ((moved.high - moved.low) * ((at + warmUp) % steps)) / (steps - 1);
  let changed = 0;
  const stop = bench.session.subscribe((changes) => {
    for (const change of changes) changed += change.changed === 'all' ? Number.NaN : change.changed.length;
  });
  const times: number[] = [];
  for (let at = -warmUp; at < edits; at += 1) {
    if (at === 0) changed = 0;
    const edit = editOf(bench, moved, valueAt(at));
    const took = millisecondsOf(() => {
      dispatched(bench, edit);
      readResults(bench);
    });
    if (at >= 0) times.push(took);
  }
  stop();
  if (Number.isNaN(changed)) throw new Error(`${moved.what}: a value edit rebuilt a workbook`);
  // Every value once more, apart from the timing: checking leaves garbage that an edit would have to clear.
  for (let at = 0; at < steps; at += 1) {
    dispatched(bench, editOf(bench, moved, valueAt(at)));
    mustAgree(bench, `${moved.what} ${valueAt(at)}`);
  }
  const looks = Array.from({ length: audits }, (_, at) => {
    dispatched(bench, editOf(bench, moved, valueAt(at)));
    return bench.audit();
  });
  return {
    numbers: timingOf(times),
    auditor: timingOf(looks),
    ...otherWays(bench, moved, valueAt),
    changed: changed / edits,
  };
}

/** The options an edit reaches, worked out by hand and by closures. */
function otherWays(bench: BenchQuote, moved: MovedEntry, valueAt: (at: number) => number) {
  const reached = bench.options.slice(0, moved.of === 'option' ? 1 : bench.options.length);
  const entries = reached.map((option) => handEntriesOf(bench.results(option), option.system));
  let total = 0;
  const hand = timingOfBlocks((at) => {
    for (const one of entries) {
      moved.byHand(one, valueAt(at));
      total += priceByHand(one).price;
    }
  });
  const closures = reached.map((option): readonly [Closures, number] => {
    const { plan, graph } = bench.results(option).option;
    return [closuresOf(plan, graph), lineCell(moved.line, plan)];
  });
  const byClosures = timingOfBlocks((at) => {
    for (const [closure, cell] of closures) {
      closure.setValue(cell, valueAt(at));
      closure.recalculate();
    }
  });
  if (!Number.isFinite(total)) throw new Error(`${moved.what}: no price by hand`);
  return { hand, closures: byClosures };
}

function editOf({ options }: BenchQuote, moved: MovedEntry, value: number): Edit {
  const sheet =
    moved.of === 'option' ? ({ kind: 'option', option: options[0]?.id ?? '' } as const) : { kind: moved.of };
  return { kind: 'enterLine', sheet, line: moved.line, value };
}

function readResults(bench: BenchQuote): void {
  for (const option of bench.options) {
    const results = bench.results(option);
    for (const line of resultLines) if (typeof lineValue(results, line) !== 'number') throw new Error(`${line} failed`);
  }
}
