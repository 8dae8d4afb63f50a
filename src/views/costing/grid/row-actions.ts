import { send } from '../../parts/sheet-events.ts';

/** What may be done with a row of a free table; in a grid these are places after its columns. */
export const rowActions = ['row-up', 'row-down', 'row-away'] as const;
export type RowAction = (typeof rowActions)[number];

export const actionWords = { 'row-up': 'Move up', 'row-down': 'Move down', 'row-away': 'Take away' } as const;

/** Whether the row at place `at` of `rows` rows, counted from 0, has somewhere to go. */
export function isAllowed(action: RowAction, at: number, rows: number): boolean {
  return (action !== 'row-up' || at > 0) && (action !== 'row-down' || at < rows - 1);
}

/** Asks for it upward. */
export function sendAction(from: EventTarget, action: RowAction, table: string, row: string, at: number): void {
  if (action === 'row-away') send(from, 'row-removed', { table, row });
  else send(from, 'row-moved', { table, row, to: action === 'row-up' ? at - 1 : at + 1 });
}
