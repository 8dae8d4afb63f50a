import type { OptionChange } from '../../src/engine/quote-workbooks.ts';
import type { Edit } from '../../src/quote/edit.ts';
import { lineValue } from '../../src/quote/option-results.ts';
import { Disagreement, mustAgree } from './agreement.ts';
import type { BenchOption, BenchQuote } from './bench-quote.ts';
import { handEntriesOf } from './hand-written-entries.ts';
import { priceByHand } from './hand-written-quote.ts';
import { millisecondsOf, type Timing, timingOf, timingOfBlocks } from './timing.ts';

/** An edit after which the cells of some options are laid out anew. */
export interface StructuralEdit {
  readonly what: string;
  readonly scope: 'one option' | 'all options';
  readonly edit: (bench: BenchQuote, option: BenchOption) => Edit;
}

export const structuralEdits: readonly StructuralEdit[] = [
  {
    what: 'row added to coats',
    scope: 'one option',
    edit: (_, { id }) => ({
      kind: 'addRow',
      sheet: { kind: 'option', option: id },
      table: 'coats',
      row: 'row_1',
      at: 1,
      cells: { coat: 'third_clear', label: 'Third clear', product: 'clear_aspartic', coverage_typed: 300 },
    }),
  },
  {
    what: 'departure on a formula (paid hours)',
    scope: 'one option',
    edit: (_, { id }) => ({
      kind: 'enterLine',
      sheet: { kind: 'option', option: id },
      line: 'paid_hours',
      value: { instead: 30, why: 'benched' },
    }),
  },
  {
    what: 'a row’s product changed (base)',
    scope: 'one option',
    edit: ({ products }, { id }) => {
      const product = products.get('base_fast');
      if (product === undefined) throw new Error('The price list has no base_fast');
      const sheet = { kind: 'option', option: id } as const;
      return {
        kind: 'enterCell',
        sheet,
        table: 'coats',
        row: 'base',
        column: 'product',
        value: product.product,
        product,
      };
    },
  },
  {
    what: 'row added to areas of the floor',
    scope: 'all options',
    edit: () => ({
      kind: 'addRow',
      sheet: { kind: 'floor' },
      table: 'areas',
      row: 'row_1',
      at: 1,
      cells: { place: 'shed', label: 'Shed', length: 12, width: 9, joined: 4 },
    }),
  },
];

export interface MeasuredStructure {
  /** Until all numbers stand. */
  readonly numbers: Timing;
  /** The auditor's look at it: what was laid out anew is opened anew. */
  readonly auditor: Timing;
  readonly hand: Timing;
}

const rounds = 40;
const warmUp = 5;
const audits = 3;

/** Dispatches an edit and takes it back, over and over; only the edit is timed. */
export function measureStructure(bench: BenchQuote, { what, scope, edit }: StructuralEdit): MeasuredStructure {
  const [option] = bench.options;
  if (option === undefined) throw new Error('The quote has no option');
  const reached = scope === 'one option' ? [option] : bench.options;
  const price = () => reached.map((one) => lineValue(bench.results(one), 'price'));
  const before = price();
  const made = edit(bench, option);
  const times: number[] = [];
  const looks: number[] = [];
  let rebuilt: readonly OptionChange[] = [];
  const stop = bench.session.subscribe((changes) => {
    rebuilt = changes;
  });
  for (let round = -warmUp; round < rounds; round += 1) {
    const took = millisecondsOf(() => dispatched(bench, made));
    if (round >= 0) times.push(took);
    if (round >= rounds - audits) looks.push(bench.audit());
    const all = rebuilt.length === reached.length && rebuilt.every(({ changed }) => changed === 'all');
    if (!all) throw new Error(`${what} did not lay out ${scope} anew`);
    const after = price();
    if (after.some((value, at) => value === before[at])) throw new Disagreement(`${what} left a price as it was`);
    const undone = bench.session.undo();
    if (undone.kind === 'refused') throw new Error(undone.reason);
    if (price().some((value, at) => value !== before[at])) throw new Disagreement(`${what}: undo gives another price`);
  }
  stop();
  mustAgree(bench, `after undoing: ${what}`);
  return { numbers: timingOf(times), auditor: timingOf(looks), hand: repricedByHand(bench, reached) };
}

/** By hand there is nothing to lay out: the floor is pricing the same options once. */
function repricedByHand(bench: BenchQuote, options: readonly BenchOption[]): Timing {
  const entries = options.map((one) => handEntriesOf(bench.results(one), one.system));
  let total = 0;
  const timing = timingOfBlocks((at) => {
    for (const one of entries) {
      one.heldUp = 0.2 + (at % 7) / 100;
      total += priceByHand(one).price;
    }
  });
  if (!Number.isFinite(total)) throw new Error('No price by hand');
  return timing;
}

export function dispatched(bench: BenchQuote, edit: Edit): void {
  const result = bench.session.dispatch(edit);
  if (result.kind === 'refused') throw new Error(result.reason);
}
