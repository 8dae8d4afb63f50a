import * as z from 'zod/mini';
import { isoTime } from './document-schema.ts';
import { editSchema } from './edit-schema.ts';
import { isNote, type LogEntry } from './quote-log.ts';
import { type ReadValue, readBySchema } from './read-by-schema.ts';

export type ReadLog =
  | { readonly kind: 'log'; readonly entries: readonly LogEntry[] }
  | { readonly kind: 'fault'; readonly reason: string };

const logEntry = z.strictObject({
  seq: z.number().check(z.int(), z.gte(1)),
  edit: editSchema,
  inverse: editSchema,
  at: isoTime,
  moves: z.enum(['done', 'undone', 'redone']),
});

export function readEntry(value: unknown): ReadValue<LogEntry> {
  return readBySchema(logEntry, value);
}

/** Reads the log of a quote, first entry first: every entry, their order, and that undo and redo had a step to move. */
export function readLog(values: readonly unknown[]): ReadLog {
  const entries: LogEntry[] = [];
  let [done, undone] = [0, 0];
  for (const value of values) {
    const at = `Entry ${entries.length + 1} of the history`;
    const read = readEntry(value);
    if (read.kind === 'fault') return { kind: 'fault', reason: `${at} cannot be read. ${read.reason}` };
    const { seq, moves } = read.value;
    if (seq !== entries.length + 1) return { kind: 'fault', reason: `${at} is missing.` };
    // A note moves over no step, and ends no way forward.
    if (!isNote(read.value)) [done, undone] = steps(moves, done, undone);
    if (done < 0 || undone < 0) return { kind: 'fault', reason: `${at} takes back a step that is not there.` };
    entries.push(read.value);
  }
  return { kind: 'log', entries };
}

function steps(moves: LogEntry['moves'], done: number, undone: number): [number, number] {
  if (moves === 'done') return [done + 1, 0];
  return moves === 'undone' ? [done - 1, undone + 1] : [done + 1, undone - 1];
}
