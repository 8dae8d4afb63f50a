import { describe, expect, it } from 'vitest';
import { clip, layTable, pageWidth, plain, wrap } from '../../src/cli/text-layout.ts';

describe('text for a terminal', () => {
  it('loses what would steer the terminal', () => {
    expect(plain('a\u001b[31mb\nc\u202ed')).toBe('a [31mb c d');
  });

  it('is wrapped at the page, later lines under the first, and long words are cut', () => {
    const lines = wrap(`${'word '.repeat(40)}${'x'.repeat(150)}`, '  note  ');
    expect(lines[0]?.startsWith('  note  word')).toBe(true);
    expect(lines[1]?.startsWith('        word')).toBe(true);
    expect(lines.join('').replaceAll(' ', '')).toBe(`note${'word'.repeat(40)}${'x'.repeat(150)}`);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(pageWidth);
  });

  it('is clipped with a sign that it was', () => {
    expect(clip('Tumblewick', 5)).toBe('Tumb…');
    expect(clip('Tumblewick', 10)).toBe('Tumblewick');
  });

  it('stands in columns, the widest giving way', () => {
    const lines = layTable(
      [
        { heading: 'name', align: 'left' },
        { heading: 'cost', align: 'right' },
      ],
      [
        ['n'.repeat(200), '$1.00'],
        ['b', '$10.00'],
      ],
    );
    expect(lines.map((line) => line.length)).toEqual([pageWidth, pageWidth, pageWidth]);
    expect(lines[1]).toMatch(/n… {3}\$1\.00$/);
  });
});
