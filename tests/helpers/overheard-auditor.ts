import type { Page, Route, Worker } from 'playwright-core';
import { expect } from 'vitest';

export const auditorScript = '**/auditor-worker*.js';

interface Answer {
  readonly kind: string;
  readonly differences: readonly unknown[];
}

/** The auditor of a page, what it was asked and what it answered. */
export interface OverheardAuditor {
  readonly answers: () => Promise<readonly Answer[]>;
  /** Does what is to be looked at, and resolves with all answers once one has come to a question that was asked since. */
  readonly after: (edit: () => Promise<void>) => Promise<readonly Answer[]>;
}

interface Overheard {
  readonly asked: number;
  readonly answers: readonly Answer[];
}

/** Has the page's auditor overheard; goes to where `open` leads, and resolves once the auditor is called. */
export async function overhearAuditor(page: Page, open: () => Promise<unknown>): Promise<OverheardAuditor> {
  await page.route(auditorScript, overhear);
  const called = page.waitForEvent('worker');
  await open();
  const worker = await called;
  const answers = async (): Promise<readonly Answer[]> => (await heardBy(worker)).answers;
  const after = async (edit: () => Promise<void>): Promise<readonly Answer[]> => {
    const { asked } = await heardBy(worker);
    await edit();
    await expect.poll(async () => (await answers()).length).toBeGreaterThan(asked);
    return answers();
  };
  return { answers, after };
}

/** The auditor as it is, with what it hears counted and what it says kept. */
async function overhear(route: Route): Promise<void> {
  const listening = `globalThis.asked = 0;
    globalThis.answers = [];
    addEventListener('message', () => { globalThis.asked += 1; });
    const answer = postMessage;
    globalThis.postMessage = (said) => { globalThis.answers.push(said); answer(said); };
  `;
  const script = await route.fetch();
  await route.fulfill({ response: script, body: listening + (await script.text()) });
}

function heardBy(worker: Worker): Promise<Overheard> {
  return worker.evaluate(() => {
    const { asked, answers } = globalThis as unknown as Overheard;
    return { asked, answers };
  });
}
