import { readTyped } from '../../units/typed-number.ts';
import type { Unit } from '../../units/unit.ts';

/** What somebody entered: the value, with the text it was typed as. */
export interface EntryDetail {
  readonly value: number | string;
  readonly typed?: string;
  /** It stands instead of what the formula gives: a departure. */
  readonly instead?: true;
}

export type ReadEntry =
  | { readonly kind: 'entry'; readonly detail: EntryDetail; readonly echo: string }
  | { readonly kind: 'fault'; readonly reason: string };

/** Reads a number field. The typed text is kept only where it says more than the number does. */
export function readEntry(text: string, unit: Unit): ReadEntry {
  const read = readTyped(text, unit, { shareAs: 'percent' });
  if (read.kind === 'fault') return read;
  const typed = /^-?\d+(\.\d+)?$/.test(text.trim()) ? undefined : text.trim();
  return { kind: 'entry', detail: { value: read.value, ...(typed !== undefined && { typed }) }, echo: read.echo ?? '' };
}
