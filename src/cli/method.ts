import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadTemplates } from './load-templates.ts';
import { methodPage } from './method-page.ts';
import { sourceFaults } from './method-sources.ts';

// Writes docs/method.md from the templates. What is wrong in them is told, and then nothing is written.
const { library, faults } = loadTemplates();
const wrong = [...faults, ...sourceFaults(library)];
if (wrong.length === 0) {
  writeFileSync(fileURLToPath(new URL('../../docs/method.md', import.meta.url)), methodPage(library));
  process.stdout.write('docs/method.md is written.\n');
} else {
  process.stderr.write(`${wrong.join('\n')}\n`);
  process.exitCode = 2;
}
