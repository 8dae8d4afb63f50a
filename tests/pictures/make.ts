// `npm run pictures` makes the pictures of docs/pictures/ from the built app; `npm run pictures every` those of every face at
// three widths in every theme, into .cache/pictures/, or of the faces named after it: `npm run pictures every day`.
import { mkdir } from 'node:fs/promises';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { chromiumFlags, findChromium } from '../helpers/find-chromium.ts';
import { repository } from '../helpers/repository-files.ts';
import { everyFace } from './every-face.ts';
import { take } from './picture.ts';
import { readmePictures } from './readme-pictures.ts';

const [what, ...names] = process.argv.slice(2);
const isWanted = (name: string): boolean => names.length === 0 || names.some((wanted) => name.startsWith(wanted));
const pictures = what === 'every' ? everyFace.filter(({ name }) => isWanted(name)) : readmePictures;
const folder = what === 'every' ? '.cache/pictures/' : 'docs/pictures/';

process.chdir(repository);
await mkdir(folder, { recursive: true });
const configFile = 'src/vite.config.ts';
const outDir = `${repository}/.cache/pictured-app`;
await build({ configFile, logLevel: 'warn', build: { outDir, emptyOutDir: true } });
const server = await preview({ configFile, build: { outDir }, preview: { port: 0 } });
const [address = ''] = server.resolvedUrls?.local ?? [];
const browser = await chromium.launch({ executablePath: await findChromium(), args: [...chromiumFlags] });
for (const picture of pictures) await take(browser, address, folder, picture);
await browser.close();
await server.close();
