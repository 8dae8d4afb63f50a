import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const repository = fileURLToPath(new URL('../..', import.meta.url));

/** A program of an installed package. */
export interface Command {
  readonly package: string;
  readonly program: string;
  readonly args: readonly string[];
  /** What a run that really looked at something prints. */
  readonly mustPrint?: RegExp;
}

export interface CommandEnd {
  readonly exitCode: number;
  /** What it printed. */
  readonly output: string;
}

/** Runs a command from the repository's top folder and returns what it printed. */
export function runCommand(command: Command): Promise<CommandEnd> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [programPath(command), ...command.args], {
      cwd: repository,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...(process.stdout.isTTY ? {} : { NO_COLOR: '1' }) },
    });
    const pieces: Buffer[] = [];
    child.stdout?.on('data', (piece: Buffer) => pieces.push(piece));
    child.stderr?.on('data', (piece: Buffer) => pieces.push(piece));
    child.on('error', reject);
    child.on('close', (code) => resolve(endOf(command, code ?? 1, Buffer.concat(pieces).toString())));
  });
}

function endOf({ program, mustPrint }: Command, exitCode: number, output: string): CommandEnd {
  if (exitCode !== 0 || mustPrint === undefined || mustPrint.test(output)) return { exitCode, output };
  return { exitCode: 1, output: `${output}\n${program} did not say that it looked at any file.` };
}

/** The package's own script, so that no shell and no path search takes part. */
function programPath({ package: packageName, program }: Command): string {
  const folder = join(repository, 'node_modules', packageName);
  const description: { bin?: string | Record<string, string> } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  );
  const script = typeof description.bin === 'string' ? description.bin : description.bin?.[program];
  if (script === undefined) throw new Error(`${packageName} has no program ${program}.`);
  return join(folder, script);
}
