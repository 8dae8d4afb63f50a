import { rm } from 'node:fs/promises';
import { type Browser, type BrowserContext, type CDPSession, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { chromiumFlags, findChromium } from '../helpers/find-chromium.ts';
import { repository } from '../helpers/repository-files.ts';

/** The app as it is built for people, served on this machine, and a browser for it. */
export interface BuiltApp {
  readonly address: string;
  /** The folder it was built into. */
  readonly folder: string;
  readonly browser: Browser;
  readonly close: () => Promise<void>;
}

/** A page of a profile of its own, with its line to the browser's developer tools. */
export interface AppPage {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly tools: CDPSession;
}

const viewport = { width: 1440, height: 900 };

/** Builds the app into a folder of this run and starts a browser; close it at the end. */
export async function buildApp(): Promise<BuiltApp> {
  const configFile = `${repository}/src/vite.config.ts`;
  const folder = `${repository}/.cache/benched-app-${process.pid}`;
  await build({ configFile, logLevel: 'warn', build: { outDir: folder } });
  const server = await preview({
    configFile,
    logLevel: 'warn',
    build: { outDir: folder },
    preview: { host: '127.0.0.1', port: 0 },
  });
  const [address] = server.resolvedUrls?.local ?? [];
  if (address === undefined) throw new Error('The built app is served at no address.');
  const browser = await chromium.launch({ executablePath: await findChromium(), args: [...chromiumFlags] });
  const close = async (): Promise<void> => {
    await browser.close();
    await server.close();
    await rm(folder, { recursive: true, force: true });
  };
  return { address, folder, browser, close };
}

/** A fresh profile: nothing stored, nothing cached. */
export async function freshPage({ browser }: BuiltApp): Promise<AppPage> {
  const context = await browser.newContext({ viewport });
  return pageIn(context);
}

export async function pageIn(context: BrowserContext): Promise<AppPage> {
  const page = await context.newPage();
  // What is measured of a broken page means nothing: whatever waits for it ends with an error.
  page.on('pageerror', (error) => {
    console.error(error);
    void context.close();
  });
  return { context, page, tools: await context.newCDPSession(page) };
}
