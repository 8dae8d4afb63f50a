import { describe, expect, it } from 'vitest';
import { letterWidth, marksUnder, type NarrowSpan } from '../../../../src/views/day/strip/strip-labels.ts';

const span = (mark: string, words: string, middle: number): NarrowSpan => ({ mark, words, key: words, middle });

/** Vacuum, base, broadcast and wash, 20 px each, then the way home. */
const afternoon = [
  span('5', 'Vacuum twice and tack', 500),
  span('6', 'Base', 520),
  span('7', 'Broadcast', 540),
  span('8', 'Wash tools', 560),
  span('', 'Drive', 600),
];

describe('texts under short spans on 740 px', () => {
  const marks = marksUnder(afternoon, 740);

  it('tell number and words of each, and the words alone of what has no number', () => {
    expect(marks.map(({ words }) => words)).toEqual([
      '5 Vacuum twice and tack',
      '6 Base',
      '7 Broadcast',
      '8 Wash tools',
      'Drive',
    ]);
  });

  it('cross no line that leads to another: a line ends above or left of every text it would meet', () => {
    let met = 0;
    for (const text of marks)
      for (const line of marks) {
        const end = text.x + text.words.length * letterWidth;
        if (line === text || line.at < text.x - 2 || line.at > end) continue;
        met += 1;
        expect(line.drop, `${line.words} through ${text.words}`).toBeLessThanOrEqual(text.drop - 17);
      }
    expect(met).toBeGreaterThan(4);
  });

  it('begin at the first step again where there is room', () => {
    expect(marksUnder([span('1', 'Grind', 100), span('2', 'Scrape', 300)], 740).map(({ drop }) => drop)).toEqual([
      17, 17,
    ]);
  });

  it('fall back to the number at the right edge, where the words would leave the picture', () => {
    expect(marksUnder([span('12', 'Wash tools', 700)], 740).map(({ words }) => words)).toEqual(['12']);
  });
});

describe('texts under short spans on 320 px', () => {
  const marks = marksUnder(
    afternoon.map((each) => ({ ...each, middle: each.middle - 290 })),
    320,
  );

  it('are the numbers alone', () => {
    expect(marks.map(({ words }) => words)).toEqual(['5', '6', '7', '8']);
  });

  it('stand apart by their own width and within the picture', () => {
    for (const [at, { x, words }] of marks.entries()) {
      const half = words.length * 3.6;
      expect(x - half).toBeGreaterThanOrEqual(0);
      expect(x + half).toBeLessThanOrEqual(320);
      const next = marks[at + 1];
      if (next !== undefined) expect(next.x - x).toBeGreaterThanOrEqual(half + next.words.length * 3.6);
    }
  });
});
