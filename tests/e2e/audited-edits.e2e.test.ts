import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { turnToSheet } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';
import { overhearAuditor } from '../helpers/overheard-auditor.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

async function overheardDemo() {
  const app = await openApp(browser);
  const demo = new URL('#/quote/demo/price', inject('appUrl')).href;
  const auditor = await overhearAuditor(app.page, () => app.page.goto(demo));
  /** What the auditor said other than that all is the same, once it has looked at what the edit led to. */
  const objections = async (edit: () => Promise<void>): Promise<readonly unknown[]> =>
    (await auditor.after(edit)).filter(({ kind, differences }) => kind !== 'compared' || differences.length > 0);
  return { ...app, objections };
}

/** Presses each key there is, with those that come while it does. */
async function pressEach(keys: Locator): Promise<number> {
  await keys.first().waitFor();
  let pressed = 0;
  for (; pressed < (await keys.count()); pressed += 1) await keys.nth(pressed).click();
  return pressed;
}

/** Undoes all that can be undone; how many steps it was. */
async function undoAll(page: Page): Promise<number> {
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  let steps = 0;
  while ((await undo.getAttribute('aria-disabled')) !== 'true') {
    const before = await undo.textContent();
    await undo.click();
    steps += 1;
    if (steps > 200) throw new Error(`Undo does not end: ${before}`);
  }
  return steps;
}

describe('both evaluators agree in every cell of the page', () => {
  it('after every answer of the Price, and after all of them are undone', async () => {
    const { page, problems, objections, close } = await overheardDemo();
    let pressed = 0;
    const all = page.locator('price-face ask-group button');
    expect(
      await objections(async () => {
        pressed = await pressEach(all);
      }),
    ).toEqual([]);
    expect(pressed).toBeGreaterThan(20);
    expect(
      await objections(async () => {
        expect(await undoAll(page)).toBeGreaterThan(15);
      }),
    ).toEqual([]);
    expect(await page.locator('audit-notice').getByRole('alert').count()).toBe(0);
    expect(problems).toEqual([]);
    await close();
  });

  it('with each system added, and after it is taken away', async () => {
    const { page, problems, objections, close } = await overheardDemo();
    const systems = page.getByRole('region', { name: 'Systems', exact: true }).getByRole('button', { pressed: false });
    const offered = await systems.allTextContents();
    expect(offered.length).toBeGreaterThan(9);
    for (const title of offered.map((text) => text.trim())) {
      const key = page
        .getByRole('region', { name: 'Systems', exact: true })
        .getByRole('button', { name: title, exact: true });
      expect(
        await objections(async () => {
          await key.click();
          await page.getByRole('region', { name: title, exact: true }).waitFor();
        }),
        title,
      ).toEqual([]);
      await key.click();
      await page.getByRole('region', { name: title, exact: true }).waitFor({ state: 'detached' });
    }
    expect(await objections(() => page.getByRole('button', { name: 'many', exact: true }).first().click())).toEqual([]);
    expect(await page.locator('audit-notice').getByRole('alert').count()).toBe(0);
    expect(problems).toEqual([]);
    await close();
  });

  it('with a row more in every table of the floor and of a system, and after all of them are undone', async () => {
    const { page, problems, objections, close } = await overheardDemo();
    await turnOwner(page);
    await page.getByRole('link', { name: 'Costing' }).click();
    for (const sheet of ['The floor', 'Full flake']) {
      await turnToSheet(page, sheet);
      expect(
        await objections(async () => {
          await pressEach(page.getByRole('button', { name: 'Add a row' }));
        }),
        sheet,
      ).toEqual([]);
    }
    expect(
      await objections(async () => {
        expect(await undoAll(page)).toBeGreaterThan(3);
      }),
    ).toEqual([]);
    expect(await page.locator('audit-notice').getByRole('alert').count()).toBe(0);
    expect(problems).toEqual([]);
    await close();
  });
});
