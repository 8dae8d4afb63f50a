import type { SheetFile } from '../template/sheet-schema.ts';
import type { TemplateLibrary } from '../template/template-library.ts';
import { anchor, code, markdownTable, words } from './markdown.ts';
import { declaredIn, sheetsOf, tablesIn } from './method-names.ts';
import { type DeclaredNames, sheetHeading, sheetLines } from './method-sheet.ts';
import { citations, countsByMark } from './method-sources.ts';

/**
 * Every formula, default, check and row of the templates with its unit and source, as one Markdown page. The same
 * templates give the same text.
 */
export function methodPage(library: TemplateLibrary): string {
  const sheets = sheetsOf(library);
  const names: DeclaredNames = {
    // A name may stand in several systems; what a `set` reaches stands in one part, and parts come first.
    definitions: new Map([...sheets].reverse().flatMap((sheet) => declaredIn(sheet).map((each) => [each.name, each]))),
    tables: new Map(sheets.flatMap((sheet) => tablesIn(sheet).map((table) => [table.name, table]))),
  };
  const lines = [
    ...opening,
    '',
    '## Sheets',
    '',
    ...sheets.map((sheet) => `- [${words(sheetHeading(sheet))}](#${anchor(sheetHeading(sheet))})`),
    ...publicationLines(library),
    ...countLines(library, sheets),
    ...sheets.flatMap((sheet) => ['', ...sheetLines(sheet, names)]),
  ];
  return `${lines.join('\n')}\n`;
}

const opening: readonly string[] = [
  '# Method',
  '',
  'How a price is worked out: every formula, every default, every check, each with its unit and where it comes from.',
  '',
  'This page is made from `templates/` by `npm run method`, and a test fails while it differs from them. Do not edit it:',
  'edit the template. What the folders of the templates assume and leave out stands in their READMEs.',
  '',
  '## How to read it',
  '',
  '- A formula reads names: `docs/formulas.md` says how. A name stands once in the column *Name*; search for it.',
  '- An entry shows its default in its unit, shares in percent. *Low – high* is what is usual, *Limits* what is taken at all.',
  '- A check shows what ought to hold, how grave it is when it does not, and what it then says.',
  '- A system is its parts in order, what it sets in their entries, and the rows it adds to their tables. What it does not',
  '  set stands at the default of the part.',
  '- Sheets lie on each other: price list, shop, floor, system. A formula reads its own sheet and those below it.',
  '- Products and their prices are not here: they are a list of their own beside the price list’s template. Nor are the',
  '  answers to the questions of the first minute, which only set entries.',
];

function publicationLines(library: TemplateLibrary): string[] {
  const rows = citations(library).map(({ publication, places }) => [words(publication), places.map(code).join(', ')]);
  return [
    '',
    '## Published sources',
    '',
    'What cites a publication. A source that also says *from memory*, *common practice* or *a guess* is counted as that below.',
    '',
    ...markdownTable(['Publication', 'Cited by'], rows),
  ];
}

function countLines(library: TemplateLibrary, sheets: readonly SheetFile[]): string[] {
  const counts = countsByMark(library);
  const total = counts.reduce((sum, [, count]) => sum + count, 0);
  const given = sheets.reduce((sum, sheet) => sum + numbersGiven(sheet), 0);
  return [
    '',
    '## Where the defaults come from',
    '',
    `${total} entries and choices, lines and columns, by what their source says:`,
    '',
    ...markdownTable(
      ['Source', 'Entries and choices'],
      counts.map(([mark, count]) => [words(mark), String(count)]),
    ),
    '',
    `Besides, rows and \`set\` give ${given} numbers. They have no source field of their own: take each for common practice,`,
    'no source, unless the column’s source or the README of its template says otherwise.',
  ];
}

/** Numbers that a sheet gives in rows and by `set`. */
function numbersGiven(sheet: SheetFile): number {
  const values = sheet.sections.flatMap((section): unknown[] => {
    switch (section.kind) {
      case 'use':
        return Object.values(section.set);
      case 'rows':
        return section.rows.flatMap((row) => Object.values(row));
      case 'own':
        return section.tables.flatMap(({ start, brings }) =>
          [...start, ...brings.flatMap(({ rows }) => rows)].flatMap((row) => Object.values(row)),
        );
      default:
        return section satisfies never;
    }
  });
  return values.filter((value) => typeof value === 'number').length;
}
