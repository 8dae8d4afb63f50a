import { asWritten, writtenRefusal } from '../../template/written-text.ts';
import type { Measures } from '../../units/measures.ts';
import { readTypedIn, textToKeep } from '../../units/typed-measure.ts';
import type { Unit } from '../../units/unit.ts';

/** What somebody entered: the value, with the text it was typed as. */
export interface EntryDetail {
  readonly value: number | string;
  readonly typed?: string;
  /** The value is words that a person wrote. */
  readonly written?: true;
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

/** Reads what somebody wrote in a field for words. */
export function readWords(text: string): ReadEntry {
  const value = asWritten(text);
  const reason = writtenRefusal(value);
  return reason === undefined
    ? { kind: 'entry', detail: { value, written: true }, echo: '' }
    : { kind: 'fault', reason };
}
