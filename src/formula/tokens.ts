import type { FormulaFault } from './fault.ts';
import { formulaLimits, type Span } from './tree.ts';

export type Token =
  | { readonly kind: 'number'; readonly value: number; readonly span: Span }
  | { readonly kind: 'text'; readonly value: string; readonly span: Span }
  | { readonly kind: 'name'; readonly name: string; readonly span: Span }
  | { readonly kind: 'mark'; readonly mark: string; readonly span: Span }
  | { readonly kind: 'end'; readonly span: Span };

export type TokensResult =
  | { readonly kind: 'tokens'; readonly tokens: readonly Token[] }
  | { readonly kind: 'fault'; readonly fault: FormulaFault };

const number = /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const name = /[A-Za-z_][A-Za-z0-9_]*/y;
const text = /"(?:[^"]|"")*"/y;
const mark = /<>|<=|>=|[-+*/^=<>(),.]/y;
const space = /\s+/y;

/** Cuts a formula's text into tokens, the last of kind `end`. Fails at the first character no token begins with. */
export function cutTokens(source: string): TokensResult {
  if (source.length > formulaLimits.characters) {
    const at = { start: formulaLimits.characters, end: source.length };
    return fault(
      'limit',
      at,
      `The formula is longer than ${formulaLimits.characters} characters. Put a part of it in a line of its own.`,
    );
  }
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    return pattern.exec(source)?.[0];
  };
  while (at < source.length) {
    const blank = match(space);
    if (blank !== undefined) {
      at += blank.length;
      continue;
    }
    const token = tokenAt(match, at);
    if (token === undefined) return unreadable(source, at);
    if (token.kind === 'number' && !Number.isFinite(token.value)) {
      return fault('reading', token.span, 'This number is too large.');
    }
    tokens.push(token);
    at = token.span.end;
  }
  tokens.push({ kind: 'end', span: { start: source.length, end: source.length } });
  return { kind: 'tokens', tokens };
}

function tokenAt(match: (pattern: RegExp) => string | undefined, start: number): Token | undefined {
  const span = (found: string): Span => ({ start, end: start + found.length });
  const foundNumber = match(number);
  if (foundNumber !== undefined) return { kind: 'number', value: Number(foundNumber), span: span(foundNumber) };
  const foundName = match(name);
  if (foundName !== undefined) return { kind: 'name', name: foundName, span: span(foundName) };
  const foundText = match(text);
  if (foundText !== undefined) {
    return { kind: 'text', value: foundText.slice(1, -1).replaceAll('""', '"'), span: span(foundText) };
  }
  const foundMark = match(mark);
  return foundMark === undefined ? undefined : { kind: 'mark', mark: foundMark, span: span(foundMark) };
}

const advice: Readonly<Record<string, string>> = {
  '%': 'There is no % in a formula. Write the share as a line, or as a fraction such as 0.05.',
  '&': 'Texts cannot be joined in a formula.',
  '"': 'The text has no closing quotation mark.',
  "'": 'A code is written in double quotation marks.',
  ';': 'Arguments are parted by a comma.',
  $: 'A formula names lines and columns. There are no cell addresses.',
  '!': 'A formula names lines and columns. There are no cell addresses.',
  ':': 'A column is named whole, as in coats.gallons. There are no ranges of addresses.',
};

function unreadable(source: string, at: number): TokensResult {
  const character = String.fromCodePoint(source.codePointAt(at) ?? 0);
  const reason = advice[character] ?? `“${character}” cannot stand in a formula.`;
  return fault('reading', { start: at, end: at + character.length }, reason);
}

function fault(kind: FormulaFault['kind'], at: Span, reason: string): TokensResult {
  return { kind: 'fault', fault: { kind, at, reason } };
}
