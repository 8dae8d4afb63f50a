import { describe, expect, it } from 'vitest';
import { priced } from '../helpers/priced-floor.ts';

const system = 'flake-full-broadcast';

describe('air that thins solvent vapour', () => {
  /*
   * Q = 403 x weight x 100 x safety x pints a minute / (molar weight x lower explosive limit in % x B), the form of ACGIH's
   * ventilation manual, from memory. A quart of acetone used up in 30 minutes, 0.79, 58.08, 2.5 %, safety 10, B 1:
   * 403 x 0.79 x 100 x 10 x (2 / 30) / (58.08 x 2.5) = 146.2 cubic feet a minute, worked out outside this program.
   */
  it('for a quart of acetone in 30 minutes is 146.2 cubic feet a minute', () => {
    const at = (fan: number) => priced(system, { set: { solvent_pints: 2, solvent_minutes: 30, fan_airflow: fan } });
    expect(at(0).number('dilution_air')).toBeCloseTo(146.18, 2);
    expect(at(146).check('vapour_thinned')).toMatchObject({ verdict: 'fails', severity: 'caution' });
    expect(at(147).check('vapour_thinned').verdict).toBe('holds');
  });

  it('is twice as much in half the time, and none without solvent', () => {
    expect(priced(system, { set: { solvent_pints: 2, solvent_minutes: 15 } }).number('dilution_air')).toBeCloseTo(
      292.36,
      1,
    );
    const none = priced(system);
    expect(none.number('dilution_air')).toBe(0);
    expect(none.check('vapour_thinned').verdict).toBe('holds');
  });
});

describe('pilot lights', () => {
  // 16 CFR 1500.133, label text for adhesives of low flash point, as a public copy has it: all flames and pilot lights out,
  // motors off until the vapour is gone. Half an hour each: a guess, no source.
  it('two in the room are cautioned, take an hour of labour, and are told with what is included', () => {
    const bare = priced(system);
    const lit = priced(system, { set: { pilot_lights: 2 } });
    expect(bare.check('flames_out').verdict).toBe('holds');
    expect(lit.check('flames_out')).toMatchObject({ verdict: 'fails', severity: 'caution' });
    expect(lit.check('flames_out').says).toContain('1 h of labour');
    expect(lit.number('tasks.pilot_lights.task_hours')).toBe(1);
    expect(lit.number('person_hours') - bare.number('person_hours')).toBeCloseTo(1, 9);
    expect(lit.number('labour_cost')).toBeGreaterThan(bare.number('labour_cost'));
    expect(lit.said('pilot_term')).toContain('put out before the work and lit again');
    expect(bare.said('pilot_term')).toBeUndefined();
  });

  it('none cost nothing', () => {
    expect(priced(system).number('tasks.pilot_lights.task_hours')).toBe(0);
  });
});
