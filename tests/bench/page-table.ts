import type { MeasuredFace } from './page-faces.ts';
import type { MeasuredLoad } from './page-loads.ts';
import type { ScriptSizes } from './page-size.ts';
import { alignedTable } from './table.ts';
import { shareOf } from './timing.ts';

const mostScript = 165;

/** What an edit costs until it is painted, on each face. */
export function facesTable(faces: readonly MeasuredFace[]): string {
  const heads = ['painted', 'median', 'p95', 'budget', 'script', 'style, layout, paint', 'until it rests', 'verdict'];
  const rows = faces.map(({ what, edits, budget }) => {
    const p95 = shareOf(
      edits.map(({ painted }) => painted),
      0.95,
    );
    const middle = (of: (edit: MeasuredFace['edits'][number]) => number): string => inMs(shareOf(edits.map(of), 0.5));
    return [
      what,
      middle((edit) => edit.painted),
      inMs(p95),
      `p95 ${budget} ms`,
      middle((edit) => edit.script),
      middle((edit) => edit.painted - edit.script),
      middle((edit) => edit.whole),
      p95 <= budget ? 'within' : 'over',
    ];
  });
  return alignedTable([heads, ...rows]);
}

/** What is waited for before there is a price, and how much is sent for it. */
export function loadsTable(loads: readonly MeasuredLoad[], scripts: ScriptSizes): string {
  const heads = ['price shown', 'median', 'worst', 'budget', 'verdict'];
  const rows = loads.map(({ what, times, budget }) => {
    const median = shareOf(times, 0.5);
    const judged = budget === undefined ? ['', ''] : [`${budget} ms`, median <= budget ? 'within' : 'over'];
    return [what, wholeMs(median), wholeMs(Math.max(...times)), ...judged];
  });
  const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
  const verdict = scripts.first / 1000 <= mostScript ? 'within' : 'over';
  const first = ['JavaScript of the first load, brotli', kilobytes(scripts.first), '', `${mostScript} kB`, verdict];
  const all = ['  with what is loaded when it is wanted', kilobytes(scripts.all), '', '', ''];
  return alignedTable([heads, ...rows, first, all]);
}

function inMs(milliseconds: number): string {
  return `${milliseconds.toFixed(1)} ms`;
}

function wholeMs(milliseconds: number): string {
  return `${Math.round(milliseconds)} ms`;
}
