import { describe, expect, it } from 'vitest';
import { type PricedFloor, priced } from '../helpers/priced-floor.ts';

/*
 * OSHA 29 CFR 1926.1153, Table 1, as a trade paper prints it (its row numbers are one low): a secondary copy, not the
 * primary text. (xii) hand-held grinders: shroud and a dust collector of 25 cubic feet a minute or more for an inch of
 * wheel; no respirator outdoors, none indoors to 4 h a shift, APF 10 indoors over 4 h. (xiii) walk-behind grinders: the
 * maker's collector, indoors HEPA vacuuming between passes.
 */
const system = 'flake-full-broadcast';

/** Edges at 35 ft an hour of one person. */
function edges(feet: number, set: Readonly<Record<string, number | string>> = {}): PricedFloor {
  const areas = [{ place: 'hall', shape: 'known', known_area: 2000, known_edge: feet }];
  return priced(system, { rows: { areas }, set });
}

describe('hand grinding', () => {
  it('of 4 h in a shift indoors wants no respirator; of 5 h one of APF 10', () => {
    expect(edges(140).number('hand_grinding_hours')).toBeCloseTo(4, 12);
    expect(edges(140).check('hand_grinding_short').verdict).toBe('holds');
    const long = edges(175).check('hand_grinding_short');
    expect(long).toMatchObject({ verdict: 'fails', severity: 'caution' });
    expect(long.says).toContain('APF 10');
  });

  it('counts oil spots whole: four of a quarter of an hour are 1 h more', () => {
    expect(edges(105, { oil_spots: 4 }).number('hand_grinding_hours')).toBeCloseTo(4, 12);
    expect(edges(140, { oil_spots: 1 }).check('hand_grinding_short').verdict).toBe('fails');
  });

  it('of 5 h outdoors wants none', () => {
    expect(edges(175, { outdoors: 1 }).check('hand_grinding_short').verdict).toBe('holds');
  });

  it.each([
    [4.5, 112.5],
    [5, 125],
    [7, 175],
  ])('with a wheel of %f in wants a collector of %f cubic feet a minute', (wheel, airflow) => {
    const set = { hand_wheel: wheel };
    expect(edges(92, set).number('collector_needed')).toBe(airflow);
    const verdict = (moves: number) =>
      edges(92, { ...set, collector_airflow: moves }).check('collector_strong_enough').verdict;
    expect([verdict(airflow), verdict(airflow - 1)]).toEqual(['holds', 'fails']);
  });

  it('with a collector that nobody has entered is noted, and is not said to be too weak', () => {
    expect(edges(92).check('collector_known')).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(edges(92).check('collector_strong_enough').verdict).toBe('holds');
    expect(edges(92, { collector_airflow: 200 }).check('collector_known').verdict).toBe('holds');
  });

  it('is none where a floor is only abraded, and all of it with hand tools', () => {
    const abraded = priced('recoat');
    expect(abraded.number('hand_grinding_hours')).toBe(0);
    expect(abraded.check('collector_known').verdict).toBe('holds');
    const byHand = priced(system, { set: { grinder: 'hand_tools' } });
    const { number } = byHand;
    expect(number('tasks.grind.task_hours')).toBeGreaterThan(0);
    expect(number('hand_grinding_hours')).toBeCloseTo(
      number('tasks.grind.task_hours') + number('tasks.edge_grind.task_hours'),
      12,
    );
    expect(byHand.check('hand_grinding_short').verdict).toBe('fails');
  });
});

describe('the floor grinder', () => {
  const verdict = (set: Readonly<Record<string, number | string>>, name = system) =>
    priced(name, { set }).check('machine_dust_kept').verdict;

  it('is noted until the firm says that it has its maker’s collector and, indoors, a HEPA vacuum', () => {
    expect(priced(system).check('machine_dust_kept')).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(verdict({ machine_collector: 1 })).toBe('fails');
    expect(verdict({ hepa_between: 1 })).toBe('fails');
    expect(verdict({ machine_collector: 1, hepa_between: 1 })).toBe('holds');
  });

  it('outdoors wants the collector alone', () => {
    expect(verdict({ machine_collector: 1, outdoors: 1 })).toBe('holds');
    expect(verdict({ machine_collector: 1 }, 'patio-porch')).toBe('holds');
  });

  it('is not asked about where none runs', () => {
    expect(verdict({ grinder: 'hand_tools' })).toBe('holds');
    expect(verdict({}, 'recoat')).toBe('holds');
  });
});
