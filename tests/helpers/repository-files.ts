import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const repository = fileURLToPath(new URL('../..', import.meta.url));

/** Paths of all files that are in the repository or would be added to it: those git does not ignore. */
export function repositoryFiles(): string[] {
  // Git refuses a folder that belongs to another user, as a mounted one may; listing names is harmless.
  const trust = ['-c', 'safe.directory=*'];
  const list = ['ls-files', '-z', '--cached', '--others', '--exclude-standard'];
  const listed = execFileSync('git', [...trust, ...list], { cwd: repository, encoding: 'utf8' });
  const paths = listed.split('\0').filter((path) => path !== '' && existsSync(join(repository, path)));
  return [...new Set(paths)];
}

/** A file's text; undefined when it holds bytes that no text has. */
export function readText(path: string): string | undefined {
  const content = readFileSync(join(repository, path));
  return content.includes(0) ? undefined : content.toString('utf8');
}
