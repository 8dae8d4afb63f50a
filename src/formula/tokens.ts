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

/** Blanks and the next token: a number, a name, a text, or a mark. */
const next =
  /\s*(?:((?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)|([A-Za-z_][A-Za-z0-9_]*)|("(?:[^"]|"")*")|(<>|<=|>=|[-+*/^=<>(),.]))/y;
const blanks = /\s*/y;

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
  for (;;) {
    const token = tokenAt(source, at);
    if (token === undefined) break;
    if (token.kind === 'number' && !Number.isFinite(token.value)) {
      return fault('reading', token.span, 'This number is too large.');
    }
    tokens.push(token);
    at = token.span.end;
  }
  blanks.lastIndex = at;
  at += blanks.exec(source)?.[0].length ?? 0;
  if (at < source.length) return unreadable(source, at);
  tokens.push({ kind: 'end', span: { start: source.length, end: source.length } });
  return { kind: 'tokens', tokens };
}

function tokenAt(source: string, at: number): Token | undefined {
  next.lastIndex = at;
  const found = next.exec(source);
  if (found === null) return undefined;
  const [all, number, name, text, mark] = found;
  const end = at + all.length;
  if (name !== undefined) return { kind: 'name', name, span: { start: end - name.length, end } };
  if (mark !== undefined) return { kind: 'mark', mark, span: { start: end - mark.length, end } };
  if (number !== undefined) return { kind: 'number', value: Number(number), span: { start: end - number.length, end } };
  if (text === undefined) return undefined;
  const value = text.slice(1, -1).replaceAll('""', '"');
  return { kind: 'text', value, span: { start: end - text.length, end } };
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
