import { sheetLimits } from '../template/sheet-limits.ts';
import type { Edit } from './edit.ts';
import { isNote, type LogEntry } from './quote-log.ts';

const faultBegins = 'A fault of the program: ';

/** Characters of what is told of a fault. */
export const longestFault = sheetLimits.text - faultBegins.length;

/** What a log says of a fault of the program that was found in its quote. */
export interface FaultNote {
  readonly at: string;
  readonly words: string;
}

/**
 * An entry that changes nothing and says that a fault was found: an edit of several that are none, so that whatever reads a log
 * reads it. It is no step: undo and redo go past it.
 */
export function faultEntry(words: string, seq: number, at: string): LogEntry {
  const nothing: Edit = { kind: 'several', words: `${faultBegins}${words}`, edits: [] };
  return { seq, edit: nothing, inverse: nothing, at, moves: 'done' };
}

/** The faults that a log tells of, first to last. */
export function faultNotes(entries: readonly LogEntry[]): readonly FaultNote[] {
  return entries.filter(isNote).flatMap(({ edit, at }) => {
    const words = edit.kind === 'several' ? edit.words : '';
    return words.startsWith(faultBegins) ? [{ at, words: words.slice(faultBegins.length) }] : [];
  });
}
