import { didYouMean } from '../units/nearest-word.ts';

/** The words of the command line, its help aside. */
export const messages = {
  unknownOption: (option: string, near: string | undefined) =>
    `There is no option ${option}.${near === undefined ? ' --help lists them.' : ` Did you mean ${near}?`}`,
  stray: (text: string) => `“${text}” stands alone: every value follows its option. --help shows how.`,
  valueMissing: (option: string, form: string) => `${option} wants a value: ${option} ${form}.`,
  noValueWanted: (option: string) => `${option} takes no value.`,
  optionTwice: (option: string) => `${option} is given twice: once is enough.`,
  chooseOne: (options: readonly string[]) => `${options.join(' and ')} do not go together: choose one.`,
  equalsMissing: (option: string, form: string, text: string) => `${option} ${text}: write ${option} ${form}.`,
  givenTwice: (option: string, name: string) => `${option} ${name}: it is given twice.`,
  notJson: (table: string, why: string) => `--rows ${table}: this is not JSON. ${why}.`,
  noSystem: (ids: readonly string[]) => `Name a system: --system ${ids.join(' or --system ')}.`,
  unknownSystem: (id: string, near: string | undefined, ids: readonly string[]) =>
    `There is no system “${id}”${near === undefined ? `; there are ${ids.join(', ')}.` : `. Did you mean “${near}”?`}`,
  systemTwice: (id: string) => `The system “${id}” is given twice.`,
  systemName: (id: string) => `A system cannot be called “${id}”: that is the name of another sheet in the output.`,
  tooManySystems: (most: number) => `At most ${most} systems are priced side by side.`,
  notASystem: (layer: string) => `This is a ${layer} sheet; a system is wanted here.`,
  noFile: (path: string) => `There is no file “${path}”.`,
  unreadable: (path: string, why: string) => `“${path}” cannot be read: ${why}.`,
  sheetMissing: (layer: string, id: string) => `The ${layer} sheet “${id}” is missing from the templates.`,

  noLine: (name: string, near: string | undefined) => `There is nothing called “${name}”.${didYouMean(near)}`,
  isTable: (name: string) => `“${name}” is a table: name one of its cells, as ${name}.ROW.COLUMN.`,
  isWords: (name: string) => `“${name}” is what a person writes; there is nothing to explain.`,
  isText: (name: string) => `“${name}” is free text of the sheet; there is nothing to explain.`,
  cellForm: (name: string) => `“${name}” names no cell: write TABLE.ROW.COLUMN, as areas.1.length.`,
  noTable: (name: string, near: string | undefined) => `There is no table “${name}”.${didYouMean(near)}`,
  noColumn: (table: string, name: string, near: string | undefined) =>
    `The table “${table}” has no column “${name}”.${didYouMean(near)}`,
  noRow: (table: string, row: string, ids: readonly string[], near: string | undefined) =>
    `The table “${table}” has no row “${row}”${near === undefined ? rowsThere(ids) : `. Did you mean “${near}”?`}`,
  ofPriceList: 'Products come from the price list: give another with --pricelist FILE.csv.',
  setTwice: 'This cell is set twice.',

  rowsGathered: (table: string) =>
    `The rows of “${table}” are gathered: one for each product that other tables name. Change those.`,
  rowsFixed: (table: string) => `The rows of “${table}” are fixed; set its cells with --set.`,
  rowsNoList: 'A list of rows is wanted: [{ "column": value, … }, …].',
  tooManyRows: (most: number) => `A table has at most ${most} rows.`,
  rowNoObject: (row: number) => `Row ${row} is no object: write { "column": value, … }.`,
  keyMissing: (row: number, key: string) => `Row ${row} lacks its “${key}”: every row has its name.`,
  cellAt: (row: number, column: string, reason: string) => `Row ${row}, ${column}: ${reason}`,
  textWanted: 'A text is wanted here.',
  nameWanted: 'A name is wanted here: a word or two.',
  cellForms: 'A number, a text, or { "formula": "…" } is wanted here.',
} as const;

function rowsThere(ids: readonly string[]): string {
  return ids.length === 0 ? ': it has none.' : `: it has ${ids.join(', ')}.`;
}
