import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { type Closures, closuresOf } from '../../src/formula/closures.ts';
import { quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';

/*
 * The floor sheet's dew point (Alduchov and Eskridge 1996) against psychrolib 1.1.1, a library that follows the
 * equations of ASHRAE's handbook of 2017. Both are run here.
 */
const seed = printedSeed('dew-point');
const tolerance = 0.05;
const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;
const celsius = (degrees: number): number => (degrees - 32) / 1.8;

const { option } = quicklyPriced('flake-full-broadcast');
const closures: Closures = closuresOf(option.plan, option.graph);
const [airCell, humidityCell, dewCell] = ['air_temperature', 'humidity', 'dew_point'].map(lineCell);

function lineCell(name: string): number {
  const cell = option.plan.lines.get(name);
  if (cell === undefined) throw new Error(`No line ${name}`);
  return cell;
}

/** Of air in degrees F and relative humidity from 0 to 1, in degrees F. */
function dewPoint(air: number, humidity: number): number {
  closures.setValue(airCell ?? -1, air);
  closures.setValue(humidityCell ?? -1, humidity);
  closures.recalculate();
  const found = closures.value(dewCell ?? -1);
  if (typeof found !== 'number') throw new Error(JSON.stringify(found));
  return found;
}

function referenceDewPoint(air: number, humidity: number): number {
  psychrolib.SetUnitSystem(psychrolib.SI);
  return psychrolib.GetTDewPointFromRelHum(air, humidity);
}

describe('the dew point', () => {
  // Under 0 C the library gives the point at which frost forms over ice, which is another temperature: left out.
  const freezing = 0.01;
  const airs = fc.double({ min: 10, max: 35, noNaN: true });
  const anyHumidity = fc.double({ min: 0.2, max: 1, noNaN: true });

  it('is within 0.05 K of the library for 2,000 pairs of 10 to 35 C and 50 to 100 %', () => {
    fc.assert(
      fc.property(airs, fc.double({ min: 0.5, max: 1, noNaN: true }), (air, humidity) => {
        const found = celsius(dewPoint(fahrenheit(air), humidity));
        expect(Math.abs(found - referenceDewPoint(air, humidity))).toBeLessThan(tolerance);
      }),
      { seed, numRuns: 2000 },
    );
  });

  it('is within 0.05 K of it in drier air too, down to 20 %, where it lies above freezing', () => {
    const pairs = fc.tuple(airs, anyHumidity).filter(([air, humidity]) => referenceDewPoint(air, humidity) > freezing);
    fc.assert(
      fc.property(pairs, ([air, humidity]) => {
        const found = celsius(dewPoint(fahrenheit(air), humidity));
        expect(Math.abs(found - referenceDewPoint(air, humidity))).toBeLessThan(tolerance);
      }),
      { seed, numRuns: 2000 },
    );
  });

  it('is the air’s own temperature in air that holds all the water it can', () => {
    fc.assert(
      fc.property(airs, (air) => {
        expect(celsius(dewPoint(fahrenheit(air), 1))).toBeCloseTo(air, 9);
      }),
      { seed, numRuns: 200 },
    );
  });

  it('of 75 F and 60 % is 60.178 F, 0.008 F under the library’s 60.186', () => {
    psychrolib.SetUnitSystem(psychrolib.IP);
    expect(psychrolib.GetTDewPointFromRelHum(75, 0.6)).toBeCloseTo(60.186, 3);
    expect(dewPoint(75, 0.6)).toBeCloseTo(60.178, 3);
  });

  // Air in degrees C, relative humidity in %, the library's dew point as reported from another run of it, then the least
  // slab by the shipped formula with 3 C to spare, worked out outside this program.
  const table: readonly (readonly [number, number, number, number])[] = [
    [10, 50, 0.0626, 3.05],
    [10, 85, 7.5975, 10.59],
    [15, 60, 7.307, 10.3],
    [15, 80, 11.5816, 14.58],
    [20, 50, 9.2724, 12.26],
    [20, 65, 13.2272, 16.22],
    [25, 60, 16.7011, 19.7],
    [25, 80, 21.3094, 24.31],
    [30, 50, 18.4466, 21.45],
    [30, 70, 23.9279, 26.93],
    [35, 60, 26.068, 29.08],
  ];

  it.each(table)('of %d C and %d %% is %f C by the library, so that the slab must have %f C', (air, rh, dew, slab) => {
    expect(referenceDewPoint(air, rh / 100)).toBeCloseTo(dew, 3);
    expect(celsius(dewPoint(fahrenheit(air), rh / 100)) + 3).toBeCloseTo(slab, 2);
  });
});
