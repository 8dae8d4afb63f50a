import type { Edit } from '../../src/quote/edit.ts';
import { mustAgree } from './agreement.ts';
import type { BenchQuote } from './bench-quote.ts';
import { dispatched } from './structural-edits.ts';

const shop = { kind: 'shop' } as const;
const floor = { kind: 'floor' } as const;

/** Entries that lead the quote down its other paths. */
const variants: readonly Edit[] = [
  { kind: 'enterLine', sheet: shop, line: 'target_on', value: 'net' },
  { kind: 'enterLine', sheet: shop, line: 'target_margin', value: 0.15 },
  { kind: 'enterLine', sheet: shop, line: 'tax_mode', value: 'on_price' },
  { kind: 'enterLine', sheet: shop, line: 'tax_mode', value: 'on_materials' },
  { kind: 'enterLine', sheet: shop, line: 'deposit_cap_applies', value: 1 },
  { kind: 'enterLine', sheet: shop, line: 'card_fixed_fee', value: 12 },
  { kind: 'enterLine', sheet: floor, line: 'joint_treatment', value: 'fill_flush' },
  { kind: 'enterLine', sheet: floor, line: 'joint_treatment', value: 'fill_after' },
  { kind: 'enterLine', sheet: floor, line: 'hardness', value: 'very_hard' },
  { kind: 'enterLine', sheet: floor, line: 'old_surface', value: 'mastic' },
  { kind: 'enterLine', sheet: floor, line: 'stem_wall_length', value: 60 },
  { kind: 'enterLine', sheet: floor, line: 'stem_wall_height', value: 20 },
  { kind: 'enterLine', sheet: floor, line: 'spall_count', value: 5 },
  { kind: 'enterLine', sheet: floor, line: 'spall_area', value: 9 },
  { kind: 'enterLine', sheet: floor, line: 'pitted_area', value: 40 },
  { kind: 'enterLine', sheet: floor, line: 'cars_park', value: 0 },
  { kind: 'enterCell', sheet: floor, table: 'areas', row: 'bay', column: 'length', value: 80 },
];

/** One variant after another on top of those before it, each against the hand-written quote; then all are taken back. */
export function mustAgreeInVariants(bench: BenchQuote): number {
  for (const edit of variants) {
    dispatched(bench, edit);
    mustAgree(bench, JSON.stringify(edit));
  }
  for (const _ of variants) {
    const undone = bench.session.undo();
    if (undone.kind === 'refused') throw new Error(undone.reason);
  }
  return variants.length;
}
