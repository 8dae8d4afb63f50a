import * as z from 'zod/mini';
import { type NamedColumn, namePatterns } from '../formula/cell-name.ts';
import type { OperatorName } from '../formula/operator.ts';
import {
  type ColumnFile,
  entryValue,
  formulaText,
  idText,
  type LineFile,
  nameText,
  operatorName,
  plainText,
  type RowFile,
  rowSchema,
} from './line-schema.ts';
import { sheetLimits } from './sheet-limits.ts';

export const layers = ['pricelist', 'shop', 'floor', 'system', 'part'] as const;
export type Layer = (typeof layers)[number];

/** What `set` gives a line or an entry cell. */
const setValue = z.union([entryValue, z.string().check(z.maxLength(sheetLimits.text))]);
export type SetValue = z.infer<typeof setValue>;

/** Where a table holds the corners of areas: `of` counts the rows of `table` that have `code` in their column `shape`. */
const outlineColumns = z.strictObject({
  table: nameText,
  shape: nameText,
  code: nameText,
  of: nameText,
  across: nameText,
  along: nameText,
});
export type OutlineColumns = Readonly<z.infer<typeof outlineColumns>>;

/**
 * Rows of another table that belong to each row of this one. In their texts and formulas `{coat}`, the name of this table's
 * key, is the row's code, `{above}` the code of the row above it, or `none`, and `{label}` its words; a row that gives 0 for
 * the column `aboveIf` is passed over. A column of `asAbove` takes what the same row of the row above holds, or, where a row
 * gives nothing for it, what the row just above it does.
 */
const brought = z.strictObject({
  table: nameText,
  rows: z.array(rowSchema).check(z.minLength(1), z.maxLength(20)),
  aboveIf: z.optional(nameText),
  asAbove: z.optional(z.array(nameText).check(z.maxLength(100))),
});
export type Brought = Readonly<z.infer<typeof brought>>;

/** The frames hold `unknown` where lines, columns and tables stand: those are read one by one, so that every fault is told. */
export const tableFrame = z.strictObject({
  name: nameText,
  title: plainText,
  note: z.optional(plainText),
  rows: z.optional(z.enum(['free', 'fixed'])),
  gather: z.optional(z.array(z.string().check(z.regex(namePatterns.column))).check(z.maxLength(100))),
  min: z.optional(z.number().check(z.gte(0), z.lte(sheetLimits.rowsPerTable))),
  columns: z.array(z.unknown()).check(z.minLength(1), z.maxLength(100)),
  newRow: z.optional(rowSchema),
  brings: z.optional(z.array(brought).check(z.minLength(1), z.maxLength(10))),
  outline: z.optional(outlineColumns),
  /** The operator that gives some of its columns. */
  by: z.optional(operatorName),
  start: z.optional(z.array(rowSchema).check(z.maxLength(sheetLimits.rowsPerTable))),
});

/**
 * What a section's lines are for besides the sheet: what a price includes, on what terms, rows of the comparison, or what
 * is told on the day of the work.
 */
const sectionUse = z.enum(['allowances', 'terms', 'comparison', 'day']);
export type SectionUse = z.infer<typeof sectionUse>;

export const ownSectionFrame = z.strictObject({
  id: idText,
  title: plainText,
  note: z.optional(plainText),
  for: z.optional(sectionUse),
  lines: z.optional(z.array(z.unknown()).check(z.maxLength(sheetLimits.lines))),
  tables: z.optional(z.array(z.unknown()).check(z.maxLength(sheetLimits.sections))),
});

export const useSection = z.strictObject({
  use: idText,
  set: z.optional(z.record(z.string().check(z.maxLength(200)), setValue)),
});

export const rowsSection = z.strictObject({
  rowsFor: nameText,
  rows: z.array(rowSchema).check(z.maxLength(sheetLimits.rowsPerTable)),
});

export const needSchema = z.strictObject({
  name: z.string().check(z.regex(namePatterns.lineOrColumn)),
  unit: z.optional(z.string()),
  codes: z.optional(z.array(nameText).check(z.maxLength(sheetLimits.rowsPerTable))),
  kind: z.optional(z.enum(['product', 'words'])),
  accepts: z.optional(z.array(nameText).check(z.maxLength(sheetLimits.kinds))),
});

const kindSchema = z.strictObject({ kind: nameText, label: plainText, soldBy: z.enum(['gal', 'lb', 'each']) });

const setValues = z.record(z.string().check(z.maxLength(200)), setValue);
/** `when`: a condition over its sheet and what lies below; while it does not hold the question is not asked. */
const askCommon = { id: idText, label: plainText, when: z.optional(formulaText) };
const askSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('sizes'),
    ...askCommon,
    table: nameText,
    choices: z.array(
      z.strictObject({
        label: plainText,
        rows: z.array(rowSchema),
        set: z.optional(setValues),
        /** Tables that lose their rows and lines that go back to our standard: what only another kind of floor has. */
        clears: z.optional(z.array(nameText)),
        /** Lines of which it is said that they stay. */
        keeps: z.optional(z.array(nameText)),
      }),
    ),
  }),
  z.strictObject({
    kind: z.literal('oneOf'),
    ...askCommon,
    choices: z.array(z.strictObject({ label: plainText, set: setValues })).check(z.minLength(2)),
  }),
  z.strictObject({ kind: z.literal('toggle'), ...askCommon, on: setValues, off: setValues }),
  z.strictObject({ kind: z.literal('fields'), ...askCommon, lines: z.array(nameText).check(z.minLength(1)) }),
]);

/** A question of the first minute: each answer sets entries of its own sheet. */
export type Ask = Readonly<z.infer<typeof askSchema>>;
export type SizeChoice = Extract<Ask, { kind: 'sizes' }>['choices'][number];

export const sheetFrame = z.strictObject({
  format: z.literal('spreadrate.sheet'),
  version: z.literal(1),
  layer: z.enum(layers),
  id: idText,
  title: plainText,
  summary: z.optional(plainText),
  kinds: z.optional(z.array(kindSchema).check(z.maxLength(sheetLimits.kinds))),
  needs: z.optional(z.array(needSchema).check(z.maxLength(sheetLimits.needs))),
  asks: z.optional(z.array(askSchema).check(z.maxLength(40))),
  sections: z.array(z.unknown()).check(z.maxLength(sheetLimits.sections)),
});

export type Need = z.infer<typeof needSchema>;
export type ProductKind = z.infer<typeof kindSchema>;

export interface TableFile {
  readonly name: string;
  readonly title: string;
  readonly note?: string | undefined;
  readonly rows: 'free' | 'fixed' | 'gathered';
  /** The product columns a gathered table collects from. */
  readonly gather: readonly NamedColumn[];
  readonly min: number;
  readonly columns: readonly ColumnFile[];
  readonly newRow: RowFile;
  readonly brings: readonly Brought[];
  readonly outline?: OutlineColumns | undefined;
  readonly by?: OperatorName | undefined;
  readonly start: readonly RowFile[];
  /** Where the table stands in its file. */
  readonly path: string;
}

export interface LineAt {
  readonly line: LineFile;
  readonly path: string;
}

export type SectionFile =
  | {
      readonly kind: 'own';
      readonly id: string;
      readonly title: string;
      readonly note?: string | undefined;
      readonly for?: SectionUse | undefined;
      readonly lines: readonly LineAt[];
      readonly tables: readonly TableFile[];
    }
  | {
      readonly kind: 'use';
      readonly use: string;
      readonly set: Readonly<Record<string, SetValue>>;
      readonly path: string;
    }
  | { readonly kind: 'rows'; readonly rowsFor: string; readonly rows: readonly RowFile[]; readonly path: string };

/** A sheet file whose shape is right; its names and formulas are not yet looked at. */
export interface SheetFile {
  readonly layer: Layer;
  readonly id: string;
  readonly title: string;
  readonly summary?: string | undefined;
  readonly kinds: readonly ProductKind[];
  readonly needs: readonly Need[];
  readonly asks: readonly Ask[];
  readonly sections: readonly SectionFile[];
  /** Names of lines whose own shape is wrong: known, so that what reads them is not refused as well. */
  readonly brokenNames: readonly string[];
}
