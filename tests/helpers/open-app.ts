import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';

/** Milliseconds a step may take, which says nothing of the app, only of the machine. */
const longestStep = 60_000;

/** The built app in a fresh browser profile. */
export interface OpenedApp {
  readonly page: Page;
  /** Console errors, uncaught exceptions and failed requests so far, in order; a journey expects none. */
  readonly problems: readonly string[];
  readonly close: () => Promise<void>;
}

/** The Chromium of the end-to-end tests, which runs already; closed in `afterAll`, it closes what was opened through it. */
export function reachBrowser(): Promise<Browser> {
  return chromium.connect(inject('browserAddress'));
}

/**
 * Opens the built app with empty storage.
 *
 * @param path what follows the address, for example `#/quote/demo/price`
 */
export async function openApp(browser: Browser, path = '', device: BrowserContextOptions = {}): Promise<OpenedApp> {
  const context = await browser.newContext(device);
  context.setDefaultTimeout(longestStep);
  const page = await context.newPage();
  const problems = watchProblems(page);
  await page.goto(new URL(path, inject('appUrl')).href);
  return { page, problems, close: () => context.close() };
}

/** Turns the owner's view on, by holding the key as a thumb would. */
export async function turnOwner(page: Page): Promise<void> {
  const adjust = page.getByRole('button', { name: 'Adjust' });
  await adjust.dispatchEvent('pointerdown');
  await page.getByRole('button', { name: 'Customer’s view' }).waitFor();
}

/** Opens the Costing of the demo quote, in the owner's view. */
export async function openCosting(browser: Browser, device: BrowserContextOptions = {}): Promise<OpenedApp> {
  // Without the owner's view the address shows the price.
  const app = await openApp(browser, '#/quote/demo/costing', device);
  await turnOwner(app.page);
  await app.page.getByRole('navigation', { name: 'Sheets' }).waitFor();
  return app;
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
