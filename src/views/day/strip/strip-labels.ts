/** Of a text of 13 px: a little more than letters of the typeface take on average. */
export const letterWidth = 7.2;

/** A span that has no room for its words. */
export interface NarrowSpan {
  /** Its number in the table; empty for what is no task. */
  readonly mark: string;
  readonly words: string;
  readonly key: string;
  readonly middle: number;
}

/** A text under a span too narrow for it, with a line to it. */
export interface DrawnMark {
  readonly words: string;
  readonly key: string;
  /** The middle of its span, where the line begins. */
  readonly at: number;
  /** Where the text stands: its middle, or its start. */
  readonly x: number;
  readonly anchor: 'middle' | 'start';
  /** From the foot of the lane to the middle of the text. */
  readonly drop: number;
}

/** A strip at least so wide has room for words below its spans. */
const roomForWords = 600;
const firstDrop = 17;
const lineHeight = 17;
/** Between a line and the text that begins at it. */
const indent = 6;
const apart = 5;

export function hasRoomForWords(width: number): boolean {
  return width >= roomForWords;
}

/** Texts under spans: number and words like stairs where the strip is wide, else the numbers alone, side by side. */
export function marksUnder(spans: readonly NarrowSpan[], width: number): DrawnMark[] {
  return hasRoomForWords(width) ? stairs(spans, width) : numbers(spans, width);
}

/** Each text begins at its own line and runs on under the lines to its right, so that no line crosses a text. */
function stairs(spans: readonly NarrowSpan[], width: number): DrawnMark[] {
  const placed: { readonly mark: DrawnMark; readonly step: number }[] = [];
  for (const { mark, words, key, middle } of [...spans].reverse()) {
    const fitting = [`${mark} ${words}`.trim(), mark].find((text) => text !== '' && endOf(text, middle) <= width);
    if (fitting === undefined) continue;
    const under = placed.filter((other) => other.mark.at - 2 < endOf(fitting, middle) + apart);
    const step = Math.max(-1, ...under.map((other) => other.step)) + 1;
    const drop = firstDrop + step * lineHeight;
    placed.push({
      step,
      mark: { words: fitting, key, at: middle, x: middle + indent, anchor: 'start', drop },
    });
  }
  return placed.map(({ mark }) => mark).reverse();
}

function endOf(text: string, middle: number): number {
  return middle + indent + text.length * letterWidth;
}

/** Numbers as near to the middle of their spans as they may stand without touching. */
function numbers(spans: readonly NarrowSpan[], width: number): DrawnMark[] {
  const half = (words: string): number => (words.length * letterWidth + apart) / 2;
  const numbered = spans.filter(({ mark }) => mark !== '');
  const placed = numbered.map(({ mark, key, middle }) => ({ words: mark, key, at: middle, x: middle }));
  let least = 0;
  for (const mark of placed) {
    mark.x = Math.max(mark.x, least + half(mark.words));
    least = mark.x + half(mark.words);
  }
  let most = width;
  for (const mark of [...placed].reverse()) {
    mark.x = Math.min(mark.x, most - half(mark.words));
    most = mark.x - half(mark.words);
  }
  return placed.map((mark) => ({ ...mark, anchor: 'middle', drop: firstDrop }));
}
