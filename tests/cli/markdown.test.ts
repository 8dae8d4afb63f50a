import { describe, expect, it } from 'vitest';
import { anchor, code, markdownTable, words } from '../../src/cli/markdown.ts';

describe('Markdown', () => {
  it('takes nothing in a text for markup, and keeps it on one line', () => {
    expect(words('a | b * c <d> [e] `f`\ng')).toBe('a \\| b \\* c \\<d\\> \\[e\\] \\`f\\` g');
    expect(words('floor_area and _this_')).toBe('floor_area and \\_this\\_');
  });

  it('has formulas as code, also those with a bar or a tick in them', () => {
    expect(code('a * b')).toBe('`a * b`');
    expect(code('a | b')).toBe('`a \\| b`');
    expect(code('a ` b')).toBe('`` a ` b ``');
  });

  it('leaves out a column that no row fills, and a table without rows', () => {
    expect(markdownTable(['a', 'b', 'c'], [['1', '', '2'], ['3']])).toEqual([
      '| a | c |',
      '| --- | --- |',
      '| 1 | 2 |',
      '| 3 |  |',
    ]);
    expect(markdownTable(['a'], [])).toEqual([]);
  });

  it('finds a heading by its words', () => {
    expect(anchor('System: Patio or porch, full flake')).toBe('system-patio-or-porch-full-flake');
  });
});
