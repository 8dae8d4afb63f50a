import { describe, expect, it } from 'vitest';
import { loadTemplates } from '../../src/cli/load-templates.ts';
import { methodPage } from '../../src/cli/method-page.ts';
import { originOf, publications, sourceFaults } from '../../src/cli/method-sources.ts';
import { libraryOf, type TemplateLibrary } from '../../src/template/template-library.ts';
import { readText, repositoryFiles } from '../helpers/repository-files.ts';
import * as sheets from '../helpers/sheets.ts';

const shipped = loadTemplates();
const page = methodPage(shipped.library);
const paths = repositoryFiles().filter((path) => /^templates\/[^/]+\/[^/]+\/template\.json$/.test(path));

const source = 'common practice, no source';
const coats = sheets.table(
  'coats',
  [
    sheets.key('coat'),
    { ...sheets.productColumn('product', ['base'], 'base_slate'), source, note: 'Mixed.' },
    { ...sheets.choiceColumn('measure', ['area', 'length'], 'area'), source },
    { name: 'amount', label: 'Amount', unitBy: { column: 'measure', units: { area: 'ft2', length: 'ft' } }, source },
    { ...sheets.entryColumn('share', '%', 0.1, { low: 0.05, likely: 0.1, high: 0.2, limits: [0, 1] }), source },
    { ...sheets.entryColumn('people', 'person', 2, { whole: true, perRow: true }), source },
    { ...sheets.entryColumn('include', '1', 1, { yesNo: true }), source },
    sheets.formula('so_far', 'ft2', 'above.so_far + 1', { first: 'floor_area' }),
  ],
  [{ coat: 'first_coat', label: 'First coat', product: 'base_sand', amount: 3, people: { formula: 'coat_count' } }],
  { newRow: { include: 0, share: 0.25 }, note: 'In order.', min: 1 },
);
const sealed = sheets.text('best_for', 'A garage.');

/** Templates of every shape a sheet has. */
const files: Readonly<Record<string, object>> = {
  list: sheets.priceList,
  floor: sheets.floor([
    { ...sheets.entry('floor_area', 'ft2', 528, { low: 240, high: 900, limits: [1, 100000] }), source, note: 'Plan.' },
    { ...sheets.choice('use', ['garage', 'shop'], 'garage'), source },
    sheets.check('measured', 'floor_area > 0', { severity: 'stop', absolute: true, say: 'Nothing is measured.' }),
    { ...sealed, when: 'floor_area > 1' },
  ]),
  part: sheets.sheet('part', 'coats', [
    {
      ...sheets.section('coats', [sheets.formula('coat_count', 'coat', 'SUM(coats.include)')], [coats]),
      note: 'Gloves.',
      for: 'terms',
    },
  ]),
  system: sheets.sheet(
    'system',
    'rolled',
    [
      { use: 'coats', set: { 'coats.first_coat.share': 0.3 } },
      { rowsFor: 'coats', rows: [{ coat: 'second_coat', amount: 7, measure: 'length' }] },
      sheets.section('money', [sheets.formula('price', '$', 'floor_area * 8', { result: true })]),
    ],
    { summary: 'Two coats.' },
  ),
};

function libraryFrom(templates: Readonly<Record<string, unknown>>): TemplateLibrary {
  const { library, faults } = libraryOf(new Map(Object.entries(templates)));
  expect(faults).toEqual([]);
  return library;
}

/** What is no matter of method: how a file is marked and which column is the key. */
const silent = ['format', 'version', 'layer', 'key'];

interface Changed {
  readonly place: string;
  readonly value: unknown;
}

/** The value with each text and number in it changed, one at a time, to another that may stand there. */
function changes(value: unknown, place: string): Changed[] {
  if (typeof value === 'number') return [{ place, value: value === 0 ? 1 : value / 2 }];
  if (typeof value === 'boolean') return [{ place, value: !value }];
  if (Array.isArray(value))
    return value.flatMap((item: unknown, at) =>
      changes(item, `${place}[${at}]`).map((each) => ({ ...each, value: value.with(at, each.value) })),
    );
  if (typeof value !== 'object' || value === null)
    return typeof value === 'string' ? [{ place, value: otherText(value) }] : [];
  return Object.entries(value).flatMap(([key, item]) =>
    silent.includes(key)
      ? []
      : changes(item, `${place}.${key}`).map((each) => ({ ...each, value: { ...value, [key]: each.value } })),
  );
}

/** Units, ways of soldBy and severities are words of a list; any other text takes two letters more. */
function otherText(text: string): string {
  const lists = [
    ['note', 'caution', 'stop'],
    ['free', 'fixed'],
    ['allowances', 'terms', 'comparison', 'day'],
    ['gal', 'lb', 'each'],
    ['ft', 'in'],
    ['ft2', 'in2'],
    ['%', 'h'],
    ['$', '$/h'],
    ['lb/gal', 'lb/ft2'],
    ['person', 'coat'],
    ['1', 'yr'],
  ];
  const list = lists.find((words) => words.includes(text));
  if (list === undefined) return `${text}qq`;
  return list[(list.indexOf(text) + 1) % list.length] ?? text;
}

describe('docs/method.md', () => {
  it('is what the templates give today: if not, run npm run method', () => {
    expect(shipped.faults).toEqual([]);
    // Compared as one truth, since the difference of two long pages is no message anybody reads.
    expect(readText('docs/method.md') === page, 'docs/method.md differs from the templates: run npm run method').toBe(
      true,
    );
  });

  it('names every line, column and table of every template, and holds every formula and condition', () => {
    const wanted = paths.flatMap((path) => textsUnder(JSON.parse(readText(path) ?? '')));
    expect(paths.length).toBeGreaterThanOrEqual(20);
    expect(wanted.length).toBeGreaterThan(1000);
    const missing = new Set(wanted.filter((text) => !page.includes(`\`${text.trim().replace(/\s+/g, ' ')}\``)));
    expect([...missing]).toEqual([]);
  });

  it('has each heading of a sheet once, and its list of sheets leads to them', () => {
    const headings = page.split('\n').filter((line) => /^## (Price list|Shop|Floor|Part|System): /.test(line));
    const links = page.match(/^- \[.*\]\(#.*\)$/gm) ?? [];
    expect(headings).toHaveLength(paths.length);
    expect(new Set(headings).size).toBe(headings.length);
    expect(links).toHaveLength(headings.length);
  });

  it('lays every table with as many cells in a row as in its head', () => {
    let width = 0;
    const uneven = page.split('\n').filter((line) => {
      const cells = line.startsWith('|') ? line.split(/(?<!\\)\|/).length : 0;
      const wrong = cells > 0 && width > 0 && cells !== width;
      width = cells;
      return wrong;
    });
    expect(page.split('\n').filter((line) => line.startsWith('| --- |')).length).toBeGreaterThan(100);
    expect(uneven).toEqual([]);
  });
});

/** Texts that the page has in code: names, formulas, conditions; those of tables, columns and lines, at any depth. */
function textsUnder(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap(textsUnder);
  return Object.entries(value).flatMap(([key, item]) => {
    if (key === 'asks' || key === 'needs') return [];
    const inCode = ['name', 'formula', 'check', 'first', 'when'].includes(key) && typeof item === 'string';
    return inCode ? [item] : textsUnder(item);
  });
}

describe('the page of a method', () => {
  const small = methodPage(libraryFrom(files));

  it('changes with every text and number of a template', () => {
    const changed = Object.entries(files).flatMap(([name, file]) =>
      changes(file, name).map(({ place, value }) => ({ place, templates: { ...files, [name]: value } })),
    );
    expect(changed.length).toBeGreaterThan(150);
    const unchanged = changed.filter(({ templates }) => methodPage(libraryFrom(templates)) === small);
    // A section's own id is for the file only.
    expect(unchanged.map(({ place }) => place).filter((place) => !/\.sections\[\d\]\.id$/.test(place))).toEqual([]);
  });

  it('is the same whatever the order in which the files come', () => {
    const turned = Object.fromEntries(Object.entries(files).reverse());
    expect(methodPage(libraryFrom(turned))).toBe(small);
  });

  it('shows an entry with its unit, range and limits, shares in percent', () => {
    expect(small).toContain('| floor_area | `floor_area` | 528 | ft² | 240 – 900 | 1 – 100000 |');
    expect(small).toContain('| share | `share` | 10 | % | 5 – 20, likely 10 | 0 – 100 |');
  });

  it('shows what a system sets and the rows it adds, in the unit that holds in the row', () => {
    expect(small).toContain('| `coats` | `coats.first_coat.share` | share of `first_coat` in coats | 30 | % |');
    expect(small).toContain('| Second coat `second_coat` | 7 ft | `length` |');
    expect(small).toContain('| First coat `first_coat` | `base_sand` | 3 ft² | `coat_count` |');
  });

  it('shows a check with what ought to hold, how grave it is and its words', () => {
    expect(small).toContain('| `floor_area > 0` |');
    expect(small).toContain('stop (no way round): Nothing is measured.');
  });

  it('puts parts in the order in which systems use them, one that a single system has where it stands there', () => {
    const part = (id: string): object => sheets.sheet('part', id, []);
    const uses = (id: string, ...parts: string[]): object =>
      sheets.sheet(
        'system',
        id,
        parts.map((use) => ({ use })),
      );
    const library = libraryFrom({
      ...Object.fromEntries(['coats', 'hours', 'money', 'barrier', 'unused'].map((id) => [id, part(id)])),
      a: uses('a', 'coats', 'money'),
      b: uses('b', 'coats', 'barrier', 'hours', 'money'),
    });
    const order = methodPage(library).match(/^## Part: .*$/gm);
    expect(order).toEqual(['coats', 'barrier', 'hours', 'money', 'unused'].map((id) => `## Part: ${id}`));
  });
});

describe('the sources of the templates', () => {
  it('are there for every entry and choice, each a known mark or a publication of the list', () => {
    expect(sourceFaults(shipped.library)).toEqual([]);
  });

  it('are looked for: an entry without one and one with unknown words are found', () => {
    const faultsWith = (more: object): string[] =>
      sourceFaults(libraryFrom({ floor: sheets.floor([{ ...sheets.entry('floor_area', 'ft2', 528), ...more }]) }));
    expect(faultsWith({ source })).toEqual([]);
    expect(faultsWith({ source: ' ' })).toEqual(['floor garage: floor_area has no source.']);
    expect(faultsWith({ source: 'Somebody 1999' })[0]).toContain('“Somebody 1999” is no known mark');
  });

  it('cite every publication of the list', () => {
    const uncited = publications.filter(
      (publication) => !page.includes(`| ${publication.replaceAll('*', '\\*')} | \``),
    );
    expect(publications.length).toBeGreaterThan(0);
    expect(uncited).toEqual([]);
  });

  it.each([
    ['common practice, no source; the data sheet of the clear says', 'common practice, no source'],
    ['a guess, no source; enter your own', 'a guess, no source'],
    ['NIST Handbook 44, Appendix C', 'a publication'],
    ['from memory: NIST Handbook 44, Appendix C', 'from memory'],
    ['the measure', 'measured, seen or decided for this job'],
  ])('“%s” counts as %s', (text, mark) => {
    expect(originOf(text)).toMatchObject({ mark });
  });
});
