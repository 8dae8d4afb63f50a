import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/quote/edit.ts';
import type { SheetPlace } from '../../src/quote/quote-document.ts';
import { resultLines } from '../../src/template/result-lines.ts';
import type { Measures } from '../../src/units/measures.ts';
import { compareView } from '../../src/views/compare/compare-view.ts';
import { editOf } from '../../src/views/costing/costing-edits.ts';
import { type WhyView, whyView } from '../../src/views/costing/explanation/why-view.ts';
import { boardView } from '../../src/views/costing/results/board-view.ts';
import { refusalWords } from '../../src/views/parts/refusal-words.ts';
import type { ShownField } from '../../src/views/parts/shown-field.ts';
import { readEntry } from '../../src/views/parts/typed-entry.ts';
import { priceView } from '../../src/views/price/price-view.ts';
import { flake, type OpenQuote, openQuote, solid } from '../helpers/demo-quote.ts';
import { type ShownSheet, shownSheet } from '../helpers/shown-sheet.ts';
import { usUnitsIn } from '../helpers/us-units.ts';

const floor: SheetPlace = { kind: 'floor' };
const places: readonly SheetPlace[] = [floor, { kind: 'shop' }, { kind: 'option', option: flake }];

function resultsOf({ session }: OpenQuote, option = flake) {
  const results = session.results(option);
  if (results === undefined) throw new Error(`The quote has no results of ${option}`);
  return results;
}

function optionsOf(opened: OpenQuote) {
  return [flake, solid].map((id) => ({ id, title: id, results: resultsOf(opened, id) }));
}

function sheetOf(opened: OpenQuote, place: SheetPlace, measures: Measures): ShownSheet {
  return shownSheet({ quote: opened.session.quote, place, results: resultsOf(opened), priceList: new Map(), measures });
}

/** Every value of a sheet, of its lines and of its tables. */
function fieldsOf({ sections }: ShownSheet): readonly ShownField[] {
  return sections.flatMap(({ lines, tables }) => [
    ...lines,
    ...tables.flatMap(({ rows }) => rows.flatMap(({ fields }) => fields)),
  ]);
}

/** What a field says in numbers and units; its source, and the names that choices have, are the template's words. */
function numbersOf({
  kind,
  name,
  label,
  shown,
  suffix,
  typed,
  standard,
  worked,
  range,
  limits,
}: ShownField): readonly string[] {
  return kind === 'choice' || name === 'product'
    ? [label]
    : [label, shown, suffix, typed, standard, worked, range, limits];
}

function whysOf(opened: OpenQuote, measures: Measures): readonly WhyView[] {
  const results = resultsOf(opened);
  return results.option.plan.cells.flatMap((_, cell) => whyView(results, cell, measures) ?? []);
}

/** A cell's column; the name of its row may be that of a product, such as an edge strip of 8 ft. */
function columnOf(title: string): string {
  return title.split(' › ').at(-1) ?? '';
}

function enter(opened: OpenQuote, line: string, text: string, measures: Measures): Edit {
  const results = resultsOf(opened);
  const type = results.stack.lines.get(line)?.type;
  if (type?.kind !== 'number') throw new Error(`${line} is no number`);
  const read = readEntry(text, type.unit, measures);
  if (read.kind === 'fault') throw new Error(read.reason);
  const place = { sheet: floor, results, priceList: opened.priceList };
  return editOf('line-entered', { line, ...read.detail }, place).edit;
}

function moneyOf(opened: OpenQuote): readonly unknown[] {
  const { option, read } = resultsOf(opened);
  return resultLines.map((line) => read(option.plan.lines.get(line) ?? -1));
}

describe('in metric no US unit is left', () => {
  it('in any field of floor, shop and system', async () => {
    const opened = await openQuote();
    for (const place of places) {
      const fields = fieldsOf(sheetOf(opened, place, 'metric'));
      expect(fields.length).toBeGreaterThan(20);
      expect(fields.flatMap((field) => numbersOf(field).flatMap((text) => usUnitsIn(text)))).toEqual([]);
    }
  });

  it('in any explanation: titles, values, numbers, steps, what is read and fed', async () => {
    const opened = await openQuote();
    const whys = whysOf(opened, 'metric');
    expect(whys.length).toBeGreaterThan(500);
    const left = whys.flatMap(({ title, value, trouble, numbers, steps, readsFrom, feeds }) =>
      [
        columnOf(title),
        value,
        trouble,
        numbers,
        ...steps.flatMap(({ text, gives }) => [text, gives]),
        ...[...readsFrom, ...feeds].flatMap(({ name, value: near }) => [columnOf(name), near]),
      ].flatMap((text) => usUnitsIn(text)),
    );
    expect([...new Set(left)]).toEqual([]);
  });

  it('on Price, Side by side and the results of Costing', async () => {
    const opened = await openQuote();
    const options = optionsOf(opened);
    const faces = [
      priceView(opened.session.quote, options, 'metric'),
      compareView(options, true, 'metric'),
      boardView(options, undefined, 'metric'),
    ];
    const texts = faces.flatMap((face) => textsIn(face));
    expect(texts.length).toBeGreaterThan(200);
    expect(texts.flatMap((text) => usUnitsIn(text))).toEqual([]);
  });

  it('though the same scan finds them in US measures', async () => {
    const opened = await openQuote();
    const found = fieldsOf(sheetOf(opened, floor, 'us')).flatMap((field) => numbersOf(field).flatMap(usUnitsIn));
    expect(found.length).toBeGreaterThan(20);
  });
});

/** Every text that a face is drawn from, but the template's own questions. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap((member: unknown) => textsIn(member));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, member]: [string, unknown]) =>
    ['ask', 'unit', 'source', 'options', 'name', 'line'].includes(key) ? [] : textsIn(member),
  );
}

describe('an explanation in metric', () => {
  it('has the formula in the same names, and no other value than in US measures', async () => {
    const opened = await openQuote();
    const [us, metric] = [whysOf(opened, 'us'), whysOf(opened, 'metric')];
    expect(metric.map(({ names }) => names)).toEqual(us.map(({ names }) => names));
    expect(metric.map(({ steps }) => steps.length)).toEqual(us.map(({ steps }) => steps.length));
  });
});

describe('a crack length typed in metric', () => {
  it('of 6.096 m gives the same quote to the cent as 20 ft, and stands in its field as 6.096', async () => {
    const [inFeet, inMetres] = [await openQuote(), await openQuote()];
    expect(inFeet.session.dispatch(enter(inFeet, 'crack_length', '20', 'us')).kind).toBe('done');
    expect(inMetres.session.dispatch(enter(inMetres, 'crack_length', '6.096', 'metric')).kind).toBe('done');
    expect(moneyOf(inMetres)).toEqual(moneyOf(inFeet));
    const field = fieldsOf(sheetOf(inMetres, floor, 'metric')).find(({ name }) => name === 'crack_length');
    expect(field).toMatchObject({ typed: '6.096', shown: '6.1', suffix: 'm' });
  });

  it('of 20 ft stands as 6.1 m, where nobody typed it in metric', async () => {
    const opened = await openQuote();
    expect(opened.session.dispatch(enter(opened, 'crack_length', '20', 'us')).kind).toBe('done');
    const field = fieldsOf(sheetOf(opened, floor, 'metric')).find(({ name }) => name === 'crack_length');
    expect(field).toMatchObject({ typed: '6.1', shown: '6.1', suffix: 'm' });
  });

  it('changes no price by being looked at: results, document and log are those of US measures', async () => {
    const opened = await openQuote();
    const [money, quote] = [moneyOf(opened), opened.session.quote];
    for (const place of places) sheetOf(opened, place, 'metric');
    whysOf(opened, 'metric');
    expect(moneyOf(opened)).toEqual(money);
    expect(opened.session.quote).toBe(quote);
    expect(opened.session.log).toEqual([]);
  });

  it('beyond its limits is refused in metres', async () => {
    const opened = await openQuote();
    const edit = enter(opened, 'crack_length', '-1', 'metric');
    const refused = opened.session.dispatch(edit);
    if (refused.kind !== 'refused') throw new Error('It was taken');
    const words = refusalWords(edit, refused.reason, resultsOf(opened), 'metric');
    expect(words).toContain('−1 m does not');
    expect(usUnitsIn(words)).toEqual([]);
  });

  it('beyond its limits is refused in feet, grouped and with a true minus', async () => {
    const opened = await openQuote();
    const edit = enter(opened, 'crack_length', '-5', 'us');
    const refused = opened.session.dispatch(edit);
    if (refused.kind !== 'refused') throw new Error('It was taken');
    const words = refusalWords(edit, refused.reason, resultsOf(opened), 'us');
    expect(words).toMatch(/must lie between 0 and [\d,]+,000 ft; −5 ft does not\.$/);
  });
});

describe('A share beyond its limits', () => {
  const beyond = async (value: number, measures: Measures) => {
    const opened = await openQuote();
    const edit: Edit = { kind: 'enterLine', sheet: { kind: 'shop' }, line: 'target_margin', value };
    const refused = opened.session.dispatch(edit);
    if (refused.kind !== 'refused') throw new Error('It was taken');
    return refusalWords(edit, refused.reason, resultsOf(opened), measures);
  };

  it.each(['us', 'metric'] as const)('is refused in percent, as its field shows it: %s', async (measures) => {
    expect(await beyond(20, measures)).toContain('must lie between 0 and 95 %; 2,000 % does not.');
  });

  it('does not read as the limit when it is just beyond it', async () => {
    expect(await beyond(0.950001, 'us')).toContain('and 95 %; 95.0001 % does not.');
  });
});

/** Units with the decimals that a field's number may have, unless it is too small for two digits. */
const decimals: readonly (readonly [suffix: string, most: number])[] = [
  ['m', 2],
  ['m²', 2],
  ['mm', 0],
  ['km', 1],
  ['MPa', 2],
];

describe('the fields of the sheets in metric', () => {
  it('have no more decimals than people write', async () => {
    const opened = await openQuote();
    const fields = places
      .flatMap((place) => fieldsOf(sheetOf(opened, place, 'metric')))
      .flatMap(({ typed, suffix }) => decimals.filter(([one]) => one === suffix).map(([, most]) => ({ typed, most })));
    expect(fields.length).toBeGreaterThan(20);
    const longer = fields.filter(({ typed, most }) => {
      const [whole = '', fraction = ''] = typed.split('.');
      return fraction.length > most && `${whole}${fraction}`.replace(/^[0-]+/, '').length > 2;
    });
    expect(longer).toEqual([]);
  });
});

describe('Price in metric', () => {
  it('shows sizes worked out from their rows: 20 × 20 ft is 6.1 × 6.1 m', async () => {
    const opened = await openQuote();
    const view = priceView(opened.session.quote, optionsOf(opened), 'metric');
    const sizes = view.sizes.find(({ ask }) => ask.kind === 'sizes')?.answers ?? [];
    expect(sizes).toContainEqual({ words: 'Two-car 6.1 × 6.1', unit: 'm' });
    expect(sizes.filter(({ unit }) => unit !== 'm')).toEqual([]);
  });

  it('prices by the square metre, at 10.7639 times the price of a square foot', async () => {
    const opened = await openQuote();
    const perFoot = resultsOf(opened).read(resultsOf(opened).option.plan.lines.get('price_per_sqft') ?? -1);
    const { groups } = boardView(optionsOf(opened), undefined, 'metric');
    const row = groups.flatMap(({ rows }) => rows).find(({ line }) => line === 'price_per_sqft');
    if (row === undefined) throw new Error('There is no price by the area');
    expect(row.label).toBe('Price a square metre');
    const shown = Number(row.values[0]?.shown.replace('$', ''));
    expect(shown).toBeCloseTo(Number(perFoot) * 10.7639104, 2);
  });
});
