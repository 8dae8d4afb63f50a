import type { ResultLine } from '../../src/template/result-lines.ts';
import { buyByHand } from './hand-written-buying.ts';
import type { HandEntries } from './hand-written-entries.ts';
import { type HandFloor, known, measureFloor, roundUp, toCents } from './hand-written-floor.ts';
import { hoursByHand } from './hand-written-hours.ts';

/**
 * The full flake and the solid colour system as plain functions: what someone would write who needs the price and
 * nothing else. It works out the result lines and only what they need, with numbers as they are, and explains nothing.
 */
export function priceByHand(entries: HandEntries): Record<ResultLine, number> {
  const floor = measureFloor(entries);
  const grinding = grindFloor(entries, floor);
  const materials = buyByHand(entries, floor);
  const hours = hoursByHand(entries, floor, grinding);
  const cost = costOf(entries, floor, grinding, materials, hours);
  const price = priceOf(entries, cost, hours, materials.bought);
  return { ...cost, ...price, ...leftOf(entries, cost, price, floor, hours), ...hours };
}

interface Grinding {
  readonly rate: number;
  readonly dayCost: number;
  readonly diamonds: number;
}

function grindFloor(entries: HandEntries, { area }: HandFloor): Grinding {
  const sets = machinesUsed(entries, area);
  const hardness = known(entries.hardnessEffects[entries.hardness]);
  const old = known(entries.oldSurfaces[entries.oldSurface]);
  return {
    rate: (hardness.rateShare * old.rateShare) / sets.reduce((sum, { set, share }) => sum + share / set.rate, 0),
    dayCost: sets.reduce((sum, { set, share }) => sum + share * set.dayCost, 0),
    diamonds: area * Math.max(hardness.diamondUse, old.diamondUse) * entries.grindFactor,
  };
}

/** Each machine with its share of the floor: between two sizes either would do. */
function machinesUsed(entries: HandEntries, area: number) {
  const { planetaryFrom, planetaryAlways, handToolsUnder, walkBehindFrom } = entries;
  const large = area >= planetaryAlways ? 1 : Math.max(0, (area - planetaryFrom) / (planetaryAlways - planetaryFrom));
  const hand = area <= handToolsUnder ? 1 : Math.max(0, (walkBehindFrom - area) / (walkBehindFrom - handToolsUnder));
  const bySize = { large_planetary: large, hand_tools: hand, walk_behind: Math.max(0, 1 - large - hand) };
  const shares = entries.grinder === 'by_floor_size' ? bySize : { [entries.grinder]: 1 };
  return Object.entries(shares).map(([machine, share]) => ({ set: known(entries.machineSets[machine]), share }));
}

type Hours = ReturnType<typeof hoursByHand>;
type Cost = ReturnType<typeof costOf>;
type Price = ReturnType<typeof priceOf>;

function costOf(
  entries: HandEntries,
  { area }: HandFloor,
  grinding: Grinding,
  materials: ReturnType<typeof buyByHand>,
  hours: Hours,
) {
  const { labourRate, redoRate, contingencyRate } = entries;
  const consumables_cost =
    entries.consumablesJob +
    entries.consumablesArea * area +
    entries.consumablesCoat * materials.coats +
    grinding.diamonds;
  const labour_cost = hours.paid_hours * labourRate + hours.overtimeCost;
  const equipment_cost = hours.equipmentDays * (entries.equipmentDay + grinding.dayCost);
  const trip = 2 * entries.milesOneWay * entries.truckRate + entries.tollsAndParking;
  const travel_cost = hours.roundTrips * trip;
  const direct_cost = materials.cost + consumables_cost + labour_cost + equipment_cost + travel_cost;
  const overhead_cost = hours.paid_hours * entries.overheadRate;
  const contingency_cost = contingencyRate * direct_cost;
  const callback = entries.callbackHours * labourRate + trip + entries.callbackOther;
  const reserve_cost = entries.touchupRate * callback + redoRate * entries.redoFactor * direct_cost;
  const full_cost = direct_cost + overhead_cost + contingency_cost + reserve_cost;
  return {
    materials_cost: materials.cost,
    consumables_cost,
    labour_cost,
    equipment_cost,
    travel_cost,
    direct_cost,
    overhead_cost,
    contingency_cost,
    reserve_cost,
    full_cost,
  };
}

function priceOf(entries: HandEntries, cost: Cost, { visits }: Hours, bought: number) {
  const gross = entries.targetOn === 'gross';
  const feeRate = entries.cardFee * entries.cardShare + entries.financeFee * entries.financeShare;
  const taxShare = entries.taxMode === 'on_price' ? entries.salesTaxRate * entries.taxableShare : 0;
  const taxOnMaterials = entries.taxMode === 'on_materials' ? entries.salesTaxRate * bought : 0;
  const kept = gross
    ? 1 - entries.targetMargin
    : 1 - entries.targetMargin - entries.commissionRate - entries.receiptsTaxRate - feeRate * (1 + taxShare);
  const ofPrice = Math.max(0, kept);
  const toPay = gross ? cost.direct_cost : cost.full_cost + entries.cardFixedFee + feeRate * taxOnMaterials;
  const list_price = toPay / ofPrice;
  const minimum =
    entries.repairOnly === 1
      ? entries.minimumRepair
      : Math.max(crewDay(entries, gross) / ofPrice, visits * entries.minimumVisit);
  const price = roundUp(Math.max(minimum, list_price * (1 - entries.discount)) / entries.roundTo) * entries.roundTo;
  const tax = toCents(price * taxShare + taxOnMaterials);
  const cap =
    entries.depositCapApplies === 1 ? Math.min(entries.depositCapAmount, entries.depositCapShare * price) : price;
  const deposit = toCents(Math.min(entries.depositShare * price, cap));
  const total = price + tax;
  const fees = total * feeRate + entries.cardFixedFee + entries.receiptsTaxRate * price;
  return { list_price, price, tax, total, deposit, fees };
}

/** What a day of the usual crew costs: the least a job is worth, before the target. */
function crewDay(entries: HandEntries, gross: boolean): number {
  const hours = entries.usualCrew * entries.dayLength;
  const direct = hours * entries.labourRate + entries.equipmentDay;
  return gross ? direct : direct * (1 + entries.contingencyRate) + hours * entries.overheadRate;
}

function leftOf(
  entries: HandEntries,
  { direct_cost, full_cost }: Cost,
  { price, fees }: Price,
  { area }: HandFloor,
  { crew_days }: Hours,
) {
  const gross_profit = price - direct_cost;
  const commission = entries.commissionRate * price;
  const contribution = gross_profit - commission - fees;
  const profit = price - full_cost - commission - fees;
  return {
    price_per_sqft: price / area,
    gross_profit,
    gross_margin: gross_profit / price,
    commission,
    contribution,
    contribution_per_crew_day: contribution / crew_days,
    profit,
    net_margin: profit / price,
  };
}
