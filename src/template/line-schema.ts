import * as z from 'zod/mini';
import { sheetLimits } from './sheet-limits.ts';
import { writtenRefusal } from './written-text.ts';

// A strict content-security policy forbids compiled schemas.
z.config({ jitless: true });

/** A name in formulas: the trade's words in snake_case. */
export const nameText = z.string().check(z.regex(/^[a-z][a-z0-9_]*$/), z.maxLength(60));
/** An id of a file or section: lower-case words joined by hyphens. */
export const idText = z.string().check(z.regex(/^[a-z][a-z0-9-]*$/), z.maxLength(60));
/** Plain text that people read; never markup. */
export const plainText = z.string().check(z.maxLength(sheetLimits.text));
/** Words that a person writes: one line of plain text. */
export const writtenText = z.string().check(
  z.refine((text) => writtenRefusal(text) === undefined, {
    error: (issue) => writtenRefusal(String(issue.input)) ?? '',
  }),
);
export const formulaText = z.string().check(z.minLength(1), z.maxLength(sheetLimits.text));
const finite = z.number();

export const entryValue = z.union([finite, z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/))]);

const common = {
  name: nameText,
  label: plainText,
  help: z.optional(plainText),
  note: z.optional(plainText),
  source: z.optional(plainText),
  was: z.optional(z.array(nameText)),
};

const entryParts = {
  unit: z.string(),
  low: z.optional(finite),
  likely: z.optional(finite),
  high: z.optional(finite),
  limits: z.optional(z.tuple([finite, finite])),
  whole: z.optional(z.boolean()),
  yesNo: z.optional(z.boolean()),
};

const option = z.strictObject({ code: nameText, label: plainText });
const options = z.array(option).check(z.minLength(1), z.maxLength(100));
const accepts = z.array(nameText).check(z.minLength(1), z.maxLength(sheetLimits.kinds));

/** `unsaid`: what texts tell while nothing is written. */
const wordsParts = { words: writtenText, unsaid: z.optional(plainText) };

const checkParts = {
  check: formulaText,
  severity: z.enum(['note', 'caution', 'stop']),
  say: plainText,
  absolute: z.optional(z.boolean()),
  open: z.optional(z.boolean()),
};

/** The shapes a line may have; which one it is follows from the property it holds. */
export const lineSchemas = {
  choice: z.strictObject({ ...common, options, value: nameText }),
  product: z.strictObject({ ...common, accepts, value: nameText }),
  text: z.strictObject({ ...common, text: plainText, when: z.optional(formulaText) }),
  words: z.strictObject({ ...common, ...wordsParts }),
  check: z.strictObject({ ...common, ...checkParts }),
  formula: z.strictObject({
    ...common,
    unit: z.optional(z.string()),
    code: z.optional(z.boolean()),
    formula: formulaText,
    result: z.optional(z.boolean()),
  }),
  entry: z.strictObject({ ...common, ...entryParts, value: entryValue }),
};

const columnCommon = {
  ...common,
  group: z.optional(plainText),
  /** Shown only when every column is asked for. */
  detail: z.optional(z.boolean()),
  /** Shown only while some row has one of these codes in a choice column. */
  shownFor: z.optional(z.strictObject({ column: nameText, codes: z.array(nameText) })),
  kinds: z.optional(z.array(nameText)),
};
/** The algorithms of the language. */
export const operatorName = z.enum(['schedule']);
const unitBy = z.strictObject({ column: nameText, units: z.record(nameText, z.string()) });

/** The shapes a column may have. */
export const columnSchemas = {
  key: z.strictObject({ ...columnCommon, key: z.literal(true) }),
  choice: z.strictObject({ ...columnCommon, options, default: z.optional(nameText) }),
  rowChoice: z.strictObject({ ...columnCommon, rowOf: nameText, default: z.optional(nameText) }),
  product: z.strictObject({ ...columnCommon, accepts, default: z.optional(nameText) }),
  text: z.strictObject({ ...columnCommon, text: plainText }),
  words: z.strictObject({ ...columnCommon, ...wordsParts }),
  check: z.strictObject({ ...columnCommon, ...checkParts, first: z.optional(formulaText) }),
  formula: z.strictObject({
    ...columnCommon,
    unit: z.optional(z.string()),
    code: z.optional(z.boolean()),
    formula: formulaText,
    first: z.optional(formulaText),
  }),
  /** What the operator of the table gives. */
  operated: z.strictObject({
    ...columnCommon,
    by: operatorName,
    unit: z.optional(z.string()),
    options: z.optional(options),
  }),
  entry: z.strictObject({
    ...columnCommon,
    ...entryParts,
    unit: z.optional(z.string()),
    unitBy: z.optional(unitBy),
    perRow: z.optional(z.boolean()),
    default: z.optional(entryValue),
  }),
};

/** A cell a row gives: a number, a date, a code, free text, or (perRow columns) its own formula. */
export const rowCell = z.union([finite, plainText, z.strictObject({ formula: formulaText })]);
export const rowSchema = z.record(nameText, rowCell);
export type RowCell = z.infer<typeof rowCell>;
export type RowFile = z.infer<typeof rowSchema>;

export type LineShape = keyof typeof lineSchemas;
export type ColumnShape = keyof typeof columnSchemas;

/** Which kind of line or column an object means to be, by the property that only that kind holds. */
export function shapeOf(raw: object): LineShape {
  if ('options' in raw) return 'choice';
  if ('accepts' in raw) return 'product';
  if ('text' in raw) return 'text';
  if ('words' in raw) return 'words';
  if ('check' in raw) return 'check';
  return 'formula' in raw ? 'formula' : 'entry';
}

export function columnShapeOf(raw: object): ColumnShape {
  if ('key' in raw) return 'key';
  if ('by' in raw) return 'operated';
  return 'rowOf' in raw ? 'rowChoice' : shapeOf(raw);
}

export type LineFile =
  | ({ readonly kind: 'choice' } & Readonly<z.infer<typeof lineSchemas.choice>>)
  | ({ readonly kind: 'product' } & Readonly<z.infer<typeof lineSchemas.product>>)
  | ({ readonly kind: 'text' } & Readonly<z.infer<typeof lineSchemas.text>>)
  | ({ readonly kind: 'words' } & Readonly<z.infer<typeof lineSchemas.words>>)
  | ({ readonly kind: 'check' } & Readonly<z.infer<typeof lineSchemas.check>>)
  | ({ readonly kind: 'formula' } & Readonly<z.infer<typeof lineSchemas.formula>>)
  | ({ readonly kind: 'entry' } & Readonly<z.infer<typeof lineSchemas.entry>>);

export type ColumnFile =
  | ({ readonly kind: 'key' } & Readonly<z.infer<typeof columnSchemas.key>>)
  /** `rowOf`: its options are the rows of that table, which stand in it once the sheet is composed. */
  | ({ readonly kind: 'choice'; readonly rowOf?: string } & Readonly<z.infer<typeof columnSchemas.choice>>)
  | ({ readonly kind: 'product' } & Readonly<z.infer<typeof columnSchemas.product>>)
  | ({ readonly kind: 'text' } & Readonly<z.infer<typeof columnSchemas.text>>)
  | ({ readonly kind: 'words' } & Readonly<z.infer<typeof columnSchemas.words>>)
  | ({ readonly kind: 'check' } & Readonly<z.infer<typeof columnSchemas.check>>)
  | ({ readonly kind: 'formula' } & Readonly<z.infer<typeof columnSchemas.formula>>)
  | ({ readonly kind: 'operated' } & Readonly<z.infer<typeof columnSchemas.operated>>)
  | ({ readonly kind: 'entry' } & Readonly<z.infer<typeof columnSchemas.entry>>);
