import { describe, expect, it } from 'vitest';
import { type CrewSettings, usualSettings } from '../../src/views/day/two-jobs/crew-settings.ts';
import { type ChosenJob, type TwoJobsView, twoJobs } from '../../src/views/day/two-jobs/two-jobs.ts';
import { priced as pricedFloors } from '../cli/priced.ts';
import { priced } from '../helpers/priced-floor.ts';

/*
 * Common practice, no source: a crew that starts at six or seven with a fast system and 2 to 3 hours of preparation a
 * one-car garage finishes two such garages in one day; with a standard system it does not.
 */
const [fast, standard] = ['flake-fast-one-day', 'flake-full-broadcast'];
const oneCar = { 'areas.bay.length': 20, 'areas.bay.width': 12 };
const byHand = { ...oneCar, crack_length: 20, grinder: 'hand_tools' };
const grinding = ['grind', 'edge_grind', 'stem_wall', 'fill_cracks', 'shave_cracks', 'patch_spalls', 'vacuum'];
/** With hand tools the second garage is left so late that the usual 13 h do not hold an hour to spare. */
const longDay: CrewSettings = { ...usualSettings, shift: 14.25 };

type Set = Readonly<Record<string, number | string>>;

function twice(system: string, set: Set, settings: CrewSettings): TwoJobsView {
  const [floor] = pricedFloors([system], { set });
  if (floor === undefined) throw new Error(`${system} is not priced`);
  const job: ChosenJob = { quote: 'Garage', option: system, results: floor.results };
  return twoJobs([job, job], settings);
}

describe.each([6, 7])('a crew that starts at %d:00', (day_begins) => {
  it.each([
    ['as the shop prepares it, on a usual day', oneCar, usualSettings],
    ['prepared with hand tools, on a day of 14 h and a quarter', byHand, longDay],
  ])('finishes two one-car garages in one day with the fast system, %s', (_, set, settings) => {
    const { verdict, day } = twice(fast, { ...set, day_begins }, settings);
    expect(verdict).toBe('one day');
    expect(day?.rows.filter(({ words }) => /^(First|Second) floor: /.test(words))).toHaveLength(4);
    expect(day?.rows.filter(({ finish }) => finish.includes('next day'))).toEqual([]);
  });

  it.each([
    [oneCar, usualSettings],
    [byHand, longDay],
  ])('does not with the standard system, since its base cures over the night', (set, settings) => {
    const { verdict, day, reasons } = twice(standard, { ...set, day_begins }, settings);
    expect(verdict).toBe('not one day');
    expect(day).toBeUndefined();
    expect(reasons.join(' ')).toContain('next day');
  });
});

describe('2 to 3 hours of preparation a garage', () => {
  const expectTwoToThree = (preparation: number): void => {
    expect(preparation).toBeGreaterThanOrEqual(2);
    expect(preparation).toBeLessThanOrEqual(3);
  };

  it('are from coming to the site to the base, as the shop prepares it', () => {
    const floor = priced(fast, { set: oneCar });
    expectTwoToThree(floor.number('tasks.lay_base.start') - floor.number('trips.row_1.arrives'));
  });

  it('are of grinding, filling and vacuuming alone with hand tools', () => {
    const floor = priced(fast, { set: byHand });
    expectTwoToThree(grinding.reduce((sum, task) => sum + floor.number(`tasks.${task}.clock_added`), 0));
  });
});
