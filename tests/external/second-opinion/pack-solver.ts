import { roundUpTo } from '../../../src/units/decimal-rounding.ts';

/** A pack and what it costs. `holds` is in the product's own unit (gal, lb or each), `price` in dollars. */
export interface Pack {
  readonly holds: number;
  readonly price: number;
}

export type PackResult =
  | { readonly kind: 'packs'; readonly small: number; readonly large: number; readonly cost: number }
  /** A need, a size or a price that is no quantity, or more packs than anyone orders. */
  | { readonly kind: 'refused'; readonly reason: string };

const mostPacks = 1_000_000;

/**
 * The whole packs of two sizes that hold a need at the least cost there is, whatever the sizes: every number of large packs
 * up to all the need is tried, with as many small ones as the rest takes. On a tie the fewest large ones.
 * It feeds no price; the sheets' own formula tries a few of these ways, and tests hold it against this.
 * @param need in the unit of the packs. Sizes must be more than 0, need and prices not less.
 * Example: 9 gal in packs of 4 gal at $10 and 6 gal at $14 → 1 small and 1 large, $24.
 */
export function cheapestPacks(need: number, small: Pack, large: Pack): PackResult {
  const given = [need, small.price, large.price, small.holds, large.holds];
  if (!given.every((each) => Number.isFinite(each) && each >= 0) || small.holds === 0 || large.holds === 0)
    return { kind: 'refused', reason: 'Sizes must be more than 0, need and prices not less than 0.' };
  const most = packsFor(need, large.holds);
  if (most > mostPacks || packsFor(need, small.holds) > mostPacks)
    return { kind: 'refused', reason: `The need is more than ${mostPacks} packs.` };
  let best = mix(need, 0, small, large);
  for (let count = 1; count <= most; count += 1) {
    const tried = mix(need, count, small, large);
    if (tried.cost < best.cost) best = tried;
  }
  return { kind: 'packs', ...best };
}

function mix(need: number, count: number, small: Pack, large: Pack) {
  const beside = packsFor(Math.max(0, need - count * large.holds), small.holds);
  return { small: beside, large: count, cost: count * large.price + beside * small.price };
}

/** Rounded up as everywhere: 15 digits are read, so that 86 kits of 3.3 gal hold 283.8 gal and no 87th is bought. */
function packsFor(amount: number, holds: number): number {
  return roundUpTo(amount / holds, 0);
}
