import { loadText } from './load-text.ts';
import { buildApp } from './page-app.ts';
import { measureFaces } from './page-faces.ts';
import { measureLoads } from './page-loads.ts';
import { benchedOptions } from './page-quote.ts';
import { scriptSizes } from './page-size.ts';
import { facesTable, loadsTable } from './page-table.ts';

/** Measures the built app in a browser and prints it. */
export async function runPageBench(): Promise<void> {
  const app = await buildApp();
  try {
    console.info(`The built app in Chromium ${app.browser.version()}, ${benchedOptions} options. ${loadText()}\n`);
    console.info(`${facesTable(await measureFaces(app))}\n`);
    console.info(loadsTable(await measureLoads(app), await scriptSizes(app.folder)));
  } finally {
    await app.close();
  }
}
