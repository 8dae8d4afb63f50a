import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

const system = 'flake-full-broadcast';
const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;
const celsius = (degrees: number): number => (degrees - 32) / 1.8;

function dewPoint(airCelsius: number, humidity: number): number {
  const set = { air_temperature: fahrenheit(airCelsius), humidity: humidity / 100 };
  return celsius(priced(system, { set }).number('dew_point'));
}

describe('the dew point', () => {
  // Air in degrees C, relative humidity in %, then the dew point by
  // Alduchov and Eskridge 1996, J. Appl. Meteor. 35:601-609 (17.625, 243.04 C; the formula that is shipped), worked out
  // outside this program;
  // WMO-No. 8 (17.62, 243.12 C), the same;
  // psychrolib 1.1.1, which follows ASHRAE's equations: as reported from a run of it, not run here;
  // Lawrence 2005, BAMS 86(2):225, the quick rule T - (100 - RH) / 5 for more than 50 % humidity.
  const table: readonly (readonly [number, number, number, number, number, number])[] = [
    [10, 50, 0.047, 0.041, 0.0626, 0],
    [10, 85, 7.594, 7.592, 7.5975, 7],
    [15, 60, 7.297, 7.292, 7.307, 7],
    [15, 80, 11.577, 11.575, 11.5816, 11],
    [20, 50, 9.261, 9.255, 9.2724, 10],
    [20, 65, 13.221, 13.217, 13.2272, 13],
    [25, 60, 16.698, 16.693, 16.7011, 17],
    [25, 80, 21.309, 21.307, 21.3094, 21],
    [30, 50, 18.447, 18.441, 18.4466, 20],
    [30, 70, 23.93, 23.927, 23.9279, 24],
    [35, 60, 26.077, 26.072, 26.068, 27],
  ];

  it.each(table)(
    'of air at %d C and %d %% is %f C, within 0.05 K of two other formulas',
    (air, rh, own, wmo, ashrae) => {
      const found = dewPoint(air, rh);
      expect(found).toBeCloseTo(own, 3);
      expect(Math.abs(found - wmo)).toBeLessThan(0.05);
      expect(Math.abs(found - ashrae)).toBeLessThan(0.05);
    },
  );

  it('is within 1 K of the quick rule above 50 % humidity', () => {
    const humid = table.filter(([, rh]) => rh > 50);
    expect(humid).toHaveLength(8);
    for (const [air, rh, , , , quick] of humid) expect(Math.abs(dewPoint(air, rh) - quick)).toBeLessThan(1);
  });

  it('of 75 F and 60 % is 60.178 F, so that the slab must be 65.18 F', () => {
    const at = (slab: number) =>
      priced(system, { set: { air_temperature: 75, humidity: 0.6, slab_temperature: slab } });
    expect(at(70).number('dew_point')).toBeCloseTo(60.178, 3);
    // 5 F (3 C) above the dew point: a public-works coating specification (Freese and Nichols, 09328), as reported there.
    expect(at(65.19).check('slab_above_dew').verdict).toBe('holds');
    expect(at(65.17).check('slab_above_dew')).toMatchObject({ verdict: 'fails', severity: 'stop' });
  });
});

describe('limits on site', () => {
  it('ask for 85 % relative humidity or less', () => {
    // The same specification, as reported there.
    const verdict = (humidity: number) => priced(system, { set: { humidity } }).check('humidity_low_enough').verdict;
    expect([verdict(0.85), verdict(0.86)]).toEqual(['holds', 'fails']);
  });

  it('stop, with no way round, below the product’s own temperature', () => {
    // Common practice, no source: below the data sheet’s minimum the answer is "do not apply", not a long time.
    const check = priced(system, { set: { slab_temperature: 45 } }).check('coats.base.warm_enough');
    expect(check).toMatchObject({ verdict: 'fails', severity: 'stop', absolute: true });
  });

  it('tell of the respirator on a day of 5 h of edging indoors', () => {
    // OSHA 29 CFR 1926.1153, Table 1 (xii), as a trade paper prints it: hand-held grinders indoors, over 4 h a shift.
    const edges = (feet: number) => {
      const areas = [{ place: 'hall', shape: 'known', known_area: 2000, known_edge: feet }];
      return priced(system, { rows: { areas } });
    };
    expect(edges(175).number('hand_grinding_hours')).toBeCloseTo(5, 12);
    expect(edges(175).check('hand_grinding_short').verdict).toBe('fails');
    expect(edges(140).check('hand_grinding_short').verdict).toBe('holds');
  });
});
