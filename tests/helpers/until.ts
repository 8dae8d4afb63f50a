import { waitUntil } from '@open-wc/testing';
import type { LitElement } from 'lit';

/** Milliseconds. How long something takes to come about says nothing of the program, only of the machine. */
const longest = 30_000;

/** Resolves once it holds. */
export function until(holds: () => boolean): Promise<void> {
  return waitUntil(holds, 'It did not come about', { interval: 10, timeout: longest });
}

/** Resolves once an element has drawn for the width it has, which it learns after its first paint. */
export async function drawnToWidth(element: LitElement, drawing: string): Promise<void> {
  const drawn = (): number | undefined =>
    element.renderRoot.querySelector<SVGSVGElement>(drawing)?.viewBox.baseVal.width;
  await until(() => drawn() === Math.floor(element.clientWidth));
  await element.updateComplete;
}
