import { type PricedFloor, quicklyPriced } from './priced-floor.ts';

/** What is swept: floors of 100 to 3,000 ft² by 1 %, or cracks of 0 to 200 ft by the foot. */
export type Swept = 'floor' | 'cracks';

export interface SweptPrice {
  /** ft² of floor, or ft of crack. */
  readonly at: number;
  readonly price: number;
  /** Before rounding and the minimum. */
  readonly listPrice: number;
  /** How many packs of each product, in words: another text where a pack is added. */
  readonly packs: string;
  readonly trips: number;
  /** Whether the quote says how far the price carries another trip. */
  readonly saysTrips: boolean;
}

const boughtIn = ['buy_volume', 'buy_weight', 'buy_count'];
/** Garages are a little longer than wide. */
const longer = 1.2;

const sweptAt: Readonly<Record<Swept, readonly number[]>> = {
  floor: Array.from({ length: 342 }, (_, step) => 100 * 1.01 ** step),
  cracks: Array.from({ length: 201 }, (_, feet) => feet),
};

/** The price of a system along a sweep, everything else as shipped. */
export function sweptPrices(system: string, swept: Swept): SweptPrice[] {
  return sweptAt[swept].map((at) => {
    const floor = quicklyPriced(system, { set: swept === 'floor' ? sidesOf(at) : { crack_length: at } });
    return {
      at,
      price: floor.number('price'),
      listPrice: floor.number('list_price'),
      packs: packsOf(floor),
      trips: floor.number('round_trips'),
      saysTrips: [1, 2, 3, 4].some((visit) => floor.value(`paid_visits.row_${visit}.trip_room`) === false),
    };
  });
}

function sidesOf(area: number): Readonly<Record<string, number>> {
  const inFeet = (side: number): number => Math.round(side * 1e4) / 1e4;
  return { 'areas.bay.length': inFeet(Math.sqrt(area * longer)), 'areas.bay.width': inFeet(Math.sqrt(area / longer)) };
}

function packsOf({ option, value }: PricedFloor): string {
  return boughtIn
    .flatMap((table) => (option.rows.get(table) ?? []).map(({ id }) => `${id} ${value(`${table}.${id}.packs`)}`))
    .join(', ');
}
