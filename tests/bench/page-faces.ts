import type { Locator, Page } from 'playwright-core';
import { boardCell } from '../helpers/board-cell.ts';
import { type AppPage, type BuiltApp, freshPage } from './page-app.ts';
import { measureActs, type PaintedEdit, type PlacedAct } from './page-edits.ts';
import { openFourOptions, turnOwner } from './page-quote.ts';

export interface MeasuredFace {
  readonly what: string;
  /** Milliseconds that 95 of 100 edits may take until they are painted. */
  readonly budget: number;
  readonly edits: readonly PaintedEdit[];
}

/** How often each of two values is entered. */
const times = 30;
const warmUp = 5;
const costingBudget = 10;
const priceBudget = 8;

/** Edits one number, or answers one question, over and over on every face, in the owner's view. */
export async function measureFaces(app: BuiltApp): Promise<MeasuredFace[]> {
  const opened = await freshPage(app);
  const { page } = opened;
  await openFourOptions(page, app.address);
  await turnOwner(page);
  const faces = [...(await measureCosting(opened)), await measurePrice(opened), await measureCompare(opened)];
  await opened.context.close();
  return faces;
}

const entries = [
  {
    what: 'shop value (resin waste)',
    sheet: 'Shop rates',
    field: 'Waste, share of the resin bought',
    texts: ['4', '15'],
  },
  { what: 'floor value (crack length)', sheet: 'The floor', field: 'Cracks to fill', texts: ['40', '45'] },
  {
    what: 'option value (grinding factor)',
    sheet: 'Full flake',
    field: 'Grinding time, times the usual',
    texts: ['1.1', '1.2'],
  },
] as const;

async function measureCosting(opened: AppPage): Promise<MeasuredFace[]> {
  const { page } = opened;
  const shown = page.locator('results-board table');
  const measured: MeasuredFace[] = [];
  await turnTo(page, 'Costing');
  for (const { what, sheet, field, texts } of entries) {
    await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: sheet, exact: true }).click();
    const acts = texts.map((text) => ({ at: fieldOf(page, field), act: { kind: 'enter', text } as const }));
    measured.push({ what: `Costing: ${what}`, budget: costingBudget, edits: await measureMoving(opened, acts, shown) });
  }
  await (await boardCell(page, 'Price', 'Full flake')).click();
  const [, , { texts, field }] = entries;
  const acts = texts.map((text) => ({ at: fieldOf(page, field), act: { kind: 'enter', text } as const }));
  measured.push({
    what: 'Costing: option value, Why open',
    budget: costingBudget,
    edits: await measureMoving(opened, acts, shown),
  });
  return measured;
}

async function measurePrice(opened: AppPage): Promise<MeasuredFace> {
  const { page } = opened;
  await turnTo(page, 'Price');
  const question = page.getByRole('group', { name: 'Cracks', exact: true });
  const acts = ['many', 'none'].map((answer) => ({
    at: question.getByRole('button', { name: answer, exact: true }),
    act: { kind: 'press' } as const,
  }));
  const edits = await measureMoving(opened, acts, page.locator('price-face .prices'));
  return { what: 'Price: a question answered (cracks)', budget: priceBudget, edits };
}

/** Side by side has no entry of its own: the last change is taken back and made again. */
async function measureCompare(opened: AppPage): Promise<MeasuredFace> {
  const { page } = opened;
  await turnTo(page, 'Side by side');
  const acts = [/^Undo/, /^Redo/].map((name) => ({
    at: page.getByRole('button', { name }).first(),
    act: { kind: 'press' } as const,
  }));
  const edits = await measureMoving(opened, acts, page.locator('compare-face table').first());
  return { what: 'Side by side: an answer (cracks) taken back, made again', budget: costingBudget, edits };
}

/** Measures acts by turns, of which each must change what is shown. */
async function measureMoving(opened: AppPage, acts: readonly PlacedAct[], shown: Locator): Promise<PaintedEdit[]> {
  const seen = new Set<string | null>();
  for (const one of acts) {
    await measureActs(opened, [one], 1, 0);
    seen.add(await shown.textContent());
  }
  if (seen.size !== acts.length) throw new Error('An edit changed nothing that is shown');
  return measureActs(opened, acts, times, warmUp);
}

function fieldOf(page: Page, label: string): Locator {
  return page.locator('number-field').getByLabel(label, { exact: true }).first();
}

async function turnTo(page: Page, face: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Faces' }).getByRole('link', { name: face }).click();
}
