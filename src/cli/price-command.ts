import { lineOrTableOf } from '../formula/cell-name.ts';
import type { Measures } from '../units/measures.ts';
import { type Arguments, readArguments } from './arguments.ts';
import { briefOutput } from './brief-output.ts';
import { datedEntries } from './dated-entries.ts';
import { explainOutput } from './explain-output.ts';
import { isForSale } from './for-sale.ts';
import { help } from './help.ts';
import { jsonOutput } from './json-output.ts';
import { entryList, systemList } from './list-output.ts';
import { findSystems, readTextFile, type ShippedTemplates, systemsToJudgeBy } from './load-templates.ts';
import { messages } from './messages.ts';
import { type PriceOutcome, priceSystems } from './price-systems.ts';
import { freshMeans, type PricingMeans } from './pricing-means.ts';
import { tableOutput } from './table-output.ts';

export type CommandResult =
  /** Not for sale: it prices a floor, and a price is incomplete or a check stops it. */
  | {
      readonly kind: 'output';
      readonly text: string;
      readonly forSale: boolean;
      /** What is no fault and worth knowing. */
      readonly notices: readonly string[];
    }
  /** Something given is wrong: all that is, nothing else. */
  | { readonly kind: 'faults'; readonly faults: readonly string[] };

/** Carries out one command line, on the day `today` (an ISO date). */
export function priceCommand(words: readonly string[], today: string, means = freshMeans): CommandResult {
  const { arguments: asked, faults: wrongWords } = readArguments(words);
  const wanted = { ...asked, given: datedEntries(asked.given, today) };
  const { show } = wanted;
  if (show.kind === 'help') return told(help);
  const templates = means.templates();
  const faults = [...wrongWords, ...templates.faults];
  const onlySystems = show.kind === 'list' && wanted.systems.length === 0;
  if (onlySystems && faults.length === 0) return told(systemList(templates.library.systems.values()));
  const priced = priceWanted(wanted, templates, onlySystems, means, faults);
  if (show.kind === 'explain') {
    const explained = isDoubtful(show.name, wanted, priced)
      ? undefined
      : explainOutput(priced.systems, show.name, wanted.measures);
    if (explained?.kind === 'text' && faults.length === 0) return told(explained.text);
    return { kind: 'faults', faults: [...faults, ...(explained?.kind === 'faults' ? explained.faults : [])] };
  }
  return faults.length > 0 ? { kind: 'faults', faults } : shown(show.kind, priced, wanted.measures);
}

/** Finds what is named and prices it. All that is wrong comes to `faults`. */
function priceWanted(
  wanted: Arguments,
  { library, products: shipped }: ShippedTemplates,
  onlySystems: boolean,
  means: PricingMeans,
  faults: string[],
): PriceOutcome {
  const found = findSystems(wanted.systems, library, faults);
  if (wanted.systems.length === 0 && !onlySystems) faults.push(messages.noSystem([...library.systems.keys()]));
  const { systems, complete } = systemsToJudgeBy(found, wanted.systems, library);
  const { priceList } = wanted;
  const text = priceList === undefined ? shipped.text : readTextFile(priceList, faults);
  const products = priceList === undefined || text === undefined ? shipped : { name: priceList, text };
  const missing = { systems: !complete, products: text === undefined };
  const priced = priceSystems({ library, systems, products, given: wanted.given, missing }, means);
  if (priced.kind === 'faults') faults.push(...priced.faults);
  return priced;
}

/** Whether a name cannot be judged: no system is worked out, or the rows that may hold it are refused. */
function isDoubtful(name: string, { given }: Arguments, priced: PriceOutcome): boolean {
  return priced.systems.length === 0 || (priced.kind === 'faults' && given.rows.has(lineOrTableOf(name)));
}

function shown(kind: 'tables' | 'brief' | 'json' | 'list', priced: PriceOutcome, measures: Measures): CommandResult {
  const { systems } = priced;
  const notices = priced.kind === 'priced' ? priced.notices : [];
  const forSale = systems.every(({ results }) => isForSale(results));
  switch (kind) {
    case 'tables':
      return { kind: 'output', text: tableOutput(systems, measures), forSale, notices };
    case 'brief':
      return { kind: 'output', text: briefOutput(systems, measures), forSale, notices };
    case 'json':
      return { kind: 'output', text: jsonOutput(systems), forSale, notices };
    case 'list':
      return told(entryList(systems));
    default:
      return kind satisfies never;
  }
}

/** What prices nothing. */
function told(text: string): CommandResult {
  return { kind: 'output', text, forSale: true, notices: [] };
}
