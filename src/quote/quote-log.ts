import type { Edit } from './edit.ts';

/** What an entry of the log did to the history: something new, or a step along what was done before. */
export type Move = 'done' | 'undone' | 'redone';

/**
 * One change to a quote as the log keeps it. The log only grows: undo and redo add entries too. `edit` is what was applied
 * to the document, also when it takes a step back; `inverse` takes this entry back.
 */
export interface LogEntry {
  /** From 1, without gaps. */
  readonly seq: number;
  readonly edit: Edit;
  readonly inverse: Edit;
  /** ISO 8601 time, given by the caller. */
  readonly at: string;
  readonly moves: Move;
}

/** Entries that go into a log together: at least one, in their order. */
export type NewEntries = readonly [LogEntry, ...LogEntry[]];

/** An edit with the one that takes it back. */
export interface Step {
  readonly edit: Edit;
  readonly inverse: Edit;
}

/** The way back and the way forward; the last of each is next. */
export interface History {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

/**
 * The history a log leaves. An entry that undoes takes back the last step that stands, one that redoes brings back the
 * last that was taken; anything new ends the way forward; a note is no step. Throws for a log that `readLog` would refuse.
 * Example: moves done, done, undone → one step in `done`, one in `undone`.
 */
export function historyOf(entries: readonly LogEntry[]): History {
  const done: Step[] = [];
  const undone: Step[] = [];
  for (const entry of entries) move(done, undone, entry);
  return { done, undone };
}

/** The history after one more entry. Throws when there is nothing to undo or redo. */
export function movedHistory(history: History, entry: LogEntry): History {
  const [done, undone] = [[...history.done], [...history.undone]];
  move(done, undone, entry);
  return { done, undone };
}

/** Whether an entry leaves the quote and the way back as they are. */
export function isNote({ edit }: LogEntry): boolean {
  return edit.kind === 'several' && edit.edits.length === 0;
}

function move(done: Step[], undone: Step[], entry: LogEntry): void {
  if (isNote(entry)) return;
  const { edit, inverse, moves, seq } = entry;
  switch (moves) {
    case 'done':
      done.push({ edit, inverse });
      undone.length = 0;
      return;
    case 'undone':
      undone.push(lastOf(done, seq));
      return;
    case 'redone':
      done.push(lastOf(undone, seq));
      return;
    default:
      moves satisfies never;
  }
}

function lastOf(steps: Step[], seq: number): Step {
  const step = steps.pop();
  if (step === undefined) throw new Error(`Entry ${seq} of the log moves over a step that is not there`);
  return step;
}
