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

/** Area and edge from the rows of the floor; stem walls by their height. */
export function measured(quote: PrintedQuote): Measured {
  let [area, edge] = [0, 0];
  for (const row of quote.rows('areas')) {
    const [length, width] = [numberIn(row, 'length'), numberIn(row, 'width')];
    const known = codeIn(row, 'shape') === 'known';
    area += known ? numberIn(row, 'known_area') : length * width;
    edge += (known ? numberIn(row, 'known_edge') : length + width + length + width) - numberIn(row, 'joined');
  }
  return { area, edge, surface: area + (quote.entry('stem_wall_length') * quote.entry('stem_wall_height')) / 12 };
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
      const net = {
        coverage: surface / numberIn(row, 'coverage_typed'),
        wet: (surface * numberIn(row, 'wet_typed') * soaked) / filmConstant,
        dry: (surface * (numberIn(row, 'dry_typed') + numberIn(row, 'texture')) * soaked) / solids / filmConstant,
      }[codeIn(row, 'film_by')];
      if (net === undefined) throw new Error(`${code} has no film`);
      return [code, net / (1 - quote.entry('resin_waste')) + quote.entry('held_up')];
    }),
  );
}

/** Cartridges: cracks always, joints unless they are left open. */
function fillers(quote: PrintedQuote, products: ReadonlyMap<string, Product>): [string, number][] {
  const runs = [
    ['cracks', quote.entry('crack_length')],
    ['joints', quote.choice('joint_treatment') === 'leave_open' ? 0 : quote.entry('joint_length')],
  ] as const;
  return runs.map(([fill, feet]) => {
    const row = quote.row('crack_fills', 'fill', fill);
    const section = numberIn(row, 'fill_width') * numberIn(row, 'fill_depth') * numberIn(row, 'fill_shape');
    const cubicInches = feet * 12 * section * (1 + quote.entry('crack_waste'));
    const product = codeIn(row, 'product');
    return [product, cubicInches / Number(products.get(product)?.cartridge_volume)];
  });
}

/** Resin fills the hole; the loose thickener, a share of the mixed resin, sinks into it. Under solid colour every crack is skimmed too. */
function patches(system: SystemId, quote: PrintedQuote): [string, number][] {
  const skim = system === 'solid-colour' ? (quote.entry('crack_length') * quote.entry('skim_width')) / 12 : 0;
  const places = [
    ['spalls', quote.entry('spall_area'), quote.entry('spall_depth')],
    ['pits', quote.entry('pitted_area'), 1 / 16],
    ['crack_skim', skim, 1 / 32],
  ] as const;
  return places.flatMap(([patch, area, depth]): [string, number][] => {
    const row = quote.row('repairs', 'patch', patch);
    const mixed =
      ((area * squareInchesPerSquareFoot * depth) / cubicInchesPerGallon) * (1 + quote.entry('patch_waste'));
    const share = numberIn(row, 'thickener_share');
    return [
      [codeIn(row, 'resin'), mixed],
      [codeIn(row, 'thickener'), mixed * share],
    ];
  });
}
