import { describe, expect, it } from 'vitest';
import { readIsoDate } from '../../src/units/serial-day.ts';
import { type PricedFloor, priced } from '../helpers/priced-floor.ts';
import { shippedSystems } from '../helpers/shipped-stacks.ts';

const flake = 'flake-full-broadcast';

const day = (iso: string): number => {
  const read = readIsoDate(iso);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.day;
};

describe('isocyanates and epoxy', () => {
  const verdicts = (floor: PricedFloor) =>
    ['isocyanates_absent', 'epoxy_absent'].map((check) => floor.check(check).verdict);

  it('are noted of an epoxy base under a polyaspartic clear: one of each', () => {
    const floor = priced(flake);
    expect([floor.number('isocyanate_products'), floor.number('epoxy_products')]).toEqual([1, 1]);
    expect(verdicts(floor)).toEqual(['fails', 'fails']);
    expect(floor.check('isocyanates_absent').severity).toBe('note');
  });

  it('are absent where no product that is used holds them', () => {
    const clear = { 'coats.clear.product': 'clear_epoxy', 'coats.second_clear.product': 'clear_epoxy' };
    expect(verdicts(priced(flake, { set: clear }))).toEqual(['holds', 'fails']);
    expect(verdicts(priced('flake-fast-one-day'))).toEqual(['fails', 'holds']);
  });

  it('of a patch resin count once there is something to patch', () => {
    const patched = priced(flake, { set: { spall_count: 2, spall_area: 2 } });
    expect(patched.number('isocyanate_products')).toBe(2);
  });
});

describe('an old floor', () => {
  // From memory: asbestos in old mastic and tile; 40 CFR 745, lead in homes from before 1978.
  const check = (old_surface: string, name: string) => priced(flake, { set: { old_surface } }).check(name);

  it.each(['thin_paint', 'peeling_coating'])('with %s is noted: the paint may hold lead, test it first', (surface) => {
    expect(check(surface, 'paint_known')).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(check(surface, 'paint_known').says).toMatch(/lead.*Test before grinding; local rules decide/);
    expect(check(surface, 'paint_known').source).toContain('from memory');
  });

  it('with mastic is stopped: it may hold asbestos, and a licensed laboratory tests it', () => {
    expect(check('mastic', 'mastic_tested')).toMatchObject({ verdict: 'fails', severity: 'stop' });
    expect(check('mastic', 'mastic_tested').says).toMatch(/asbestos.*licensed laboratory.*local rules decide/);
    expect(check('mastic', 'mastic_tested').source).toContain('from memory');
  });

  it('that is bare has neither', () => {
    for (const name of ['paint_known', 'mastic_tested']) expect(check('none', name).verdict, name).toBe('holds');
  });
});

describe('the circuit of the floor grinder', () => {
  // 1.5 kW at 120 V is 12.5 A (common practice, no source); 80 % of a circuit for hours: from memory.
  const at = (set: Readonly<Record<string, number | string>>, system = flake) => priced(system, { set });

  it('of 15 A carries 12 A and not the 12.5 A of 1.5 kW at 120 V; one of 20 A carries 16 A', () => {
    const small = at({ circuit_amps: 15 });
    expect(small.number('grinder_amps')).toBe(12.5);
    expect(small.check('circuit_carries')).toMatchObject({ verdict: 'fails', severity: 'caution' });
    expect(small.check('circuit_carries').says).toContain('draws 12.5 A; a circuit of 15 A carries 12 A');
    expect(at({ circuit_amps: 20 }).check('circuit_carries').verdict).toBe('holds');
  });

  it('is noted until somebody has read it, and not for hand tools or a machine with its own generator', () => {
    expect(at({}).check('circuit_known')).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(at({}).check('circuit_carries').verdict).toBe('holds');
    for (const grinder of ['hand_tools', 'large_planetary'])
      expect(at({ grinder, circuit_amps: 10 }).check('circuit_carries').verdict, grinder).toBe('holds');
  });
});

describe('the right to cancel', () => {
  const until = (signed: number, days = 3) =>
    priced(flake, { set: { quote_date: signed, cancel_days: days } }).number('cancel_until');

  // Business days leave out Sundays and federal holidays: 16 CFR 429.0, from memory. Holidays are not known to the sheet.
  it.each([
    ['Monday 5 January 2026', '2026-01-05', '2026-01-08'],
    ['Wednesday 7 January', '2026-01-07', '2026-01-10'],
    ['Thursday 8 January', '2026-01-08', '2026-01-12'],
    ['Saturday 10 January', '2026-01-10', '2026-01-14'],
    ['Sunday 11 January', '2026-01-11', '2026-01-14'],
  ])('after signing on %s lasts until %3$s', (_, signed, last) => {
    expect(until(day(signed))).toBe(day(last));
  });

  it('is found as by counting on a calendar, for every weekday and up to 14 business days', () => {
    for (let signed = day('2026-03-01'); signed < day('2026-03-08'); signed += 1)
      for (const days of [1, 3, 6, 7, 14]) {
        let last = signed;
        // Day 1 of the serial count, 1899-12-31, was a Sunday.
        for (let left = days; left > 0; left -= (last - 1) % 7 === 0 ? 0 : 1) last += 1;
        expect(until(signed, days), `${signed} + ${days}`).toBe(last);
      }
  });

  it('cautions work that starts on its last day, and asks that no custom blend is ordered before', () => {
    const starting = (start: string) =>
      priced(flake, { set: { quote_date: day('2026-01-05'), start_date: day(start) } });
    expect(starting('2026-01-08').check('starts_after_cancelling')).toMatchObject({
      verdict: 'fails',
      severity: 'caution',
    });
    expect(starting('2026-01-09').check('starts_after_cancelling').verdict).toBe('holds');
    expect(starting('2026-01-09').check('orders_wait').says).toContain('order no custom blend');
    const inTheShop = priced(flake, { set: { sold_at_home: 0, start_date: day('2026-01-05') } });
    expect(inTheShop.check('orders_wait').verdict).toBe('holds');
    expect(inTheShop.check('starts_after_cancelling').verdict).toBe('holds');
  });
});

describe('a deposit', () => {
  it('of 30 % is noted as over California’s cap, the lesser of $1,000 and 10 %; of 10 % of $4,250 it is not', () => {
    const at = (set: Readonly<Record<string, number>>) => priced(flake, { set }).check('deposit_under_a_cap');
    expect(at({})).toMatchObject({ verdict: 'fails', severity: 'note' });
    expect(at({ deposit_share: 0.1 }).verdict).toBe('holds');
    expect(at({ deposit_cap_applies: 1 }).verdict).toBe('holds');
  });
});

describe('every system', () => {
  it.each(shippedSystems)(
    '%s has the verdict on the weather and every caution, none of which is a bare claim',
    (system) => {
      const floor = priced(system);
      const cautions = [
        ...['hand_grinding_short', 'collector_strong_enough', 'collector_known', 'machine_dust_kept', 'flames_out'],
        ...['isocyanates_absent', 'epoxy_absent', 'vapour_thinned', 'slip_known', 'slip_enough', 'circuit_carries'],
        ...['circuit_known', 'kits_end_empty', 'starts_after_cancelling', 'orders_wait', 'deposit_under_a_cap'],
        ...['weather_is_go', 'no_rain_on_wet_coat', 'forecast_looked_up', 'paint_known', 'mastic_tested'],
      ];
      for (const name of cautions) {
        const { verdict, says, source = '' } = floor.check(name);
        expect(['holds', 'fails'], name).toContain(verdict);
        expect(source, name).not.toBe('');
        if (verdict === 'fails') expect(says, name).toMatch(/\brule[s]?\b|\bdecide\b/);
      }
    },
  );
});
