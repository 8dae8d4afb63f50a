import * as z from 'zod/mini';
import { nameText, plainText, rowSchema } from '../template/line-schema.ts';
import { sheetLimits } from '../template/sheet-limits.ts';
import {
  checkName,
  passedStop,
  product,
  products,
  quoteOption,
  rowId,
  storedTable,
  storedValue,
} from './document-schema.ts';
import { mostTogether } from './edit-limits.ts';

const sheet = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('shop') }),
  z.strictObject({ kind: z.literal('floor') }),
  z.strictObject({ kind: z.literal('option'), option: rowId }),
]);
const place = z.number().check(z.int(), z.gte(0), z.lte(sheetLimits.rowsPerTable));
const rowOfTable = { sheet, table: nameText, row: rowId };

const singleEdit = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('enterLine'),
    sheet,
    line: nameText,
    value: z.exactOptional(storedValue),
    product: z.exactOptional(product),
  }),
  z.strictObject({
    kind: z.literal('enterCell'),
    ...rowOfTable,
    column: nameText,
    value: z.exactOptional(storedValue),
    product: z.exactOptional(product),
  }),
  z.strictObject({
    kind: z.literal('addRow'),
    ...rowOfTable,
    at: place,
    cells: rowSchema,
    products: z.exactOptional(products),
  }),
  z.strictObject({ kind: z.literal('removeRow'), ...rowOfTable }),
  z.strictObject({ kind: z.literal('moveRow'), ...rowOfTable, to: place }),
  z.strictObject({
    kind: z.literal('replaceRows'),
    sheet,
    table: nameText,
    rows: z.array(z.strictObject({ row: rowId, cells: rowSchema })).check(z.maxLength(sheetLimits.rowsPerTable)),
  }),
  z.strictObject({ kind: z.literal('addOption'), option: quoteOption, at: place, products }),
  z.strictObject({ kind: z.literal('removeOption'), option: rowId, products: z.exactOptional(products) }),
  z.strictObject({ kind: z.literal('retitle'), title: plainText }),
  z.strictObject({ kind: z.literal('passStop'), sheet, check: checkName, pass: z.exactOptional(passedStop) }),
  z.strictObject({
    kind: z.literal('restoreTable'),
    sheet,
    table: nameText,
    content: z.exactOptional(storedTable),
    products: z.exactOptional(products),
  }),
  z.strictObject({
    kind: z.literal('restoreLine'),
    sheet,
    line: nameText,
    content: z.exactOptional(storedValue),
    products: z.exactOptional(products),
  }),
]);

/** Every edit the log may hold. What fits here leaves a quote that `readQuote` takes. */
export const editSchema = z.discriminatedUnion('kind', [
  singleEdit,
  z.strictObject({
    kind: z.literal('several'),
    words: plainText,
    edits: z.array(singleEdit).check(z.maxLength(mostTogether)),
  }),
]);
