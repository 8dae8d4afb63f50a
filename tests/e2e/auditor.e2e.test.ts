import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Browser, Page, Route } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { firstScriptSize } from '../bench/page-size.ts';
import { type OpenedApp, openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';
import { auditorScript, overhearAuditor } from '../helpers/overheard-auditor.ts';

const demo = '#/quote/demo/price';
let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

/** Runs in the auditor's worker before it hears anything: of every question it is told another price than the page shows. */
const misheard = `addEventListener('message', ({ data }) => {
  for (const option of data.options) {
    globalThis.prices ??= new Map();
    if (option.plan) globalThis.prices.set(option.workbook, option.plan.lines.get('price'));
    const price = globalThis.prices.get(option.workbook);
    option.values[price] += 50;
  }
});
`;

/** Serves the auditor so that it finds the page's prices $50 too high. */
async function mishear(route: Route): Promise<void> {
  const answer = await route.fetch();
  await route.fulfill({ response: answer, body: misheard + (await answer.text()) });
}

async function openWith(serve: (page: Page) => Promise<unknown>): Promise<OpenedApp> {
  const app = await openApp(browser);
  await serve(app.page);
  await app.page.goto(new URL(demo, inject('appUrl')).href);
  return app;
}

describe('the scripts of the built app', () => {
  it('have HyperFormula in the auditor’s worker alone', async () => {
    const names = (await readdir(inject('appFolder'), { recursive: true })).filter((name) => name.endsWith('.js'));
    const holding: string[] = [];
    for (const name of names) {
      const text = await readFile(join(inject('appFolder'), name), 'utf8');
      // The eight signs of a build's hash may hold a hyphen.
      if (/HyperFormula|gpl-v3/.test(text)) holding.push(basename(name).replace(/-[\w-]{8}\.js$/, ''));
    }
    expect(names.length).toBeGreaterThan(3);
    expect(holding).toEqual(['auditor-worker']);
  });
});

describe('what the page loads by itself', () => {
  it('is at most 165 kB of JavaScript, compressed by brotli', async () => {
    const first = await firstScriptSize(inject('appFolder'));
    expect(first).toBeGreaterThan(50_000);
    expect(first).toBeLessThanOrEqual(165_000);
  });
});

describe('the auditor of an open quote', () => {
  it('comes after the first price, in a worker, and has nothing to say of the demo or of 60 ft of cracks', async () => {
    const { page, problems, close } = await openApp(browser);
    const auditor = await overhearAuditor(page, () => page.goto(new URL(demo, inject('appUrl')).href));
    expect(await page.locator('price-face .price').count()).toBeGreaterThan(1);
    await expect.poll(async () => (await auditor.answers()).length).toBe(1);
    const many = page.getByRole('group', { name: 'Cracks' }).getByRole('button', { name: 'many', exact: true });
    const answers = await auditor.after(() => many.click());
    expect(answers.length).toBeGreaterThan(1);
    expect(answers.map(({ kind, differences }) => [kind, differences])).toEqual(answers.map(() => ['compared', []]));
    expect(await page.locator('audit-notice').getByRole('alert').count()).toBe(0);
    expect(problems).toEqual([]);
    await close();
  });

  it('that finds another price says so: the owner sees which and both values, a customer no number, and the log keeps it', async () => {
    const { page, close } = await openWith((opened) => opened.route(auditorScript, mishear));
    const alert = page.locator('audit-notice').getByRole('alert');
    await alert.waitFor();
    expect(await alert.textContent()).toContain('found a fault of its own');
    expect(await alert.textContent()).not.toContain('$');
    const shown = await page.locator('price-face .price').first().textContent();
    await turnOwner(page);
    const told = (await alert.getByRole('listitem').allTextContents()).join(' ');
    expect(told).toMatch(/Full flake[^:]*: price is \$[\d,.]+ on this page and \$[\d,.]+ when worked out again\./);
    expect(told).toContain('Solid colour');
    expect(await page.locator('price-face .price').first().textContent()).toBe(shown);
    await page.getByText('saved', { exact: true }).waitFor();
    await page.unroute(auditorScript);
    await page.reload();
    await turnOwner(page);
    const kept = page.getByText('Faults of the program kept in this quote’s history: 1');
    await kept.click();
    await page
      .locator('audit-notice')
      .getByText(/: price is \$[\d,.]+ on this page/)
      .waitFor();
    expect(await page.getByRole('button', { name: 'Undo' }).first().getAttribute('aria-disabled')).toBe('true');
    await close();
  });

  it('that cannot be loaded is missed by nobody: no alarm, and what is entered is kept', async () => {
    let asked = 0;
    const { page, close } = await openWith((opened) =>
      opened.route(auditorScript, (route) => {
        asked += 1;
        return route.abort();
      }),
    );
    await expect.poll(() => asked).toBeGreaterThan(0);
    await page.getByRole('group', { name: 'Cracks' }).getByRole('button', { name: 'many', exact: true }).click();
    await page.getByText('saved', { exact: true }).waitFor();
    // The next edit calls it again.
    await expect.poll(() => asked).toBeGreaterThan(1);
    expect(await page.getByRole('alert').count()).toBe(0);
    await close();
  });

  it('is let in where a page demands trusted scripts', async () => {
    const policy = "script-src 'self'; require-trusted-types-for 'script'; trusted-types lit-html spreadrate";
    const context = await browser.newContext();
    const page = await context.newPage();
    const refused: string[] = [];
    page.on('console', (message) => {
      if (/Trusted|Content Security/.test(message.text())) refused.push(message.text());
    });
    await page.route(inject('appUrl'), async (route) => {
      const answer = await route.fetch();
      await route.fulfill({
        response: answer,
        headers: { ...answer.headers(), 'content-security-policy': policy },
      });
    });
    const heard = page.waitForEvent('worker');
    await page.goto(new URL(demo, inject('appUrl')).href);
    expect((await heard).url()).toContain('auditor-worker');
    expect(refused).toEqual([]);
    await context.close();
  });
});
