import { closureWorkbook } from '../../src/engine/closure-workbook.ts';
import type { OpenWorkbook } from '../../src/engine/option-workbook.ts';
import { QuoteWorkbooks, type StackFinder } from '../../src/engine/quote-workbooks.ts';
import { openWorkbook } from '../../src/engine/workbook.ts';
import { makeQuote } from '../../src/quote/new-quote.ts';
import type { QuoteDocument } from '../../src/quote/quote-document.ts';
import { QuoteStacks } from '../../src/quote/quote-stacks.ts';
import { pinSheets, type SheetStore } from '../../src/quote/sheet-store.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import type { ProductRow } from '../../src/template/entries.ts';
import type { OptionPlan } from '../../src/template/plan.ts';
import { readText } from './repository-files.ts';
import { shippedProducts, templatePaths } from './shipped-templates.ts';

/** A quote of two systems on the shipped floor, with everything that follows its edits. */
export interface OpenQuote {
  readonly quote: QuoteDocument;
  readonly workbooks: QuoteWorkbooks;
  readonly session: QuoteSession;
  readonly priceList: ReadonlyMap<string, ProductRow>;
}

export const flake = 'option_1';
export const solid = 'option_2';

/** By which evaluator an open quote is worked out. */
const evaluators = { engine: ({ plan }: OptionPlan) => openWorkbook(plan), closures: closureWorkbook };
type Evaluator = keyof typeof evaluators;

/**
 * Opens the quote anew, over sheets that are read and compiled once. The closures are many times quicker than the engine,
 * which is asked for where it is what a test looks at: how it follows edits.
 */
export async function openQuote(
  systems: readonly string[] = ['flake-full-broadcast', 'solid-colour'],
  evaluator: Evaluator | OpenWorkbook = 'closures',
): Promise<OpenQuote> {
  sheets ??= readSheets();
  const { store, priceList, stacks } = await sheets;
  const made = makeQuote(
    { id: 'quote', title: 'A garage', shop: 'standard', floor: 'garage', systems },
    store,
    priceList,
    stacks,
  );
  if (made.kind === 'refused') throw new Error(made.faults.map((fault) => fault.reason).join('\n'));
  const stackOf: StackFinder = (quote, option) => stacks.of(quote, option).stack;
  const workbooks = new QuoteWorkbooks(stackOf, typeof evaluator === 'string' ? evaluators[evaluator] : evaluator);
  const loaded = workbooks.load(made.quote);
  if (loaded.kind === 'refused') throw new Error(loaded.faults.map((fault) => fault.reason).join('\n'));
  return { quote: made.quote, workbooks, session: new QuoteSession(made.quote, workbooks), priceList };
}

interface ReadSheets {
  readonly store: SheetStore;
  readonly priceList: ReadonlyMap<string, ProductRow>;
  readonly stacks: QuoteStacks;
}

let sheets: Promise<ReadSheets> | undefined;

async function readSheets(): Promise<ReadSheets> {
  const files = new Map(templatePaths.map((path): [string, unknown] => [path, JSON.parse(readText(path) ?? 'null')]));
  const { store } = await pinSheets(files);
  const [priceListFile] = store.library.priceLists.values();
  if (priceListFile === undefined) throw new Error('No price list is shipped');
  return { store, priceList: shippedProducts(priceListFile).products, stacks: new QuoteStacks(store) };
}
