import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closuresOf } from '../../src/formula/closures.ts';
import { quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';

/*
 * The cure of an epoxy at the slab's temperature, against the law of Arrhenius, t = t_ref exp(E/R (1/T - 1/T_ref)) with T
 * in kelvin. The rule that is shipped, half the time for each 10 C warmer, is the trade's, from memory.
 */
const seed = printedSeed('cure');
const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;

const { option } = quicklyPriced('flake-full-broadcast', {
  products: { 'base_slate.times_at': 77, 'base_slate.recoat_after': 12, 'base_slate.recoat_before': 48 },
});
const closures = closuresOf(option.plan, option.graph);
const slabCell = option.plan.lines.get('slab_temperature') ?? -1;
const [firstCell, lastCell] = ['recoat_from', 'recoat_until'].map((column) => {
  const place = (option.rows.get('coats') ?? []).findIndex(({ id }) => id === 'base');
  return option.plan.tables.get('coats')?.columns.get(column)?.[place] ?? -1;
});

/** Hours after an epoxy base of 12 to 48 h at 25 C: from when, and until when, its next coat goes on. */
function window(celsius: number): { readonly first: number; readonly last: number } {
  closures.setValue(slabCell, fahrenheit(celsius));
  closures.recalculate();
  const number = (cell: number | undefined): number => {
    const value = closures.value(cell ?? -1);
    if (typeof value !== 'number') throw new Error(JSON.stringify(value));
    return value;
  };
  return { first: number(firstCell), last: number(lastCell) };
}

const gasConstant = 8.314463;
const kelvin = (celsius: number): number => celsius + 273.15;
const arrhenius = (energy: number, celsius: number): number =>
  12 * Math.exp((energy / gasConstant) * (1 / kelvin(celsius) - 1 / kelvin(25)));

describe('an epoxy that takes its next coat 12 h later at 25 C', () => {
  it('follows Arrhenius at 51.216 kJ/mol within 6 % at 2,000 temperatures of 10 to 35 C', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 35, noNaN: true }), (celsius) => {
        expect(Math.abs(window(celsius).first / arrhenius(51_216, celsius) - 1)).toBeLessThan(0.06);
      }),
      { seed, numRuns: 2000 },
    );
  });

  it('halves for each 10 C, and its window with it, at 500 temperatures of 10 to 25 C', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 25, noNaN: true }), (celsius) => {
        const [cool, warm] = [window(celsius), window(celsius + 10)];
        expect(cool.first / warm.first).toBeCloseTo(2, 10);
        expect(cool.last / warm.last).toBeCloseTo(2, 10);
        expect(cool.last / cool.first).toBeCloseTo(4, 10);
      }),
      { seed, numRuns: 500 },
    );
  });

  it('never cures faster on a cooler slab, at 2,000 pairs of 10 to 35 C', () => {
    const slab = fc.double({ min: 10, max: 35, noNaN: true });
    fc.assert(
      fc.property(slab, slab, (one, other) => {
        const [cool, warm] = [window(Math.min(one, other)), window(Math.max(one, other))];
        expect(cool.first).toBeGreaterThanOrEqual(warm.first);
        expect(cool.last).toBeGreaterThanOrEqual(warm.last);
      }),
      { seed, numRuns: 2000 },
    );
  });

  // Published energies of amine epoxies lie about 50 to 60 kJ/mol (from memory). At the upper end the rule is too hopeful in
  // the cold, by a fifth at 10 C: the last column is worked out outside this program.
  const upper: readonly (readonly [number, number, number])[] = [
    [10, 43.255, 0.7847],
    [15, 27.796, 0.8634],
    [20, 18.133, 0.9359],
    [30, 8.0502, 1.0541],
    [35, 5.471, 1.0967],
  ];

  it.each(upper)('at %d C would take %f h at 60 kJ/mol, of which the rule says %f', (celsius, hours, share) => {
    expect(arrhenius(60_000, celsius)).toBeCloseTo(hours, 3);
    expect(window(celsius).first / hours).toBeCloseTo(share, 3);
  });

  it('has the energy that doubles the time between 30 and 20 C: 51.216 kJ/mol', () => {
    const energy = (gasConstant * Math.LN2) / (1 / kelvin(20) - 1 / kelvin(30));
    expect(energy).toBeCloseTo(51_216, 0);
    expect(arrhenius(energy, 20) / arrhenius(energy, 30)).toBeCloseTo(2, 12);
  });
});
