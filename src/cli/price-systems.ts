import { openWorkbook } from '../engine/workbook.ts';
import type { CellPlan, CellValue } from '../formula/cells.ts';
import { readProducts } from '../pricelist/read-products.ts';
import type { OptionResults } from '../quote/option-results.ts';
import { priceOption } from '../quote/price-option.ts';
import type { CompiledStack } from '../template/compiled-stack.ts';
import type { ProductRow, StackEntries } from '../template/entries.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import { stackOf } from '../template/stack-of.ts';
import type { TemplateLibrary } from '../template/template-library.ts';
import { type Given, giveEntries } from './given-entries.ts';
import type { NamedSystem, NamedText } from './load-templates.ts';
import { messages } from './messages.ts';

export interface PriceRequest {
  readonly library: TemplateLibrary;
  readonly systems: readonly NamedSystem[];
  /** Products as CSV. */
  readonly products: NamedText;
  readonly given: Given;
}

export interface PricedSystem {
  readonly sheet: SheetFile;
  readonly results: OptionResults;
  readonly entries: StackEntries;
}

export type PriceOutcome =
  | { readonly kind: 'priced'; readonly systems: readonly PricedSystem[] }
  | { readonly kind: 'faults'; readonly faults: readonly string[] };

/** Which of the shipped sheets lie under a system. */
const standard = { priceList: 'demo', shop: 'standard', floor: 'garage' } as const;

/** Prices systems on one floor. What is wrong in sheets and price list is told first, since entries are read by them. */
export function priceSystems(request: PriceRequest): PriceOutcome {
  const faults: string[] = [];
  const stacks = request.systems.flatMap((system) => stackFor(system, request.library, faults) ?? []);
  const products = readPriceList(request.products, stacks[0], faults);
  if (faults.length > 0) return { kind: 'faults', faults: unique(faults) };
  const given = giveEntries(stacks, request.given, products);
  if (given.faults.length > 0) return { kind: 'faults', faults: given.faults };
  const systems = given.stacks.flatMap(({ stack, entries }, at): PricedSystem[] => {
    const priced = priceOption(stack, entries, products, workedOut);
    const sheet = request.systems[at]?.sheet;
    if (priced.kind === 'refused') faults.push(...priced.faults.map(faultText));
    return priced.kind === 'refused' || sheet === undefined ? [] : [{ sheet, results: priced.results, entries }];
  });
  return faults.length > 0 ? { kind: 'faults', faults: unique(faults) } : { kind: 'priced', systems };
}

function stackFor({ name, sheet }: NamedSystem, library: TemplateLibrary, faults: string[]): CompiledStack | undefined {
  const priceList = library.priceLists.get(standard.priceList);
  const shop = library.shops.get(standard.shop);
  const floor = library.floors.get(standard.floor);
  if (priceList === undefined) faults.push(messages.sheetMissing('price-list', standard.priceList));
  if (shop === undefined) faults.push(messages.sheetMissing('shop', standard.shop));
  if (floor === undefined) faults.push(messages.sheetMissing('floor', standard.floor));
  if (priceList === undefined || shop === undefined || floor === undefined) return undefined;
  const compiled = stackOf({ priceList, shop, floor, system: sheet }, library.parts);
  faults.push(...compiled.faults.map((fault) => `${name}: ${faultText(fault)}`));
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

/** By the engine of record. */
function workedOut(plan: CellPlan): readonly CellValue[] {
  const workbook = openWorkbook(plan);
  const values = workbook.values();
  workbook.close();
  return values;
}

function faultText({ path, reason }: SheetFault): string {
  return path === '' ? reason : `${path}: ${reason}`;
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}
