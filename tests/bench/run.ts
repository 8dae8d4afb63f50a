import { availableParallelism } from 'node:os';
import { Disagreement, mustAgree } from './agreement.ts';
import { type BenchQuote, openBenchQuote } from './bench-quote.ts';
import { measureEvaluators, repricedEntries } from './evaluators.ts';
import { loadText } from './load-text.ts';
import { runPageBench } from './page-run.ts';
import { measureStructure, structuralEdits } from './structural-edits.ts';
import { headLines, type ReportRow, rowLine } from './table.ts';
import { measureEdits, movedEntries } from './value-edits.ts';
import { mustAgreeInVariants } from './variants.ts';

const systems = ['flake-full-broadcast', 'solid-colour', 'flake-full-broadcast', 'solid-colour'] as const;
/** Of the demo quote with four options. */
const mostFormulas = 3500;
// The same entries in every run, so that runs can be compared.
const seed = 20261125;

/** Both halves, or the one that is named: `engine` or `page`. */
async function run(half: string | undefined): Promise<void> {
  if (half !== 'page') await runEngineBench();
  if (half !== 'engine') await runPageBench();
}

async function runEngineBench(): Promise<void> {
  const bench = await openBenchQuote(systems);
  mustAgree(bench, 'before anything is timed');
  const variants = mustAgreeInVariants(bench);
  mustAgree(bench, 'after taking the variants back');
  console.info(`Node ${process.version}, ${availableParallelism()} cores, seed ${seed}. ${loadText()}`);
  console.info(`A quote of ${systems.length} options with ${bench.formulas} formulas (budget ${mostFormulas}).\n`);
  console.info(headLines());
  for (const rows of [valueRows, structureRows, evaluatorRows])
    for (const row of rows(bench)) console.info(rowLine(row));
  console.info(
    `\nThe engine and the hand-written quote agreed to 1e-9 in every result line: at first, in ${variants} variants, and for every value that was timed.\n`,
  );
}

// Each gives its rows as they are measured.

function* valueRows(bench: BenchQuote): Generator<ReportRow> {
  for (const moved of movedEntries) {
    const { numbers, auditor, hand, closures, changed } = measureEdits(bench, moved);
    const what = `edit: ${moved.what}, ${Math.round(changed)} cells change`;
    yield { what, timing: numbers, budget: { kind: 'time', median: 1, p99: 4 }, hand };
    yield { what: '  the auditor, when the page rests', timing: auditor, budget: { kind: 'none' }, hand, closures };
  }
}

function* structureRows(bench: BenchQuote): Generator<ReportRow> {
  for (const structural of structuralEdits) {
    const { numbers, auditor, hand } = measureStructure(bench, structural);
    const median = structural.scope === 'one option' ? 30 : 100;
    const what = `structure: ${structural.what}, ${structural.scope}`;
    yield { what, timing: numbers, budget: { kind: 'time', median }, hand };
    yield { what: '  the auditor, when the page rests', timing: auditor, budget: { kind: 'none' }, hand };
  }
}

function* evaluatorRows(bench: BenchQuote): Generator<ReportRow> {
  for (const repriced of repricedEntries) {
    const { workbook, closures, hand, compared } = measureEvaluators(bench, repriced, seed);
    const what = `1,000 repricings: ${repriced.what}`;
    yield { what: `${what}, workbook`, timing: workbook, budget: { kind: 'times faster', least: 30 }, hand, closures };
    yield {
      what: `  closures; ${compared} cells compared, all equal`,
      timing: closures,
      budget: { kind: 'none' },
      hand,
    };
  }
}

run(process.argv[2]).catch((error: unknown) => {
  console.error(error instanceof Disagreement ? `The numbers disagree: ${error.message}` : error);
  process.exitCode = 1;
});
