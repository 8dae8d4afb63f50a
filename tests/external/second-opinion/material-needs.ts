import { coveFill, extraWork } from './extra-work.ts';
import { builtOn } from './floor-measure.ts';
import { codeIn, numberIn, type PrintedQuote } from './printed-quote.ts';
import type { Product } from './products.ts';

/*
 * Film law: a gallon at one mil covers 231/144 x 1000 ft2. Loss is a share of what is bought (division). What is thrown
 * is priced as thrown. Crack filler follows the chase. Common practice, no source, where nothing better is named.
 */
const filmConstant = (231 / 144) * 1000;
const cubicInchesPerGallon = 231;
const squareInchesPerSquareFoot = 144;

export type SystemId = 'flake-full-broadcast' | 'solid-colour';

export interface Needs {
  /** Product code → gallons, pounds or pieces. */
  readonly byProduct: ReadonlyMap<string, number>;
  readonly coats: number;
}

export interface Measured {
  readonly area: number;
  readonly edge: number;
  readonly surface: number;
}

/** Area and edge from the rows of the floor; stem walls by their height, steps and curbs by what they show. */
export function measured(quote: PrintedQuote): Measured {
  let [area, edge] = [0, 0];
  for (const row of quote.rows('areas')) {
    const [length, width] = [numberIn(row, 'length'), numberIn(row, 'width')];
    const known = codeIn(row, 'shape') === 'known';
    area += known ? numberIn(row, 'known_area') : length * width;
    edge += (known ? numberIn(row, 'known_edge') : length + width + length + width) - numberIn(row, 'joined');
  }
  const { lip, leftOut, around, stepArea, curbArea } = builtOn(quote);
  area = Math.max(0, area + lip - leftOut);
  const walls = (quote.entry('stem_wall_length') * quote.entry('stem_wall_height')) / 12;
  return { area, edge: edge + around, surface: area + walls + stepArea + curbArea };
}

/** Under full flake the base fills pits on the first tenth of the floor and takes a fifth more there; the rest is skimmed. */
export function pitsOf(system: SystemId, quote: PrintedQuote): { readonly skimmed: number; readonly baseMore: number } {
  const pits = quote.entry('pitted_area');
  const inBase = system === 'flake-full-broadcast' ? Math.min(pits, measured(quote).area / 10) : 0;
  return { skimmed: pits - inBase, baseMore: inBase / 5 };
}

/** Whether a coat or addition is in the job: only what the system leaves to the floor or to a switch is asked. */
function isIncluded(system: SystemId, table: 'coats' | 'additions', code: string, quote: PrintedQuote): boolean {
  if (system === 'solid-colour') return ['wear_coat', 'grit'].includes(code) ? quote.entry('cars_park') === 1 : true;
  const key = table === 'coats' ? 'coat' : 'addition';
  return numberIn(quote.row(table, key, code), 'include') === 1;
}

export function materialNeeds(system: SystemId, quote: PrintedQuote, products: ReadonlyMap<string, Product>): Needs {
  const byProduct = new Map<string, number>();
  const add = (product: string, amount: number): void => {
    byProduct.set(product, (byProduct.get(product) ?? 0) + amount);
  };
  const { surface } = measured(quote);
  const gallons = coatGallons(system, quote, products, surface);
  for (const row of quote.rows('coats')) add(codeIn(row, 'product'), gallons.get(codeIn(row, 'coat')) ?? 0);
  for (const row of quote.rows('broadcast'))
    add(codeIn(row, 'product'), numberIn(row, 'include') * surface * numberIn(row, 'thrown'));
  for (const row of quote.rows('additions')) {
    const dosed = gallons.get(system === 'solid-colour' ? 'wear_coat' : 'clear') ?? 0;
    const included = isIncluded(system, 'additions', codeIn(row, 'addition'), quote);
    add(codeIn(row, 'product'), included ? (dosed * numberIn(row, 'dose')) / 16 : 0);
  }
  for (const [product, amount] of fillers(quote, products)) add(product, amount);
  for (const [product, amount] of patches(system, quote)) add(product, amount);
  for (const row of quote.rows('extras'))
    add(codeIn(row, 'product'), numberIn(row, 'include') * numberIn(row, 'pieces'));
  // A second colour takes its share of the second coat, and a pack of pigment does for so many gallons.
  for (const row of quote.rows('tints')) {
    const accent = (gallons.get('second_colour') ?? 0) * quote.entry('accent_share');
    const product = codeIn(row, 'product');
    add(product, (numberIn(row, 'include') * accent) / Number(products.get(product)?.treats_gallons));
  }
  const coats = [...gallons.values()].filter((amount) => amount > 0).length;
  return { byProduct, coats };
}

function coatGallons(
  system: SystemId,
  quote: PrintedQuote,
  products: ReadonlyMap<string, Product>,
  surface: number,
): Map<string, number> {
  return new Map(
    quote.rows('coats').map((row) => {
      const code = codeIn(row, 'coat');
      if (!isIncluded(system, 'coats', code, quote)) return [code, 0];
      const soaked = 1 + numberIn(row, 'drink');
      const solids = Number(products.get(codeIn(row, 'product'))?.solids);
      const covered = surface + (code === 'base' ? pitsOf(system, quote).baseMore : 0);
      const net = {
        coverage: covered / numberIn(row, 'coverage_typed'),
        wet: (covered * numberIn(row, 'wet_typed') * soaked) / filmConstant,
        dry: (covered * (numberIn(row, 'dry_typed') + numberIn(row, 'texture')) * soaked) / solids / filmConstant,
      }[codeIn(row, 'film_by')];
      if (net === undefined) throw new Error(`${code} has no film`);
      return [code, net / (1 - quote.entry('resin_waste')) + quote.entry('held_up')];
    }),
  );
}

/** Cartridges: cracks of each width, twice over where a crack through the slab is doubled; joints unless they are left open. */
function fillers(quote: PrintedQuote, products: ReadonlyMap<string, Product>): [string, number][] {
  const doubled = quote.choice('through_treatment') === 'double' ? 2 : 1;
  const runs = [
    ['cracks', quote.entry('crack_length')],
    ['wide_cracks', quote.entry('wide_crack_length')],
    ['through_cracks', quote.entry('through_crack_length') * doubled],
    ['joints', quote.choice('joint_treatment') === 'leave_open' ? 0 : quote.entry('joint_length')],
  ] as const;
  return runs.map(([fill, feet]) => {
    const row = quote.row('crack_fills', 'fill', fill);
    const share = { by_share: numberIn(row, 'fill_shape'), vee: 0.5, square: 1 }[codeIn(row, 'chase')];
    if (share === undefined) throw new Error(`${fill} has no chase`);
    const section = numberIn(row, 'fill_width') * numberIn(row, 'fill_depth') * share;
    const cubicInches = feet * 12 * section * (1 + quote.entry('crack_waste'));
    const product = codeIn(row, 'product');
    return [product, cubicInches / Number(products.get(product)?.cartridge_volume)];
  });
}

/** Resin fills the hole; the loose thickener, a share of the mixed resin, sinks into it. Under solid colour every crack is skimmed too. */
function patches(system: SystemId, quote: PrintedQuote): [string, number][] {
  const cracks = ['crack_length', 'wide_crack_length', 'through_crack_length', 'hairline_length'];
  const seen = cracks.reduce((sum, line) => sum + quote.entry(line), 0);
  const skim = system === 'solid-colour' ? (seen * quote.entry('skim_width')) / 12 : 0;
  const places = [
    ['spalls', quote.entry('spall_area'), quote.entry('spall_depth')],
    ['pits', pitsOf(system, quote).skimmed, 1 / 16],
    ['crack_skim', skim, 1 / 32],
  ] as const;
  const fills: [string, number][] = places.map(([patch, area, depth]) => [
    patch,
    area * squareInchesPerSquareFoot * depth,
  ]);
  fills.push(['cove', coveFill(extraWork(quote, measured(quote).edge).coveFeet, quote.entry('cove_radius'))]);
  return fills.flatMap(([patch, cubicInches]): [string, number][] => {
    const row = quote.row('repairs', 'patch', patch);
    const mixed = (cubicInches / cubicInchesPerGallon) * (1 + quote.entry('patch_waste'));
    const share = numberIn(row, 'thickener_share');
    return [
      [codeIn(row, 'resin'), mixed],
      [codeIn(row, 'thickener'), mixed * share],
    ];
  });
}
