import { findSystems } from '../../src/cli/load-templates.ts';
import { type PricedSystem, type PriceOutcome, priceSystems } from '../../src/cli/price-systems.ts';
import { keptMeans } from './kept-means.ts';

const templates = keptMeans.templates();

export interface GivenInTest {
  /** Typed texts, or numbers in the line's own unit. */
  readonly set?: Readonly<Record<string, number | string>>;
  readonly rows?: Readonly<Record<string, unknown>>;
  /** Products as CSV in place of the demo's. */
  readonly products?: string;
}

/** Prices shipped systems as the command line does. */
export function priceShipped(systems: readonly string[], given: GivenInTest = {}): PriceOutcome {
  const faults = [...templates.faults];
  const found = findSystems(systems, templates.library, faults);
  if (faults.length > 0) return { kind: 'faults', faults, systems: [] };
  const sets = new Map(Object.entries(given.set ?? {}).map(([name, value]) => [name, String(value)]));
  const request = {
    library: templates.library,
    systems: found,
    products: given.products === undefined ? templates.products : { name: 'products.csv', text: given.products },
    given: { sets, rows: new Map(Object.entries(given.rows ?? {})) },
  };
  return priceSystems(request, keptMeans);
}

/** The same where nothing may be refused. */
export function priced(systems: readonly string[], given: GivenInTest = {}): readonly PricedSystem[] {
  const outcome = priceShipped(systems, given);
  if (outcome.kind === 'faults') throw new Error(outcome.faults.join('\n'));
  return outcome.systems;
}

export function faultsOf(systems: readonly string[], given: GivenInTest): readonly string[] {
  const outcome = priceShipped(systems, given);
  return outcome.kind === 'faults' ? outcome.faults : [];
}

export const demoProducts: string = templates.products.text;
