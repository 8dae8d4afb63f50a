import { readProducts } from '../pricelist/read-products.ts';
import type { OptionResults } from '../quote/option-results.ts';
import { priceOption } from '../quote/price-option.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ProductRow, StackEntries } from '../template/entries.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import type { TemplateLibrary } from '../template/template-library.ts';
import { type Given, type GivenStack, giveEntries } from './given-entries.ts';
import type { NamedSystem, NamedText } from './load-templates.ts';
import { messages } from './messages.ts';
import { freshMeans, type PricingMeans } from './pricing-means.ts';

export interface PriceRequest {
  readonly library: TemplateLibrary;
  readonly systems: readonly NamedSystem[];
  /** Products as CSV. */
  readonly products: NamedText;
  readonly given: Given;
  /** What was named and is not at hand. Then nothing is priced, and what else is wrong is told as far as it can be. */
  readonly missing?: { readonly systems: boolean; readonly products: boolean };
}

export interface PricedSystem {
  readonly sheet: SheetFile;
  readonly results: OptionResults;
  readonly entries: StackEntries;
}

export type PriceOutcome =
  | { readonly kind: 'priced'; readonly systems: readonly PricedSystem[]; readonly notices: readonly string[] }
  /** Systems: as they stand without what is refused, to judge names by; none when they cannot be worked out. */
  | { readonly kind: 'faults'; readonly faults: readonly string[]; readonly systems: readonly PricedSystem[] };

/** Which of the shipped sheets lie under a system. */
const standard = { priceList: 'demo', shop: 'standard', floor: 'garage' } as const;

/** Prices systems on one floor. What is wrong in sheets, price list and entries is told all at once. */
export function priceSystems(request: PriceRequest, means = freshMeans): PriceOutcome {
  const { systems: missingSystems, products: missingProducts } = request.missing ?? { systems: false, products: false };
  const faults: string[] = [];
  const notices: string[] = [];
  const stacks = request.systems.flatMap(
    (system) => stackFor(system, request.library, means, { faults, notices }) ?? [],
  );
  const everySheet = !missingSystems && faults.length === 0;
  const productFaults: string[] = [];
  const products = readPriceList(request.products, stacks[0], productFaults);
  faults.push(...productFaults);
  const productsKnown = !missingProducts && productFaults.length === 0;
  const given = giveEntries(stacks, request.given, { products: productsKnown ? products : undefined, everySheet });
  faults.push(...given.faults);
  const systems =
    everySheet && productsKnown
      ? given.stacks.flatMap((one, at) => priced(one, request.systems[at], products, means, faults))
      : [];
  return faults.length > 0 || systems.length < stacks.length
    ? { kind: 'faults', faults: unique(faults), systems }
    : { kind: 'priced', systems, notices: unique(notices) };
}

function priced(
  { stack, entries }: GivenStack,
  system: NamedSystem | undefined,
  products: ReadonlyMap<string, ProductRow>,
  { evaluate }: PricingMeans,
  faults: string[],
): PricedSystem[] {
  const option = priceOption(stack, entries, products, evaluate);
  if (option.kind === 'refused') faults.push(...option.faults.map(faultText));
  return option.kind === 'refused' || system === undefined
    ? []
    : [{ sheet: system.sheet, results: option.results, entries }];
}

function stackFor(
  { name, sheet }: NamedSystem,
  library: TemplateLibrary,
  { compile }: PricingMeans,
  { faults, notices }: { readonly faults: string[]; readonly notices: string[] },
): CompiledStack | undefined {
  const priceList = library.priceLists.get(standard.priceList);
  const shop = library.shops.get(standard.shop);
  const floor = library.floors.get(standard.floor);
  if (priceList === undefined) faults.push(messages.sheetMissing('price-list', standard.priceList));
  if (shop === undefined) faults.push(messages.sheetMissing('shop', standard.shop));
  if (floor === undefined) faults.push(messages.sheetMissing('floor', standard.floor));
  if (priceList === undefined || shop === undefined || floor === undefined) return undefined;
  const compiled = compile({ priceList, shop, floor, system: sheet }, library.parts);
  faults.push(...compiled.faults.map((fault) => `${name}: ${faultText(fault)}`));
  notices.push(...compiled.notices.map((notice) => `${name}: ${faultText(notice)}`));
  return compiled.stack;
}

function readPriceList(
  { name, text }: NamedText,
  stack: CompiledStack | undefined,
  faults: string[],
): ReadonlyMap<string, ProductRow> {
  if (stack === undefined) return new Map();
  const { fields, kinds } = stack.products;
  const read = readProducts(text, [...fields.values()], kinds.keys());
  for (const { line, column, reason } of read.faults)
    faults.push(`${name}, line ${line}${column === '' ? '' : `, ${column}`}: ${reason}`);
  return read.products;
}

function faultText({ path, reason }: SheetFault): string {
  return path === '' ? reason : `${path}: ${reason}`;
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}
