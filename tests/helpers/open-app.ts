import { type Browser, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { chromiumFlags } from './find-chromium.ts';

/** The built app in a fresh browser profile. */
export interface OpenedApp {
  readonly page: Page;
  /** Console errors, uncaught exceptions and failed requests so far, in order; a journey expects none. */
  readonly problems: readonly string[];
  readonly close: () => Promise<void>;
}

/** Starts the Chromium of the end-to-end tests; close it in `afterAll`. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: inject('chromiumPath'), args: [...chromiumFlags] });
}

/**
 * Opens the built app with empty storage.
 *
 * @param path what follows the address, for example `#/shop`
 */
export async function openApp(browser: Browser, path = ''): Promise<OpenedApp> {
  const context = await browser.newContext();
  const page = await context.newPage();
  const problems = watchProblems(page);
  await page.goto(new URL(path, inject('appUrl')).href);
  return { page, problems, close: () => context.close() };
}

function watchProblems(page: Page): string[] {
  const problems: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(message.text());
  });
  page.on('pageerror', (error) => problems.push(error.message));
  page.on('requestfailed', (request) => problems.push(`${request.url()}: ${request.failure()?.errorText}`));
  return problems;
}
