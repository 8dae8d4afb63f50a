import type { CDPSession, ElementHandle, Locator, Page } from 'playwright-core';
import type { AppPage } from './page-app.ts';

/** What the page did for one edit, in milliseconds of its main thread. */
export interface PaintedEdit {
  /** From the change to the end of the frame that shows it. */
  readonly painted: number;
  /** Its part in JavaScript: working out, describing the view anew, changing elements. */
  readonly script: number;
  /** All work until the page rests again, saving included. */
  readonly whole: number;
}

/** How an edit is made: a text entered into a field, or a button pressed. */
export type Act = { readonly kind: 'enter'; readonly text: string } | { readonly kind: 'press' };

export interface PlacedAct {
  readonly at: Locator;
  readonly act: Act;
}

/** Long enough for an edit to be saved, short enough that nothing waits for the page to come to rest. */
const rest = 80;

/** Makes the acts by turns, each `times` times, and measures every one; `warmUp` rounds before are not counted. */
export async function measureActs(
  { page, tools }: AppPage,
  acts: readonly PlacedAct[],
  times: number,
  warmUp: number,
): Promise<PaintedEdit[]> {
  await tools.send('Performance.enable');
  const edits: PaintedEdit[] = [];
  for (let round = -warmUp; round < times; round += 1) {
    for (const { at, act } of acts) {
      const edit = await measureAct(page, tools, at, act);
      if (round >= 0) edits.push(edit);
    }
  }
  return edits;
}

async function measureAct(page: Page, tools: CDPSession, at: Locator, act: Act): Promise<PaintedEdit> {
  const element = await at.elementHandle();
  if (element === null) throw new Error(`There is no ${at}`);
  const before = await workOf(tools);
  const { script, painted } = await actInFrame(element, act.kind === 'enter' ? act.text : undefined);
  await page.waitForTimeout(rest);
  const whole = (await workOf(tools)) - before;
  await element.dispose();
  return { painted, script, whole };
}

/**
 * Acts at the very beginning of a frame. A second callback of the same frame runs when all of the page's answers to the
 * first have run, and a message is delivered when the frame's styles, layout and painting are done.
 */
function actInFrame(
  element: ElementHandle,
  text: string | undefined,
): Promise<{ readonly script: number; readonly painted: number }> {
  return element.evaluate(
    (target, typed) =>
      new Promise<{ script: number; painted: number }>((resolve) => {
        let begun = 0;
        if (target instanceof HTMLElement) target.focus();
        requestAnimationFrame(() => {
          begun = performance.now();
          if (target instanceof HTMLInputElement && typed !== undefined) {
            target.value = typed;
            target.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
            target.dispatchEvent(new Event('change', { bubbles: true }));
          } else if (target instanceof HTMLElement) target.click();
        });
        requestAnimationFrame(() => {
          const script = performance.now() - begun;
          const channel = new MessageChannel();
          channel.port1.onmessage = () => resolve({ script, painted: performance.now() - begun });
          channel.port2.postMessage(null);
        });
      }),
    text,
  );
}

/** Milliseconds the page's main thread has worked so far. */
async function workOf(tools: CDPSession): Promise<number> {
  const { metrics } = await tools.send('Performance.getMetrics');
  const work = metrics.find(({ name }) => name === 'TaskDuration');
  if (work === undefined) throw new Error('The browser tells no TaskDuration');
  return work.value * 1000;
}
