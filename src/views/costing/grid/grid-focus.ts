import type { GridPlace } from './grid-keys.ts';

/** Where focus goes: to a cell or its editor as it is, into the editor with all of its text selected, or at its end. */
export type FocusPull = 'cell' | 'whole text' | 'end of text';

/** Brings focus to a cell of a grid, or to what is edited in it. */
export function focusCell(root: ParentNode, place: GridPlace, pull: FocusPull): void {
  const rows = [...root.querySelectorAll<HTMLElement>('[data-row]')];
  const row = rows.find(({ dataset }) => dataset.row === place.row);
  const cell = row?.querySelector<HTMLElement>(`[data-column='${place.column}']`);
  const target = cell?.querySelector<HTMLElement>('.editor, input') ?? cell;
  target?.focus();
  if (target instanceof HTMLInputElement && pull === 'whole text') target.select();
  if (target instanceof HTMLSelectElement && pull === 'whole text') openChoices(target);
}

/** Opens the list at once, where the browser can and a person asked for it. */
function openChoices(select: HTMLSelectElement): void {
  if ('showPicker' in select && navigator.userActivation?.isActive) select.showPicker();
}

/** Whether a touch fell on a control that answers it by itself. */
export function isControl(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('button, input, select, label') !== null;
}
