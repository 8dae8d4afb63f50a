import { availableParallelism } from 'node:os';
import { Disagreement, mustAgree } from './agreement.ts';
import { type BenchQuote, openBenchQuote } from './bench-quote.ts';
import { measureEvaluators, repricedEntries } from './evaluators.ts';
import { loadText } from './load-text.ts';
import { runPageBench } from './page-run.ts';
import { measureStructure, structuralEdits } from './structural-edits.ts';
import { type ReportRow, tableOf } from './table.ts';
import { measureEdits, movedEntries } from './value-edits.ts';
import { mustAgreeInVariants } from './variants.ts';

const systems = ['flake-full-broadcast', 'solid-colour', 'flake-full-broadcast', 'solid-colour'] as const;
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
  console.info(`A quote of ${systems.length} options with ${bench.formulas} formulas.\n`);
  console.info(tableOf([...valueRows(bench), ...structureRows(bench), ...evaluatorRows(bench)]));
  console.info(
    `\nThe engine and the hand-written quote agreed to 1e-9 in every result line: at first, in ${variants} variants, and for every value that was timed.\n`,
  );
}

function valueRows(bench: BenchQuote): ReportRow[] {
  return movedEntries.flatMap((moved): ReportRow[] => {
    const { numbers, hand, closures, changed } = measureEdits(bench, moved);
    const what = `edit: ${moved.what}, ${Math.round(changed)} cells change`;
    return [{ what, timing: numbers, budget: { kind: 'time', median: 1, p99: 4 }, hand, closures }];
  });
}

function structureRows(bench: BenchQuote): ReportRow[] {
  return structuralEdits.flatMap((structural): ReportRow[] => {
    const { numbers, hand } = measureStructure(bench, structural);
    const median = structural.scope === 'one option' ? 30 : 100;
    const what = `structure: ${structural.what}, ${structural.scope}`;
    return [{ what, timing: numbers, budget: { kind: 'time', median }, hand }];
  });
}

function evaluatorRows(bench: BenchQuote): ReportRow[] {
  return repricedEntries.flatMap((repriced): ReportRow[] => {
    const { workbook, closures, hand, compared } = measureEvaluators(bench, repriced, seed);
    const what = `1,000 repricings: ${repriced.what}`;
    return [
      { what: `${what}, workbook`, timing: workbook, budget: { kind: 'times faster', least: 30 }, hand, closures },
      { what: `  closures; ${compared} cells compared, all equal`, timing: closures, budget: { kind: 'none' }, hand },
    ];
  });
}

run(process.argv[2]).catch((error: unknown) => {
  console.error(error instanceof Disagreement ? `The numbers disagree: ${error.message}` : error);
  process.exitCode = 1;
});
