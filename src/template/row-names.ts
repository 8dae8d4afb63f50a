import { isCode } from '../formula/code-text.ts';
import type { RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import { asWritten, writtenRefusal } from './written-text.ts';

/** Letters that are no plain letter with a mark. */
const folded: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ł: 'l',
  ı: 'i',
};

/** Leaves room in a code for the number that makes it unique. */
const longestMade = 50;

/**
 * The code made from what people call a row. `stem` is the name of its key column, for words that no code begins with.
 * Example: 'Bay 2, left' → 'bay_2_left'; of a place, '2nd bay' → 'place_2nd_bay'.
 */
export function codeOfWords(words: string, stem: string): string {
  const plain = words
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]/g, (letter) => folded[letter] ?? '_');
  const made = trimmed(plain.replace(/_+/g, '_'));
  if (isCode(made)) return made;
  return trimmed(made === '' ? stem : `${stem}_${made}`);
}

function trimmed(code: string): string {
  return code.replace(/^_+/, '').slice(0, longestMade).replace(/_+$/, '');
}

/** Why a row cannot be called so, or undefined when it can. */
export function rowNameRefusal(words: string): string | undefined {
  return asWritten(words) === '' ? 'A row is called by a word or two.' : writtenRefusal(asWritten(words));
}

/**
 * Rows of a table that people name, each with a code in its key column: what is no code yet is words, which stay as the
 * row's label, and its code is made from them, unlike that of any other row. What can be no name stands as it is.
 * Example: `{ "place": "Bay" }` → `{ "place": "bay", "label": "Bay" }`.
 */
export function withRowCodes<Row extends { readonly cells: RowFile }>(
  rows: readonly Row[],
  key: string,
): readonly Row[] {
  const given = rows.map(({ cells }) => ownValue(cells, key));
  if (given.every((name) => typeof name !== 'string' || isCode(name))) return rows;
  const taken = new Set(given.filter((name) => typeof name === 'string' && isCode(name)));
  return rows.map((row) => {
    const words = ownValue(row.cells, key);
    if (typeof words !== 'string' || isCode(words) || rowNameRefusal(words) !== undefined) return row;
    const code = freeCode(codeOfWords(words, key), taken);
    taken.add(code);
    return { ...row, cells: { label: asWritten(words), ...row.cells, [key]: code } };
  });
}

function freeCode(code: string, taken: ReadonlySet<unknown>): string {
  if (!taken.has(code)) return code;
  let number = 2;
  while (taken.has(`${code}_${number}`)) number += 1;
  return `${code}_${number}`;
}
