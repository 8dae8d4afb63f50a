import type { Measures } from '../../units/measures.ts';
import { readTypedIn, textToKeep } from '../../units/typed-measure.ts';
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

/** Reads a number field shown in `measures`. The typed text is kept only where it says more than the number does. */
export function readEntry(text: string, unit: Unit, measures: Measures): ReadEntry {
  const read = readTypedIn(text, unit, measures, { shareAs: 'percent' });
  if (read.kind === 'fault') return read;
  const typed = textToKeep(text, read.value, unit, measures);
  return { kind: 'entry', detail: { value: read.value, ...(typed !== undefined && { typed }) }, echo: read.echo ?? '' };
}
