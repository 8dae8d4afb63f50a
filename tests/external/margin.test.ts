import { describe, expect, it } from 'vitest';
import type { Given } from '../helpers/given-floor.ts';
import { priced } from '../helpers/priced-floor.ts';

/*
 * The shipped money formulas held to margin arithmetic worked out elsewhere (derived; the inputs are illustrative). The
 * cost is put in as a departure, so that the same numbers come out.
 */
const system = 'flake-full-broadcast';

describe('markup and margin', () => {
  // u = m / (1 - m), to the four digits of the table.
  it.each([
    [0.1, 0.1111],
    [0.15, 0.1765],
    [0.2, 0.25],
    [0.25, 0.3333],
    [0.3, 0.4286],
    [1 / 3, 0.5],
    [0.35, 0.5385],
    [0.4, 0.6667],
    [0.45, 0.8182],
    [0.5, 1],
    [0.6, 1.5],
  ])('a gross margin of %f is a markup of %f on job cost', (margin, markup) => {
    const job = priced(system, { set: { target_margin: margin }, instead: { direct_cost: 2850 } });
    const list = job.number('list_price');
    expect(list / 2850 - 1).toBeCloseTo(markup, 4);
    // And back, m = u / (1 + u): the sheet's own gross margin at that price.
    const sold = priced(system, { set: { target_margin: margin }, instead: { direct_cost: 2850, price: list } });
    expect(sold.number('gross_margin')).toBeCloseTo(margin, 12);
  });
});

describe('a net price whose commission, card fee and tax are shares of itself', () => {
  const rates = {
    target_on: 'net',
    target_margin: 0.45,
    commission_rate: 0.08,
    card_fee: 0.029,
    card_share: 1,
    card_fixed_fee: 0.3,
    finance_share: 0,
    receipts_tax_rate: 0,
    tax_mode: 'on_price',
    sales_tax_rate: 0.0825,
    taxable_share: 1,
    round_to: 0.01,
  };
  const job = (set: Given['set'] = {}, instead: Given['instead'] = {}) =>
    priced(system, { set: { ...rates, ...set }, instead: { full_cost: 2850, ...instead } });

  it('is 2850.30 / 0.4386075 = 6498.5209, up to the cent 6498.53', () => {
    const found = job();
    expect(found.number('price_kept')).toBeCloseTo(0.4386075, 10);
    expect(found.number('list_price')).toBeCloseTo(6498.5209, 4);
    expect(found.number('margin_at_list')).toBeCloseTo(0.45, 12);
    expect(found.number('price')).toBe(6498.53);
  });

  it('splits into tax 536.1280, invoice 7034.6489, commission 519.8817, fees 204.3048, profit 2924.3344: 45 %', () => {
    const list = job().number('list_price');
    const found = job({}, { price: list });
    // Tax is a money line, rounded to the cent; all that follows from the invoice moves by less than that.
    expect(found.number('tax')).toBe(536.13);
    expect(Math.abs(found.number('tax') - 536.128)).toBeLessThan(0.005);
    expect(Math.abs(found.number('total') - 7034.6489)).toBeLessThan(0.005);
    expect(found.number('commission')).toBeCloseTo(519.8817, 4);
    // Card fee 204.3048, which holds the fixed 0.30 already.
    expect(Math.abs(found.number('fees') - 204.3048)).toBeLessThan(0.001);
    expect(Math.abs(found.number('profit') - 2924.3344)).toBeLessThan(0.001);
    expect(found.number('net_margin')).toBeCloseTo(0.45, 6);
  });

  it('is 6476.6398 with 40 % of the price taxed and 6273.3358 with half paid by card, without the fixed fee', () => {
    expect(job({ card_fixed_fee: 0, taxable_share: 0.4 }).number('list_price')).toBeCloseTo(6476.6398, 4);
    expect(job({ card_fixed_fee: 0, card_share: 0.5 }).number('list_price')).toBeCloseTo(6273.3358, 4);
  });

  it('is not cost with the percentages added: 2850 x 1.559 = 4443.15 leaves only 24.717 %', () => {
    const found = job({ card_fixed_fee: 0 }, { price: 2850 * 1.559 });
    expect(found.number('price')).toBeCloseTo(4443.15, 10);
    expect(found.number('net_margin')).toBeCloseTo(0.24717, 5);
  });

  it('falls from 45 % to 40.127 % when a tenth is given away', () => {
    expect(job({ discount: 0.1 }).number('net_margin')).toBeCloseTo(0.40127, 5);
  });

  it('does not exist when the shares take all of it, and the sheet says so', () => {
    const found = job({ target_margin: 0.9 });
    expect(found.value('list_price')).toMatchObject({ kind: 'division' });
    expect(found.check('target_reachable')).toMatchObject({ verdict: 'fails', severity: 'stop', absolute: true });
  });
});

describe('a discount on a gross margin of 40 %', () => {
  // m' = (m - d) / (1 - d), and the volume that holds the gross profit is m / (m - d) as large.
  it.each([
    [0.1, 0.33333, 1.33333],
    [0.05, 0.36842, 1.14286],
  ])('of %f leaves %f and asks for %f times the work', (discount, left, volume) => {
    const set = { target_on: 'gross', target_margin: 0.4, discount, round_to: 0.01 };
    const found = priced(system, { set, instead: { direct_cost: 30_000 } });
    expect(found.number('gross_margin')).toBeCloseTo(left, 5);
    expect((found.number('list_price') - 30_000) / found.number('gross_profit')).toBeCloseTo(volume, 5);
  });
});

describe('what a job must bring in', () => {
  it('is at least (16 h x 46.10 + 180 + 95 + 120) / (1 - 0.35) = 1742.4615 for a crew-day', () => {
    // Derived; the vehicle, consumables and office of the example stand in the equipment of a crew-day.
    const day = { usual_crew: 2, day_length: 8, labour_rate: 46.1, equipment_day: 180 + 95 + 120 };
    const found = priced(system, { set: { ...day, target_on: 'gross', target_margin: 0.35 } });
    expect(found.number('minimum_job')).toBeCloseTo(1742.4615, 4);
  });

  it('absorbs 126,000 of overhead a year at $30 an hour over 4,200 paid hours', () => {
    // Derived: 126,000 / 4,200 = 30.00, the shipped rate (common practice, no source).
    const found = priced(system);
    const jobsAYear = 4200 / found.number('paid_hours');
    expect(found.number('overhead_cost') * jobsAYear).toBeCloseTo(126_000, 6);
  });

  it('sets aside 3 % x $900 = $27 for callbacks', () => {
    // Derived; the rate and the cost are illustrative.
    const callback = { callback_hours: 0, callback_other: 900, miles_one_way: 0, tolls_and_parking: 0 };
    const found = priced(system, { set: { ...callback, touchup_rate: 0.03, redo_rate: 0 } });
    expect(found.number('reserve_cost')).toBeCloseTo(27, 12);
  });
});
