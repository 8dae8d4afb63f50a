import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RowFile } from '../../src/template/line-schema.ts';
import { priced, quicklyPriced } from '../helpers/priced-floor.ts';
import { printedSeed } from '../helpers/random-seed.ts';

const seed = printedSeed('labour');
const system = 'flake-full-broadcast';

describe('a task’s hours', () => {
  it('are those of the Navy’s formula: quantity / unit x hours a unit / 8 x delay factor, in days of 8 h', () => {
    // NAVFAC P-405, as a construction man-hours manual quotes it; formula as reported there.
    const quantity = fc.integer({ min: 1, max: 20_000 });
    const unit = fc.constantFrom(1, 10, 100, 1000);
    const hoursAUnit = fc.double({ min: 0.01, max: 80, noNaN: true });
    const delay = fc.double({ min: 0.5, max: 3, noNaN: true });
    fc.assert(
      fc.property(quantity, unit, hoursAUnit, delay, (count, of, hours, factor) => {
        const row = { task: 'grind', quantity: count, rate: of / hours, factor };
        const found = quicklyPriced(system, { rows: { tasks: [row, { task: 'edge_grind' }] } });
        const manDays = ((count / of) * hours * factor) / 8;
        expect(found.number('tasks.1.task_hours') / (8 * manDays)).toBeCloseTo(1, 12);
      }),
      { seed, numRuns: 100 },
    );
  });
});

describe('24 x 22 ft with 4 in of stem wall, every task by two people', () => {
  // Derived from common practice, no source: hours a person, quantity over rate.
  const tasks: readonly (readonly [string, string, number, number, number])[] = [
    ['grind', 'area', 528, 175, 3.0171],
    ['edge_grind', 'length', 92, 35, 2.6286],
    ['stem_wall', 'area', (92 * 4) / 12, 40, 0.7667],
    ['fill_cracks', 'length', 60, 30, 2],
    ['vacuum', 'area', 528, 900, 0.5867],
    ['lay_base', 'area', 528, 450, 1.1733],
    ['broadcast_flake', 'area', 528, 900, 0.5867],
    ['scrape', 'area', 528, 350, 1.5086],
    ['lay_clear', 'area', 528, 450, 1.1733],
  ];
  const rows = tasks.map(([task, measure, quantity, rate]): RowFile => ({ task, measure, quantity, rate, people: 2 }));
  const job = () => priced(system, { set: { set_up_first: 1.5, load_out: 1 }, rows: { tasks: rows } });

  it.each(tasks.map((task, at) => [at + 1, ...task] as const))(
    'has task %d, %s',
    (at, _task, _measure, _q, _rate, hours) => {
      expect(job().number(`tasks.${at}.task_hours`)).toBeCloseTo(hours, 4);
    },
  );

  it('takes 13.44095 person-hours, 18.44095 with 2.5 h fixed for both, 9.220476 h of a crew of two', () => {
    const found = job();
    const sum = rows.reduce((total, _, at) => total + found.number(`tasks.${at + 1}.task_hours`), 0);
    expect(sum).toBeCloseTo(13.44095, 5);
    expect(found.number('person_hours')).toBeCloseTo(18.44095, 5);
    expect(found.number('trips.row_1.site_hours')).toBeCloseTo(9.220476, 6);
    expect(found.number('visits')).toBe(1);
  });
});

describe('fixed time', () => {
  it('makes small floors dear: finished jobs have more hours a square foot than the area alone explains', () => {
    // Derived from invented job records: hours = 0.887805 + 0.00483580 x area, so the marginal rate is 206.791 ft2/h.
    // One task at that rate and the rest as fixed time gives the line back.
    const hours = (area: number): number => {
      const row = { task: 'grind', quantity: area, rate: 206.791 };
      const set = { set_up_first: 0.887805, load_out: 0, crew_extra: -1 };
      return priced(system, { set, rows: { tasks: [row, { task: 'edge_grind' }] } }).number('person_hours');
    };
    for (const area of [420, 900, 2400]) expect(hours(area)).toBeCloseTo(0.887805 + 0.0048358 * area, 4);
    expect(hours(420) / 420).toBeGreaterThan(hours(2400) / 2400);
  });
});

describe('the burdened rate', () => {
  /*
   * One person for a year, invented inputs; the sums worked out by hand. The wage bases and rates are those of United States
   * law for 2026 as secondary pages give them (social security 6.2 % up to $184,500, Medicare 1.45 %, federal unemployment
   * 0.6 % of $7,000 after the credit): read IRS Publication 15 itself.
   */
  const year = {
    wage: 26,
    year_hours: 2080,
    social_security_rate: 0.062,
    social_security_base: 184_500,
    medicare_rate: 0.0145,
    federal_unemployment_rate: 0.006,
    federal_unemployment_base: 7000,
    state_unemployment_rate: 0.027,
    state_unemployment_base: 12_000,
    compensation_premium: 9.5,
    liability_rate: 0.018,
    health_year: 3900,
    retirement_rate: 0.03,
    leave_hours: 128,
    training_hours: 24,
    job_share: 0.85,
  };
  const worked = (set: Readonly<Record<string, number>> = {}) => quicklyPriced(system, { set: { ...year, ...set } });

  it('of $26.00 for 2,080 h, of which 1,928 are worked, is $36.41938: 1.40075 times the wage', () => {
    const found = worked();
    expect(found.number('year_wages')).toBeCloseTo(54_080, 2);
    // Social security 3,352.96, Medicare 784.16, unemployment 42.00 and 324.00.
    expect(found.number('payroll_taxes')).toBeCloseTo(4503.12, 2);
    // Workers' compensation 5,137.60, liability 973.44.
    expect(found.number('payroll_insurance')).toBeCloseTo(6111.04, 2);
    expect(found.number('burdened_year')).toBeCloseTo(70_216.56, 2);
    expect(found.number('burdened_rate')).toBeCloseTo(36.41938, 5);
    expect(found.number('burden_share')).toBeCloseTo(0.40075, 5);
    expect(found.number('burdened_on_jobs')).toBeCloseTo(42.84633, 5);
  });

  it('takes no social security above its base: $250,000 of wages pay 11,439.00 of it, and Medicare on all', () => {
    const alone = { federal_unemployment_rate: 0, state_unemployment_rate: 0, year_hours: 2000, wage: 125 };
    expect(worked({ ...alone, medicare_rate: 0 }).number('payroll_taxes')).toBeCloseTo(11_439, 2);
    expect(worked({ ...alone, social_security_rate: 0 }).number('payroll_taxes')).toBeCloseTo(3625, 2);
  });

  it('takes unemployment tax on what is below its base only: $5,000 of wages pay 30.00 and 135.00', () => {
    const few = { year_hours: 200, wage: 25, social_security_rate: 0, medicare_rate: 0 };
    expect(worked(few).number('payroll_taxes')).toBeCloseTo(165, 2);
  });

  const nothing = Object.fromEntries(
    ['social_security_rate', 'medicare_rate', 'federal_unemployment_rate', 'state_unemployment_rate']
      .concat(['compensation_premium', 'liability_rate', 'retirement_rate', 'leave_hours', 'training_hours'])
      .map((name) => [name, 0]),
  );

  it('has the survey’s burden when it has the survey’s benefits: 13.58 on 32.07 is 42.34 %', () => {
    // Bureau of Labor Statistics, Employer Costs for Employee Compensation, private industry, June 2025: $32.07 an hour in
    // wages and $13.58 in benefits of $45.65.
    const found = worked({ ...nothing, wage: 32.07, health_year: 13.58 * 2080 });
    expect(found.number('burdened_rate')).toBeCloseTo(45.65, 2);
    expect(found.number('burden_share')).toBeCloseTo(0.4234, 4);
  });

  it('of the invented firm lies within 4 points of the survey’s, for private industry and for construction', () => {
    // Construction, June 2022, as an institute quotes the same survey: $43.56 in all on $30.39 in wages, 1.4334 times.
    const share = priced(system).number('burden_share');
    expect(Math.abs(share - 0.4234)).toBeLessThan(0.04);
    expect(Math.abs(share - 0.4334)).toBeLessThan(0.04);
  });

  it('moves no price, and is held against the loaded rate only once the figures are the firm’s own', () => {
    const dear = { wage: 60 };
    const [before, after] = [priced(system), priced(system, { set: dear })];
    expect(after.number('burdened_rate')).toBeGreaterThan(80);
    expect(after.number('price')).toBe(before.number('price'));
    expect(after.number('full_cost')).toBe(before.number('full_cost'));
    const verdict = (set: Readonly<Record<string, number>>) =>
      priced(system, { set }).check('labour_rate_covers').verdict;
    expect([verdict({}), verdict(dear), verdict({ burden_own: 1 })]).toEqual(['holds', 'holds', 'holds']);
    expect(priced(system, { set: { ...dear, burden_own: 1 } }).check('labour_rate_covers')).toMatchObject({
      verdict: 'fails',
      severity: 'note',
    });
    // $36.42 an hour worked: a loaded rate of 36.50 covers it, one of 36 does not.
    expect(verdict({ burden_own: 1, labour_rate: 36.5 })).toBe('holds');
    expect(verdict({ burden_own: 1, labour_rate: 36 })).toBe('fails');
  });
});
