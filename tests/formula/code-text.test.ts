import { describe, expect, it } from 'vitest';
import { isCode } from '../../src/formula/code-text.ts';

describe('a code', () => {
  it.each(['flake_full', 'a', 'c4', 'true_grey', 'e5', 'jan_1', 'x'.repeat(60)])('may be %s', (text) => {
    expect(isCode(text)).toBe(true);
  });

  it.each(['', '4_inch', '_a', 'Grey', 'full flake', 'né', "a'b", 'true', 'false', '>a', '1e5', 'a\n', 'x'.repeat(61)])(
    'may not be %j',
    (text) => {
      expect(isCode(text)).toBe(false);
    },
  );
});
