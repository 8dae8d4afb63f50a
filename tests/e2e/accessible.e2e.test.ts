import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardCell } from '../helpers/board-cell.ts';
import { turnToSheet, untilDrawn } from '../helpers/drawn-page.ts';
import { openApp, reachBrowser, turnOwner } from '../helpers/open-app.ts';

let browser: Browser;
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const wcag = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

beforeAll(async () => {
  browser = await reachBrowser();
});

afterAll(() => browser.close());

/** What axe finds against WCAG 2.2 AA (target size included), one sentence each. */
async function faults(page: Page): Promise<string[]> {
  await untilDrawn(page);
  await page.addScriptTag({ content: axeSource });
  return page.evaluate(async (tags) => {
    interface Found {
      readonly id: string;
      readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary: string }[];
    }
    const { axe } = globalThis as unknown as {
      axe: { run(node: Node, options: object): Promise<{ violations: Found[]; passes: unknown[] }> };
    };
    const { violations, passes } = await axe.run(document, {
      runOnly: { type: 'tag', values: tags },
      resultTypes: ['violations'],
    });
    if (passes.length === 0) return ['axe looked at nothing'];
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${JSON.stringify(node.target)} ${node.failureSummary}`),
    );
  }, wcag);
}

async function choose(page: Page, theme: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Screen' }).selectOption(theme);
  await page.locator(`html[data-theme=${theme}]`).waitFor();
}

const sizes = [
  { width: 360, height: 740 },
  { width: 1440, height: 900 },
];

describe.each(['light', 'dark', 'sun'])('in %s, axe finds nothing', (theme) => {
  it.each(sizes)('on the list of quotes and any face at $width px', async (viewport) => {
    const { page, close } = await openApp(browser, '', { viewport });
    await page.getByRole('link', { name: /^Juniper Lane/ }).waitFor();
    await choose(page, theme);
    expect(await faults(page), 'quotes').toEqual([]);
    await page.getByRole('link', { name: /^Juniper Lane/ }).click();
    await page.getByRole('heading', { name: /^Measure/ }).waitFor();
    expect(await faults(page), 'Price').toEqual([]);
    await page.getByRole('link', { name: 'Side by side' }).first().click();
    await page.getByRole('row', { name: /^Included: cracks/ }).waitFor();
    expect(await faults(page), 'Side by side').toEqual([]);
    await turnOwner(page);
    await page.getByText('Gross profit', { exact: true }).first().waitFor();
    expect(await faults(page), 'Price, owner').toEqual([]);
    await page.getByRole('link', { name: 'Side by side' }).first().click();
    await page.getByRole('heading', { name: 'From one price to the other' }).waitFor();
    expect(await faults(page), 'Side by side, owner').toEqual([]);
    await page.getByRole('link', { name: 'Costing' }).click();
    for (const sheet of ['The floor', 'Full flake', 'Shop rates']) {
      await turnToSheet(page, sheet);
      expect(await faults(page), `Costing, ${sheet}`).toEqual([]);
    }
    await (await boardCell(page, 'Price', 'Full flake')).click();
    await page.getByRole('region', { name: 'Why' }).getByRole('heading').first().waitFor();
    expect(await faults(page), 'Costing, why').toEqual([]);
    await close();
  });
});

/** What every live region on the page says, through shadow roots; alerts at refused fields stand for themselves. */
function liveRegions(page: Page): Promise<string[]> {
  return page.locator('[role=status], [role=log], [aria-live]:not([aria-live=off]), output').allTextContents();
}

describe('for those who listen', () => {
  it('each face has the one status region of the page', async () => {
    const { page, close } = await openApp(browser, '#/quote/demo/price');
    await turnOwner(page);
    const shown = {
      Price: 'price-face',
      'Side by side': 'compare-face',
      Costing: 'costing-face',
      'The day': 'day-face',
    };
    for (const [title, face] of Object.entries(shown)) {
      const faces = page.getByRole('navigation', { name: 'Faces of the quote' });
      await faces.getByRole('link', { name: title, exact: true }).click();
      await page.locator(face).waitFor();
      await untilDrawn(page);
      expect(await liveRegions(page), title).toHaveLength(1);
    }
    await close();
  });

  it('an answer on Price is told with the prices it moved, and what it took out before them', async () => {
    const { page, problems, close } = await openApp(browser, '#/quote/demo/price');
    const status = page.getByRole('status');
    const told = async (option: string): Promise<boolean> => {
      const price = await page.getByRole('region', { name: option, exact: true }).locator('.price').textContent();
      return (await status.textContent())?.includes(`${option}: ${price}`) ?? false;
    };
    expect(await told('Full flake')).toBe(false);
    await page.getByRole('button', { name: '9 ft door, 6 in', exact: true }).click();
    for (const option of ['Full flake', 'Solid colour, rolled']) await expect.poll(() => told(option)).toBe(true);
    await page.getByRole('button', { name: 'Basement 30 × 24' }).click();
    await expect
      .poll(() => status.textContent())
      .toMatch(/^Taken out: door openings\. .* Undo puts it back\. Full flake: \$/);
    expect(problems).toEqual([]);
    await close();
  });
});
