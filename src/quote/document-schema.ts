import * as z from 'zod/mini';
import { idText, nameText, plainText, rowSchema, writtenText } from '../template/line-schema.ts';
import { sheetLimits } from '../template/sheet-limits.ts';
import { checkNamePattern, longestCheckName, longestRowId, rowIdPattern } from './edit-limits.ts';
import { mostOptions, passLimits } from './quote-document.ts';

/** Numbers no table, price list or template comes near; they keep a damaged or hostile file from being walked for long. */
const most = {
  products: 5000,
  fields: 200,
  lines: sheetLimits.lines,
  tables: 500,
  rows: 5000,
  columns: 100,
  parts: 200,
  passed: 500,
};

export const rowId = z.string().check(z.regex(rowIdPattern), z.maxLength(longestRowId));
export const quoteId = z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9_-]*$/), z.maxLength(100));
const sheetHash = z.string().check(z.regex(/^[0-9a-f]{64}$/));
const codeOrDate = z.string().check(z.regex(/^([a-z][a-z0-9_]*|\d{4}-\d{2}-\d{2})$/), z.maxLength(100));

export const storedValue = z.union([
  z.number(),
  codeOrDate,
  z.strictObject({
    value: z.union([z.number(), codeOrDate]),
    typed: z.exactOptional(plainText),
    confirmed: z.exactOptional(z.boolean()),
    from: z.exactOptional(plainText),
  }),
  z.strictObject({ written: writtenText }),
  z.strictObject({ instead: z.number(), why: z.exactOptional(plainText) }),
]);

export const product = z.strictObject({
  product: nameText,
  kind: nameText,
  name: plainText,
  fields: z.record(nameText, z.union([z.number(), codeOrDate])).check(atMost(most.fields)),
});

export const products = z.array(product).check(
  z.maxLength(most.products),
  distinct('A product stands here once.', ({ product: code }) => code),
);

export const storedTable = z.strictObject({
  order: z.exactOptional(
    z.array(rowId).check(
      z.maxLength(sheetLimits.rowsPerTable),
      distinct('A row stands here once.', (id) => id),
    ),
  ),
  added: z.exactOptional(z.record(rowId, rowSchema).check(atMost(sheetLimits.rowsPerTable))),
  cells: z.exactOptional(
    z.record(rowId, z.record(nameText, storedValue).check(atMost(most.columns))).check(atMost(most.rows)),
  ),
});

/** A time as logs hold it, in UTC, such as 2026-05-31T14:05:09.120Z. */
export const isoTime = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,9})?Z$/));

export const checkName = z.string().check(z.regex(checkNamePattern), z.maxLength(longestCheckName));
const sayAtMost = (characters: number) => plainText.check(z.minLength(1), z.maxLength(characters));

export const passedStop = z.strictObject({
  by: sayAtMost(passLimits.by),
  why: sayAtMost(passLimits.why),
  at: isoTime,
  said: plainText,
});

const sheetEntries = z.strictObject({
  lines: z.record(nameText, storedValue).check(atMost(most.lines)),
  tables: z.record(nameText, storedTable).check(atMost(most.tables)),
  passed: z.exactOptional(z.record(checkName, passedStop).check(atMost(most.passed))),
});

export const quoteOption = z.strictObject({ id: rowId, title: plainText, system: sheetHash, entries: sheetEntries });

export const quoteDocument = z.strictObject({
  format: z.literal('spreadrate.quote'),
  version: z.literal(1),
  id: quoteId,
  title: plainText,
  sheets: z.strictObject({
    priceList: sheetHash,
    shop: sheetHash,
    floor: sheetHash,
    parts: z.record(idText, sheetHash).check(atMost(most.parts)),
  }),
  products,
  shop: sheetEntries,
  floor: sheetEntries,
  options: z.array(quoteOption).check(
    z.minLength(1),
    z.maxLength(mostOptions),
    distinct('An option stands here once.', ({ id }) => id),
  ),
});

function atMost(limit: number) {
  return z.refine<Readonly<Record<string, unknown>>>((record) => Object.keys(record).length <= limit, {
    error: `There are more than ${limit} here.`,
  });
}

function distinct<T>(error: string, nameOf: (item: T) => string) {
  return z.refine<readonly T[]>((items) => new Set(items.map(nameOf)).size === items.length, { error });
}
