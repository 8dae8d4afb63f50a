import { html, type TemplateResult } from 'lit';
import { cellName, type NamedCell, parseCellName } from '../../../formula/cell-name.ts';
import type { ShownTable } from '../sheet/shown-table.ts';
import type { UnreadText } from './grid-cell.ts';
import type { GridPlace } from './grid-keys.ts';
import { fieldAt } from './grid-shape.ts';

/** The id of the sentence that says what is wrong at a place. */
export function faultId({ row, column }: GridPlace): string {
  return `fault-${row}-${column}`;
}

/** What could not be taken in a table, each with its place, the reason, and what counts in the meantime. */
export function gridFaults(
  table: ShownTable,
  unread: ReadonlyMap<string, UnreadText>,
  refusals: ReadonlyMap<string, string>,
): TemplateResult[] {
  if (unread.size === 0 && refusals.size === 0) return [];
  const own = table.rows.flatMap((row) =>
    row.fields.flatMap(({ name, label }) => {
      const place = { row: row.id, column: name };
      const found = unread.get(cellName(table.name, row.id, name));
      return found === undefined ? [] : [fault(table, place, `${row.label}, ${label}: ${found.reason}`)];
    }),
  );
  const refused = [...refusals].flatMap(([key, reason]) => {
    const cell = parseCellName(key);
    return cell?.kind === 'cell' && cell.table === table.name && !unread.has(key) ? [refusal(table, cell, reason)] : [];
  });
  return [...own, ...refused, ...tableFaults(table, refusals)];
}

/** Why a row could not be added, moved or taken away. */
export function tableFaults(table: ShownTable, refusals: ReadonlyMap<string, string>): TemplateResult[] {
  const reason = refusals.get(table.name);
  return reason === undefined ? [] : [html`<p class="error" role="alert">${reason}</p>`];
}

/** What was refused at a cell that shows the value in force. */
function refusal(table: ShownTable, { row, column }: NamedCell, reason: string): TemplateResult {
  const place = { row, column };
  const field = fieldAt(table, place);
  const label = table.rows.find(({ id }) => id === row)?.label ?? '';
  return field?.kind === 'choice'
    ? fault(table, place, `${label}, ${field.label}: ${reason}`)
    : html`<p class="error" role="alert">${reason}</p>`;
}

function fault(table: ShownTable, place: GridPlace, words: string): TemplateResult {
  const field = fieldAt(table, place);
  const counts = field === undefined || field.shown === '' ? '' : `${field.shown} ${field.suffix}`.trim();
  return html`<p class="error" role="alert" id=${faultId(place)}>
    ${words} ${counts === '' ? '' : `${counts} still counts.`}
  </p>`;
}
