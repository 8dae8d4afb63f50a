import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { chromiumFlags, findChromium } from '../helpers/find-chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    readonly appUrl: string;
    /** The folder the app was built into. */
    readonly appFolder: string;
    /** Of the one Chromium of the run, where tests open profiles of their own. */
    readonly browserAddress: string;
  }
}

const repository = fileURLToPath(new URL('../..', import.meta.url));
const configFile = `${repository}/src/vite.config.ts`;

/** Builds the app into a folder of this run, serves it on a free loopback port, starts Chromium, tells the tests where. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const outDir = `${repository}/.cache/built-app-${process.pid}`;
  project.provide('appFolder', outDir);
  const executablePath = await findChromium();
  await build({ configFile, logLevel: 'warn', build: { outDir } });
  const server = await preview({
    configFile,
    logLevel: 'warn',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0 },
  });
  project.provide('appUrl', addressOf(server.resolvedUrls?.local ?? []));
  const browser = await chromium.launchServer({ executablePath, args: [...chromiumFlags], host: '127.0.0.1' });
  project.provide('browserAddress', browser.wsEndpoint());
  return async () => {
    await browser.close();
    await server.close();
    await rm(outDir, { recursive: true, force: true });
  };
}

function addressOf(addresses: readonly string[]): string {
  const [address] = addresses;
  if (address === undefined || address.includes(':0/')) {
    throw new Error(`The preview server gave no usable address: ${JSON.stringify(addresses)}`);
  }
  return address;
}
