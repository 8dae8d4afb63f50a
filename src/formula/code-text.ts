/** A code is what a formula may see of a text: a choice's option, a product, a row's key. */
const codePattern = /^[a-z][a-z0-9_]*$/;

const codeLength = 60;

/** Spreadsheets read these two as truths when they stand as a criterion of SUMIFS or COUNTIFS. */
const readAsTruths: ReadonlySet<string> = new Set(['true', 'false']);

/**
 * Whether a text may be a code. A leading letter keeps it from being read as a number or a date by any spreadsheet.
 * Example: `isCode('flake_full')` → true; `isCode('1_4_inch')` and `isCode('true')` → false.
 */
export function isCode(text: string): boolean {
  return text.length <= codeLength && codePattern.test(text) && !readAsTruths.has(text);
}

/** Why a text may be no code; undefined when it may. */
export function codeRefusal(text: string): string | undefined {
  return isCode(text) ? undefined : `“${text}” is not a code: lower-case letters, digits and underscores.`;
}
