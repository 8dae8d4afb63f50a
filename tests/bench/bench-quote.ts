import { readFileSync } from 'node:fs';
import type { AuditAnswer } from '../../src/engine/audit-messages.ts';
import { Auditor } from '../../src/engine/auditor.ts';
import { QuoteAudit } from '../../src/engine/quote-audit.ts';
import { QuoteWorkbooks } from '../../src/engine/quote-workbooks.ts';
import { makeQuote } from '../../src/quote/new-quote.ts';
import type { OptionResults } from '../../src/quote/option-results.ts';
import type { QuoteDocument } from '../../src/quote/quote-document.ts';
import { QuoteStacks } from '../../src/quote/quote-stacks.ts';
import { pinSheets } from '../../src/quote/sheet-store.ts';
import { QuoteSession } from '../../src/session/quote-session.ts';
import type { ProductRow } from '../../src/template/entries.ts';
import { repository } from '../helpers/repository-files.ts';
import { shippedProducts, templatePaths } from '../helpers/shipped-templates.ts';
import { Disagreement } from './agreement.ts';
import type { HandSystem } from './hand-written-entries.ts';
import { millisecondsOf } from './timing.ts';

/** The systems of a benched quote; the hand-written quote knows these two. */
export type BenchSystem = keyof typeof handSystems;
const handSystems = { 'flake-full-broadcast': 'flake', 'solid-colour': 'solid' } as const satisfies Record<
  string,
  HandSystem
>;

/** A quote that is open as on the page: templates, workbooks and session. */
export interface BenchQuote {
  readonly quote: QuoteDocument;
  readonly session: QuoteSession;
  readonly options: readonly BenchOption[];
  readonly products: ReadonlyMap<string, ProductRow>;
  /** Formulas of all options together. */
  readonly formulas: number;
  results(option: BenchOption): OptionResults;
  /** Has the auditor compare every cell, as when the page rests; the milliseconds it took. Throws where a cell differs. */
  audit(): number;
}

export interface BenchOption {
  readonly id: string;
  readonly system: HandSystem;
}

/** Opens a quote of shipped templates; throws with what was refused. */
export async function openBenchQuote(systems: readonly BenchSystem[]): Promise<BenchQuote> {
  const files = templatePaths.map((path): [string, unknown] => [
    path,
    JSON.parse(readFileSync(`${repository}/${path}`, 'utf8')),
  ]);
  const { store, faults } = await pinSheets(new Map(files));
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  const priceList = store.library.priceLists.get('demo');
  if (priceList === undefined) throw new Error('There is no price list.');
  const { products } = shippedProducts(priceList);
  const made = makeQuote(
    { id: 'bench', title: 'Benched floor', shop: 'standard', floor: 'garage', systems },
    store,
    products,
  );
  if (made.kind === 'refused') throw new Error(JSON.stringify(made.faults));
  const stacks = new QuoteStacks(store);
  const { openWorkbook, audit } = auditOfBench();
  const workbooks = new QuoteWorkbooks((quote, option) => stacks.of(quote, option).stack, openWorkbook);
  const loaded = workbooks.load(made.quote);
  if (loaded.kind === 'refused') throw new Error(JSON.stringify(loaded.faults));
  return { ...opened(made.quote, new QuoteSession(made.quote, workbooks), products, systems), audit };
}

/** The page's workbooks, with the auditor in this thread instead of a worker. */
function auditOfBench(): { readonly openWorkbook: QuoteAudit['openWorkbook']; readonly audit: () => number } {
  const auditor = new Auditor();
  let resting: (() => void) | undefined;
  let took = 0;
  const audit = new QuoteAudit({
    call: ({ answered }) => ({
      ask: (request) => {
        const answers: AuditAnswer[] = [];
        took = millisecondsOf(() => {
          answers.push(auditor.audit(request));
        });
        for (const answer of answers) answered(answer);
      },
      close: () => undefined,
    }),
    rest: (work) => {
      resting = work;
    },
  });
  let finding = 'none';
  audit.start(({ kind }) => {
    finding = kind;
  });
  return {
    openWorkbook: audit.openWorkbook,
    audit: () => {
      finding = 'none';
      resting?.();
      if (finding !== 'same') throw new Disagreement(`The auditor does not agree with the closures: ${finding}`);
      return took;
    },
  };
}

function opened(
  quote: QuoteDocument,
  session: QuoteSession,
  products: ReadonlyMap<string, ProductRow>,
  systems: readonly BenchSystem[],
): Omit<BenchQuote, 'audit'> {
  const options = systems.map((system, at) => ({ id: quote.options[at]?.id ?? '', system: handSystems[system] }));
  const results = ({ id }: BenchOption): OptionResults => {
    const found = session.results(id);
    if (found === undefined) throw new Error(`The quote has no option ${id}`);
    return found;
  };
  const formulas = options.reduce((sum, option) => sum + formulasOf(results(option)), 0);
  return { quote, session, options, products, formulas, results };
}

function formulasOf({ option }: OptionResults): number {
  return option.plan.cells.filter((cell) => cell.content.kind === 'formula').length;
}
