import { roundTrip } from './crew-day.ts';
import { extraWork } from './extra-work.ts';
import { grindersFor } from './grinding.ts';
import { measured, type SystemId } from './material-needs.ts';
import type { PaidVisit } from './paid-visits.ts';
import { numberIn, type PrintedQuote } from './printed-quote.ts';
import { cents, wholeUp } from './products.ts';

export interface Bought {
  readonly materials: number;
  readonly coats: number;
}

/** Every money line, from what is bought and the visits that are paid. */
export function jobMoney(
  system: SystemId,
  quote: PrintedQuote,
  bought: Bought,
  visits: readonly PaidVisit[],
): Readonly<Record<string, number>> {
  const costs = jobCosts(system, quote, bought, visits);
  const { taxOfPrice, taxOnMaterials, feeShare, fixedFee, receipts } = salesTaxAndFees(quote, bought);
  const { listPrice, price, least } = jobPrice(quote, costs, bought, visits);
  const tax = cents(price * taxOfPrice + taxOnMaterials);
  const commission = price * quote.entry('commission_rate');
  const fees = (price + tax) * feeShare + fixedFee + receipts * price;
  const cap = Math.min(quote.entry('deposit_cap_amount'), quote.entry('deposit_cap_share') * price);
  const most = quote.entry('deposit_cap_applies') === 1 ? cap : price;
  const left = price - costs.direct - commission - fees;
  return {
    ...costs.lines,
    list_price: listPrice,
    price,
    price_per_sqft: price / measured(quote).area,
    tax,
    total: price + tax,
    deposit: cents(Math.min(quote.entry('deposit_share') * price, most)),
    commission,
    fees,
    gross_profit: price - costs.direct,
    gross_margin: (price - costs.direct) / price,
    contribution: left,
    contribution_per_crew_day: left / sum(visits, 'crewDays'),
    profit: price - costs.full - commission - fees,
    net_margin: (price - costs.full - commission - fees) / price,
    walk_away_price: costs.direct / (1 - quote.entry('walk_away_margin')),
    minimum_charge: least,
  };
}

/** Sales tax by its mode, and what is paid away of every dollar charged. */
function salesTaxAndFees(quote: PrintedQuote, bought: Bought) {
  const [mode, rate] = [quote.choice('tax_mode'), quote.entry('sales_tax_rate')];
  return {
    taxOfPrice: mode === 'on_price' ? rate * quote.entry('taxable_share') : 0,
    taxOnMaterials: mode === 'on_materials' ? rate * bought.materials : 0,
    feeShare:
      quote.entry('card_fee') * quote.entry('card_share') + quote.entry('finance_fee') * quote.entry('finance_share'),
    fixedFee: quote.entry('card_fixed_fee'),
    receipts: quote.entry('receipts_tax_rate'),
  };
}

/** The price: at target, discounted, held above the minimum, up to the shop's step. */
function jobPrice(quote: PrintedQuote, costs: JobCosts, bought: Bought, visits: readonly PaidVisit[]) {
  const { taxOfPrice, taxOnMaterials, feeShare, fixedFee, receipts } = salesTaxAndFees(quote, bought);
  const target = quote.entry('target_margin');
  const gross = quote.choice('target_on') === 'gross';
  // Closed form: shares of the price, and fees on what is charged with its tax, are paid out of the price.
  const kept = 1 - target - (gross ? 0 : quote.entry('commission_rate') + receipts + feeShare * (1 + taxOfPrice));
  const listPrice = (gross ? costs.direct : costs.full + fixedFee + feeShare * taxOnMaterials) / kept;
  const leastWork = Math.max(crewDay(quote, gross) / kept, visits.length * quote.entry('minimum_visit'));
  const least = quote.entry('repair_only') === 1 ? quote.entry('minimum_repair') : leastWork;
  const step = quote.entry('round_to');
  const price = wholeUp(Math.max(least, listPrice * (1 - quote.entry('discount'))) / step) * step;
  return { listPrice, price, least };
}

interface JobCosts {
  readonly direct: number;
  readonly full: number;
  readonly lines: Readonly<Record<string, number>>;
}

function jobCosts(system: SystemId, quote: PrintedQuote, bought: Bought, visits: readonly PaidVisit[]): JobCosts {
  const { area, edge } = measured(quote);
  const extra = extraWork(quote, edge);
  const [paid, trips] = [sum(visits, 'paid') + extra.testHoursPaid, sum(visits, 'trips') + extra.testTrips];
  const overtime = sum(visits, 'overtime') + overtimeOfWeek(quote, visits, paid, trips);
  const [trip, rate] = [roundTrip(quote), quote.entry('labour_rate')];
  const onPurchases = quote.choice('tax_mode') === 'on_purchases' ? quote.entry('sales_tax_rate') : 0;
  const equipmentDay = quote.entry('equipment_day') + grindersFor(quote).dayCost;
  const freight = bought.materials > 0 ? quote.entry('freight_order') : 0;
  const five = {
    materials_cost: bought.materials * (1 + onPurchases) + freight,
    consumables_cost:
      quote.entry('consumables_job') +
      area * quote.entry('consumables_area') +
      bought.coats * quote.entry('consumables_coat') +
      diamonds(system, quote) +
      extra.consumables,
    labour_cost: paid * rate + overtime * rate * (quote.entry('overtime_factor') - 1),
    equipment_cost: sum(visits, 'equipmentDays') * equipmentDay + extra.equipment,
    travel_cost: trips * trip,
  };
  const direct = Object.values(five).reduce((total, cost) => total + cost, 0);
  const callback = quote.entry('callback_hours') * rate + trip + quote.entry('callback_other');
  const [touchUp, redo] = system === 'solid-colour' ? [0.08, 0.02] : [0.04, 0.01];
  const lines = {
    ...five,
    direct_cost: direct,
    overhead_cost: paid * quote.entry('overhead_rate'),
    contingency_cost: direct * quote.entry('contingency_rate'),
    reserve_cost: touchUp * callback + redo * 1.3 * direct,
  };
  const full = direct + lines.overhead_cost + lines.contingency_cost + lines.reserve_cost;
  return { direct, full, lines: { ...lines, full_cost: full } };
}

/** What this job alone has over the week's hours, of those not overtime by the day already; each trip is a day of a week. */
function overtimeOfWeek(quote: PrintedQuote, visits: readonly PaidVisit[], paid: number, trips: number): number {
  const weeks = Math.max(1, trips / quote.entry('trips_a_week'));
  const crew = quote.entry('usual_crew') + quote.entry('crew_extra');
  return Math.max(0, paid - sum(visits, 'overtime') - crew * weeks * quote.entry('overtime_after_week'));
}

/** Wear of diamonds: the slab's or the old surface's, whichever is more. */
function diamonds(system: SystemId, quote: PrintedQuote): number {
  const slab = numberIn(quote.row('hardness_effects', 'hardness_code', quote.choice('hardness')), 'diamond_use');
  const old = numberIn(quote.row('old_surfaces', 'surface_code', quote.choice('old_surface')), 'diamond_use');
  return measured(quote).area * Math.max(slab, old) * (system === 'solid-colour' ? 1.2 : 1);
}

/** What one day of the usual crew costs: job cost, or with overhead and contingency where the target is net. */
function crewDay(quote: PrintedQuote, gross: boolean): number {
  const hours = quote.entry('usual_crew') * quote.entry('day_length');
  const direct = hours * quote.entry('labour_rate') + quote.entry('equipment_day');
  return gross ? direct : direct * (1 + quote.entry('contingency_rate')) + hours * quote.entry('overhead_rate');
}

function sum(visits: readonly PaidVisit[], part: keyof PaidVisit): number {
  return visits.reduce((total, visit) => total + visit[part], 0);
}
