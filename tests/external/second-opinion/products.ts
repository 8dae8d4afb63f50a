import { readText } from '../../helpers/repository-files.ts';

export type Product = Readonly<Record<string, string>>;

/** The demo's products by code, straight from the file. Only names hold commas, and stand in quotes then. */
export function demoProducts(): ReadonlyMap<string, Product> {
  const text = readText('templates/pricelist/demo/products.csv') ?? '';
  const [header = [], ...rows] = text.trim().split('\n').map(cellsIn);
  return new Map(
    rows.map((cells) => {
      const product = Object.fromEntries(header.map((name, at) => [name, cells[at] ?? '']));
      return [product.product ?? '', product];
    }),
  );
}

function cellsIn(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
}

export interface Packs {
  readonly small: number;
  readonly large: number;
  readonly cost: number;
}

/** The cheapest whole packs that hold the need, by trying every number of large packs; the fewest large ones on a tie. */
export function cheapestPacks(need: number, product: Product): Packs {
  const measures = ['gallons', 'pounds', 'pieces'];
  const size = (prefix: string): number =>
    Number(
      measures.map((measure) => product[`${prefix}_${measure}`]).find((text) => text !== '' && text !== undefined),
    );
  const [small, large] = [size('pack'), size('large')];
  const most = large > 0 ? wholeUp(need / large) : 0;
  const ways = Array.from({ length: most + 1 }, (_, count): Packs => {
    const rest = wholeUp(Math.max(0, need - count * large) / small);
    return {
      small: rest,
      large: count,
      cost: rest * Number(product.pack_price) + count * Number(product.large_price),
    };
  });
  return ways.reduce((best, way) => (way.cost < best.cost ? way : best));
}

/** Up to a whole number, forgiving what binary fractions add beyond the 12th digit. */
export function wholeUp(value: number): number {
  return Math.ceil(Number(value.toPrecision(12)));
}

/** To cents, half away from zero, for amounts that are not negative. */
export function cents(value: number): number {
  return Math.round(Number((value * 100).toPrecision(12))) / 100;
}
