import { describe, expect, it } from 'vitest';
import { cutTokens, type Token } from '../../src/formula/tokens.ts';

function tokens(source: string): string[] {
  const cut = cutTokens(source);
  if (cut.kind === 'fault') throw new Error(cut.fault.reason);
  return cut.tokens.map(spoken);
}

function spoken(token: Token): string {
  switch (token.kind) {
    case 'number':
    case 'text':
      return `${token.kind} ${token.value}`;
    case 'name':
      return `name ${token.name}`;
    case 'mark':
      return token.mark;
    case 'end':
      return 'end';
    default:
      return token satisfies never;
  }
}

describe('a formula is cut into', () => {
  it.each([
    ['12', ['number 12', 'end']],
    ['.5+2.', ['number 0.5', '+', 'number 2', 'end']],
    ['1e3 1E-3', ['number 1000', 'number 0.001', 'end']],
    ['coats.gallons', ['name coats', '.', 'name gallons', 'end']],
    ['a<=b<>c>=d', ['name a', '<=', 'name b', '<>', 'name c', '>=', 'name d', 'end']],
    ['"rolled"', ['text rolled', 'end']],
    ['"say ""so"""', ['text say "so"', 'end']],
    [' \t\n', ['end']],
    ['__proto__ constructor', ['name __proto__', 'name constructor', 'end']],
  ])('%j', (source, wanted) => {
    expect(tokens(source)).toEqual(wanted);
  });

  it('tokens that know where they stand', () => {
    const cut = cutTokens('wage * 2');
    expect(cut.kind === 'tokens' && cut.tokens.map(({ span }) => [span.start, span.end])).toEqual([
      [0, 4],
      [5, 6],
      [7, 8],
      [8, 8],
    ]);
  });
});

describe('what no token begins with is refused where it stands', () => {
  it.each([
    ['rate * 5%', 8, 'There is no % in a formula. Write the share as a line, or as a fraction such as 0.05.'],
    ['"a" & "b"', 4, 'Texts cannot be joined in a formula.'],
    ['1 + "open', 4, 'The text has no closing quotation mark.'],
    ['SUM(a; b)', 5, 'Arguments are parted by a comma.'],
    ['$A$1', 0, 'A formula names lines and columns. There are no cell addresses.'],
    ["'rolled'", 0, 'A code is written in double quotation marks.'],
    ['a # b', 2, '“#” cannot stand in a formula.'],
    ['2 × 3', 2, '“×” cannot stand in a formula.'],
    ['a + 🏠', 4, '“🏠” cannot stand in a formula.'],
    ['1e999', 0, 'This number is too large.'],
  ])('%j at %i', (source, at, reason) => {
    const cut = cutTokens(source);
    expect(cut).toMatchObject({ kind: 'fault', fault: { kind: 'reading', at: { start: at }, reason } });
  });

  it('a formula of 2,001 characters; one of 2,000 is read', () => {
    expect(cutTokens('1'.padEnd(2000))).toMatchObject({ kind: 'tokens' });
    expect(cutTokens('1'.padEnd(2001))).toMatchObject({ kind: 'fault', fault: { kind: 'limit' } });
  });
});
