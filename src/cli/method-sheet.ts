import { columnName, parseCellName, printCellName } from '../formula/cell-name.ts';
import type { SetValue, SheetFile, TableFile } from '../template/sheet-schema.ts';
import { code, markdownTable, words } from './markdown.ts';
import { definitionHeadings, definitionRow, unitWords, valueText } from './method-lines.ts';
import type { Declared } from './method-names.ts';
import { newRowWords, rowTable } from './method-rows.ts';

/** What the sheets of a library declare, to show what a `set` reaches and where added rows go. */
export interface DeclaredNames {
  /** By a line's name, or `table.column`. */
  readonly definitions: ReadonlyMap<string, Declared>;
  readonly tables: ReadonlyMap<string, TableFile>;
}

const useWords = {
  allowances: 'Told with the price, as what it includes.',
  terms: 'Told with the price, as on what terms it stands.',
  comparison: 'Rows of the comparison side by side.',
  day: 'Told on the day of the work, not to the customer.',
} as const;

const layerWords = { pricelist: 'Price list', shop: 'Shop', floor: 'Floor', part: 'Part', system: 'System' } as const;

/** `Part: Coats`. */
export function sheetHeading({ layer, title }: SheetFile): string {
  return `${layerWords[layer]}: ${title}`;
}

/** One sheet: what it uses and sets, then its sections. */
export function sheetLines(sheet: SheetFile, names: DeclaredNames): string[] {
  return [
    `## ${words(sheetHeading(sheet))}`,
    '',
    `${code(sheet.id)}${sheet.summary === undefined ? '' : ` · ${words(sheet.summary)}`}`,
    ...kindLines(sheet),
    ...useLines(sheet, names),
    ...sheet.sections.flatMap((section) => {
      if (section.kind === 'rows') return addedRows(section.rowsFor, section.rows, names);
      if (section.kind === 'use') return [];
      const lines = section.lines.map(({ line }) => definitionRow(line));
      return [
        '',
        `### ${words(section.title)}`,
        ...spaced(section.for === undefined ? [] : [useWords[section.for]]),
        ...spaced(section.note === undefined ? [] : [words(section.note)]),
        ...spaced(markdownTable(definitionHeadings, lines)),
        ...section.tables.flatMap((table) => tableLines(table, names)),
      ];
    }),
  ];
}

function kindLines({ kinds }: SheetFile): string[] {
  const rows = kinds.map(({ kind, label, soldBy }) => [words(label), code(kind), soldBy]);
  return rows.length === 0
    ? []
    : ['', '### Kinds of product', ...spaced(markdownTable(['Kind', 'Code', 'Sold by'], rows))];
}

/** The parts of a system in its order, and what it sets in them. */
function useLines(sheet: SheetFile, names: DeclaredNames): string[] {
  const uses = sheet.sections.flatMap((section) => (section.kind === 'use' ? [section] : []));
  if (uses.length === 0) return [];
  const rows = uses.flatMap(({ use, set }) =>
    Object.entries(set).map(([name, value]) => [code(use), code(name), ...setCells(name, value, names)]),
  );
  return [
    '',
    '### What it uses and sets',
    '',
    `Uses the parts ${uses.map(({ use }) => code(use)).join(', ')}.${rows.length === 0 ? ' It sets nothing in them.' : ''}`,
    ...spaced(markdownTable(['Part', 'Entry', 'What', 'Value', 'Unit'], rows)),
  ];
}

/** What is set, its value and its unit. A cell is named `table.key.column`. */
function setCells(name: string, value: SetValue, { definitions, tables }: DeclaredNames): string[] {
  const named = parseCellName(name);
  const cell = named?.kind === 'cell' ? named : undefined;
  const definition = definitions.get(cell === undefined ? name : columnName(cell.table, cell.column))?.definition;
  const where =
    cell === undefined ? '' : ` of ${code(cell.row)} in ${words(tables.get(cell.table)?.title ?? cell.table)}`;
  const what = words(definition?.label ?? name) + where;
  if (definition?.kind === 'text' || definition?.kind === 'words') return [what, words(String(value)), ''];
  if (definition?.kind !== 'entry') return [what, valueText(value, undefined), ''];
  if (definition.yesNo === true) return [what, value === 1 ? 'yes' : 'no', ''];
  return [what, valueText(value, definition.unit), unitWords(definition.unit)];
}

function tableLines(table: TableFile, { tables }: DeclaredNames): string[] {
  const { name, title, note, columns, start } = table;
  return [
    '',
    `#### ${words(title)}: table ${code(name)}`,
    '',
    [rowsWords(table), ...outlineWords(table), ...(note === undefined ? [] : [words(note)])].join(' '),
    ...spaced(markdownTable(definitionHeadings, columns.map(definitionRow))),
    ...(start.length === 0 ? [] : ['', `#### ${words(title)}: its own rows`, ...spaced(rowTable(table, start))]),
    ...table.brings.flatMap((brings) => {
      const target = tables.get(brings.table);
      const heading = `#### ${words(title)}: rows of ${words(target?.title ?? brings.table)} that come with each`;
      return ['', heading, ...spaced(rowTable(target, brings.rows))];
    }),
  ];
}

/** The one check that no formula says. */
function outlineWords({ outline }: TableFile): string[] {
  if (outline === undefined) return [];
  const whose = `the areas of ${code(outline.table)} that have ${code(outline.code)} as their ${code(outline.shape)}`;
  return [`They are corners of ${whose}: sides that cross, touch or fold back are a stop.`];
}

function rowsWords(table: TableFile): string {
  const least = table.min > 0 ? `, at least ${table.min}` : '';
  const given = newRowWords(table);
  const fresh = given === '' ? '' : ` A new row has ${given}.`;
  switch (table.rows) {
    case 'free':
      return `Rows are added, moved and removed${least}.${fresh}`;
    case 'fixed':
      return `The rows are fixed.${fresh}`;
    case 'gathered':
      return `One row for each product in ${table.gather.map((column) => code(printCellName(column))).join(', ')}.`;
    default:
      return table.rows satisfies never;
  }
}

function addedRows(name: string, rows: Parameters<typeof rowTable>[1], { tables }: DeclaredNames): string[] {
  const table = tables.get(name);
  return ['', `### Rows added to ${words(table?.title ?? name)} (${code(name)})`, ...spaced(rowTable(table, rows))];
}

function spaced(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', ...lines];
}
