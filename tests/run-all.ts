import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { addCounts, type Counts, noCounts, settleCounts } from './run/counts.ts';
import { repository, runCommand } from './run/run-command.ts';
import { type CheckStep, type SuiteStep, steps } from './run/steps.ts';

interface StepResult {
  readonly name: string;
  readonly counts: Counts;
  readonly seconds: string;
}

/** Runs every step, also after a failed one, and prints the totals last. */
async function runAll(): Promise<void> {
  const results = await inPairs(steps, (step) => (step.kind === 'check' ? runCheck(step) : runSuite(step)));

  console.log('\n== summary');
  for (const { name, counts, seconds } of results) console.log(`${describeCounts(counts)} ${name} (${seconds} s)`);
  const total = results.map(({ counts }) => counts).reduce(addCounts, noCounts);
  if (total.skipped > 0) console.log(`${total.skipped} skipped`);
  console.log(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 ? 0 : 1;
}

async function runCheck(step: CheckStep): Promise<StepResult> {
  const started = Date.now();
  const ends = [];
  for (const command of step.commands) ends.push(await runCommand(command));
  const failures = ends.filter(({ exitCode }) => exitCode !== 0);
  const shown = failures.map(({ output }) => output.trim()).join('\n');
  console.log(`\n== ${step.name}: ${failures.length === 0 ? 'passed' : `failed\n${shown}`}`);
  const counts = failures.length === 0 ? { ...noCounts, passed: 1 } : { ...noCounts, failed: 1 };
  return { name: step.name, counts, seconds: secondsSince(started) };
}

/** What a suite prints is kept until it ends, so that nothing comes between its lines. */
async function runSuite(step: SuiteStep): Promise<StepResult> {
  const started = Date.now();
  console.log(`… ${step.name}`);
  const reportPath = join(repository, step.reportPath);
  rmSync(reportPath, { force: true });
  const { exitCode, output } = await runCommand(step.command);
  console.log(`\n== ${step.name}\n${output.trim()}`);
  // Without a report nothing was counted, which settleCounts turns into a failure.
  const found = existsSync(reportPath) ? step.readReport(readFileSync(reportPath, 'utf8')) : noCounts;
  const counts = settleCounts(found, exitCode);
  if (counts.failed > found.failed) console.log(`${step.name}: ended with code ${exitCode}, ${describeCounts(found)}`);
  return { name: step.name, counts, seconds: secondsSince(started) };
}

/** Two at a time, as the usual test machine has two cores; the results keep the order of the steps. */
async function inPairs<Step, Result>(steps: readonly Step[], run: (step: Step) => Promise<Result>): Promise<Result[]> {
  const results = new Map<number, Result>();
  const waiting = [...steps.entries()];
  const worker = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      results.set(next[0], await run(next[1]));
    }
  };
  await Promise.all([worker(), worker()]);
  return [...results.entries()].sort(([left], [right]) => left - right).map(([, result]) => result);
}

function describeCounts({ passed, failed }: Counts): string {
  return `${String(passed).padStart(5)} passed ${String(failed).padStart(4)} failed`;
}

function secondsSince(started: number): string {
  return ((Date.now() - started) / 1000).toFixed(1);
}

await runAll();
