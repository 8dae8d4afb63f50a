import { fixture, html } from '@open-wc/testing';
import '../../src/views/costing/grid/sheet-grid.ts';
import type { SheetGrid } from '../../src/views/costing/grid/sheet-grid.ts';
import type { ShownTable } from '../../src/views/costing/sheet/shown-table.ts';
import type { SheetEvents } from '../../src/views/parts/sheet-events.ts';
import { coatTable } from './shown-fields.ts';

/** A grid on the test page, and what it sent upward. */
export interface Grid {
  readonly grid: SheetGrid;
  readonly sent: { readonly type: string; readonly detail: unknown }[];
}

const watched = [
  'cell-entered',
  'cell-reset',
  'row-moved',
  'row-removed',
  'why-asked',
] as const satisfies readonly (keyof SheetEvents)[];

export async function gridOf(table: ShownTable = coatTable()): Promise<Grid> {
  const grid = await fixture<SheetGrid>(html`<sheet-grid .table=${table}></sheet-grid>`);
  const sent: { type: string; detail: unknown }[] = [];
  for (const type of watched) grid.addEventListener(type, ({ detail }) => sent.push({ type, detail }));
  return { grid, sent };
}

export function cellOf(grid: SheetGrid, row: string, column: string): HTMLElement {
  const cell = grid.renderRoot.querySelector<HTMLElement>(`[data-row='${row}'] [data-column='${column}']`);
  if (cell === null) throw new Error(`There is no cell ${row}.${column}`);
  return cell;
}

/** Where focus is: `row.column`. */
export function focused(grid: SheetGrid): string {
  const active = grid.shadowRoot?.activeElement;
  const cell = active?.closest<HTMLElement>('[data-column]');
  return `${active?.closest<HTMLElement>('[data-row]')?.dataset.row}.${cell?.dataset.column}`;
}

export async function focus(grid: SheetGrid, row: string, column: string): Promise<void> {
  const cell = cellOf(grid, row, column);
  (cell.querySelector('input') ?? cell).focus();
  await grid.updateComplete;
}

/** Presses a key where focus is. */
export async function press(grid: SheetGrid, key: string, more: KeyboardEventInit = {}): Promise<KeyboardEvent> {
  const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, composed: true, ...more });
  grid.shadowRoot?.activeElement?.dispatchEvent(event);
  await grid.updateComplete;
  return event;
}

export function editorOf(grid: SheetGrid): HTMLInputElement | HTMLSelectElement {
  const editor = grid.renderRoot.querySelector<HTMLInputElement | HTMLSelectElement>('.editor');
  if (editor === null) throw new Error('No cell is being edited');
  return editor;
}

export async function write(grid: SheetGrid, text: string): Promise<void> {
  const editor = editorOf(grid);
  editor.value = text;
  editor.dispatchEvent(new InputEvent('input', { bubbles: true }));
  await grid.updateComplete;
}

export async function repaint(grid: SheetGrid, table: ShownTable): Promise<void> {
  grid.table = table;
  await grid.updateComplete;
}

export function button(grid: SheetGrid, words: string): HTMLButtonElement {
  const found = [...grid.renderRoot.querySelectorAll('button')].find(
    (candidate) => candidate.textContent.trim() === words,
  );
  if (found === undefined) throw new Error(`There is no button “${words}”`);
  return found;
}
