import type { HandEntries } from './hand-written-entries.ts';
import { type HandFloor, inchesPerFoot, known, pitsInBase, roundDown, roundUp } from './hand-written-floor.ts';

const filmConstant = (231 / 144) * 1000;
const cubicInchesPerGallon = 231;
const squareInchesPerSquareFoot = 144;
const ouncesPerPound = 16;

/** The row of the extras that the floor asks for. */
const stripAtTheDoor = 'door_strip';

/** What each product is needed of over the whole job. */
type Needs = Map<string, number>;

/** Whole packs of every product: `bought` before freight and tax, `cost` with them, and how many coats there are. */
export function buyByHand(entries: HandEntries, floor: HandFloor) {
  const needs: Needs = new Map();
  const coats = needCoats(entries, floor, needs);
  needRepairs(entries, floor, needs);
  for (const [row, { product, include, pieces }] of Object.entries(entries.extras))
    need(needs, product, (row === stripAtTheDoor ? entries.doorStripWanted : include) * pieces);
  let bought = 0;
  for (const [product, amount] of needs) bought += costOfPacks(entries, product, amount);
  const freight = bought > 0 ? entries.freightOrder : 0;
  const tax = entries.taxMode === 'on_purchases' ? entries.salesTaxRate * bought : 0;
  return { bought, cost: bought + freight + tax, coats };
}

function need(needs: Needs, product: string, amount: number): void {
  needs.set(product, (needs.get(product) ?? 0) + amount);
}

/** Coats, flake and grit; gives the number of coats. */
function needCoats(entries: HandEntries, floor: HandFloor, needs: Needs): number {
  const { surface } = floor;
  const { coats, additions, system, carsPark, resinWaste, heldUp } = entries;
  // Grit goes into this coat, and cars decide about both in the solid system.
  const dosed = system === 'flake' ? 'clear' : 'wear_coat';
  let count = 0;
  let gallonsDosed = 0;
  for (const [key, coat] of Object.entries(coats)) {
    const include = key === 'wear_coat' ? carsPark : coat.include;
    const covered = surface + (key === 'base' ? pitsInBase(entries, floor) * entries.pitsBaseMore : 0);
    const gallons = include * ((covered * wetMils(entries, coat)) / filmConstant / (1 - resinWaste) + heldUp);
    need(needs, coat.product, gallons);
    count += include;
    if (key === dosed) gallonsDosed = gallons;
  }
  for (const layer of Object.values(entries.broadcast))
    need(needs, layer.product, layer.include * surface * layer.thrown);
  const grit = known(additions.grit);
  const gritIncluded = system === 'solid' ? carsPark : grit.include;
  need(needs, grit.product, (gritIncluded * grit.dose * gallonsDosed) / ouncesPerPound);
  return count;
}

function wetMils(entries: HandEntries, coat: HandEntries['coats'][string]): number {
  if (coat.filmBy === 'coverage') return filmConstant / coat.coverage;
  if (coat.filmBy === 'wet') return coat.wet * (1 + coat.drink);
  return ((coat.dry + coat.texture) / known(entries.products[coat.product]).solids) * (1 + coat.drink);
}

function needRepairs(entries: HandEntries, floor: HandFloor, needs: Needs): void {
  const { crackFills, patches, crackLength, jointLength } = entries;
  const fill = (row: HandEntries['crackFills'][string], include: number, length: number): void => {
    const volume = length * inchesPerFoot * row.width * row.depth * row.shape;
    const { cartridge } = known(entries.products[row.product]);
    need(needs, row.product, (include * volume * (1 + entries.crackWaste)) / cartridge);
  };
  const cracks = known(crackFills.cracks);
  fill(cracks, cracks.include, crackLength);
  fill(known(crackFills.joints), entries.jointTreatment === 'leave_open' ? 0 : 1, jointLength);
  const patch = (row: HandEntries['patches'][string], include: number, area: number, depth: number): void => {
    const volume = include * area * squareInchesPerSquareFoot * depth;
    const mixed = (volume / cubicInchesPerGallon) * (1 + entries.patchWaste);
    // Thickener fills the resin and adds next to no volume.
    need(needs, row.resin, mixed);
    need(needs, row.thickener, mixed * row.share);
  };
  const spalls = known(patches.spalls);
  patch(spalls, spalls.include, entries.spallArea, entries.spallDepth);
  const pits = known(patches.pits);
  patch(pits, pits.include, entries.pittedArea - pitsInBase(entries, floor), pits.depth);
  const skim = known(patches.crack_skim);
  patch(
    skim,
    entries.repairFinish === 'skimmed' ? 1 : 0,
    (crackLength * entries.skimWidth) / inchesPerFoot,
    skim.depth,
  );
}

/** The cheapest of small packs, large ones with small ones beside, and large ones alone. */
function costOfPacks(entries: HandEntries, product: string, amount: number): number {
  const { pack, packPrice, large, largePrice } = known(entries.products[product]);
  const small = roundUp(amount / pack) * packPrice;
  if (!(large > 0)) return small;
  const below = roundDown(amount / large);
  const mixed = below * largePrice + roundUp(Math.max(0, amount - below * large) / pack) * packPrice;
  return Math.min(small, mixed, roundUp(amount / large) * largePrice);
}
