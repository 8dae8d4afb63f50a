import type { CellValue } from '../../formula/cells.ts';
import { KeptByCells } from '../../quote/kept-by-cells.ts';
import { cellOfLine, lineValue, type OptionResults } from '../../quote/option-results.ts';
import { priceWalk } from '../../quote/price-walk.ts';
import { saidTexts, togetherByLabel } from '../../quote/said-texts.ts';
import { type ResultLine, resultsIn } from '../../template/result-lines.ts';
import type { SectionUse } from '../../template/sheet-schema.ts';
import { formatQuantity, isMoney, isShare } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { one, type Unit } from '../../units/unit.ts';
import { heldBack } from '../parts/checks/held-price.ts';
import { saidInDays } from '../parts/day-promise.ts';
import { lineLabel, saidAs, wholeDollars } from '../parts/line-words.ts';
import type { NamedResults } from '../parts/named-results.ts';
import type { CompareCell, CompareRow } from './compare-row.ts';
import { type CostBar, costBars } from './cost-bars.ts';
import { dayRows } from './day-rows.ts';

/** Options in columns, the reference first. */
export interface CompareView {
  readonly options: readonly { readonly id: string; readonly title: string }[];
  readonly groups: readonly CompareGroup[];
  /** Owner's side; empty for a customer. */
  readonly bars: readonly CostBar[];
  readonly barsTitle: string;
  readonly walks: readonly WalkView[];
}

export interface CompareGroup {
  readonly title: string;
  readonly rows: readonly CompareRow[];
}

export interface WalkView {
  readonly from: string;
  readonly to: string;
  readonly steps: readonly { readonly words: string; readonly amount: string }[];
}

/** `owner` adds margins, costs and hours; without it nothing is built that a customer may not see. */
export function compareView(options: readonly NamedResults[], owner: boolean, measures: Measures): CompareView {
  const [reference, ...others] = options;
  const barsTitle = `What a square ${measures === 'us' ? 'foot' : 'metre'} pays for`;
  if (reference === undefined) return { options: [], groups: [], bars: [], barsTitle, walks: [] };
  const groups = [...customerGroups(options, measures), ...(owner ? ownerGroups(options, measures) : [])];
  const titles = options.map(({ title }) => title);
  return {
    options: options.map(({ id, title }) => ({ id, title })),
    groups: groups.filter(({ rows }) => rows.length > 0),
    bars: owner ? keptBars.ofAll(resultsOf(options), measures, titles, () => costBars(options, measures)) : [],
    barsTitle,
    walks: owner ? others.map((other) => walkTo(other, reference, measures)) : [],
  };
}

const keptBars = new KeptByCells<readonly CostBar[]>();
const keptGroups = new KeptByCells<CompareGroup>();
const keptRows = new KeptByCells<CompareRow | undefined>();
const keptWalks = new KeptByCells<WalkView>();

function resultsOf(options: readonly NamedResults[]): readonly OptionResults[] {
  return options.map(({ results }) => results);
}

function walkTo(to: NamedResults, from: NamedResults, measures: Measures): WalkView {
  const both = [from, to];
  return keptWalks.ofAll(resultsOf(both), measures, [from.title, to.title], () => walkView(from, to, measures));
}

/** A group of what is told of the options in their order. */
function group(
  title: string,
  options: readonly NamedResults[],
  measures: Measures,
  rows: () => readonly CompareRow[],
): CompareGroup {
  const held = options.map(({ results }) => heldBack(results, measures));
  return keptGroups.ofAll(resultsOf(options), title, [measures, ...held], () => ({ title, rows: rows() }));
}

function customerGroups(options: readonly NamedResults[], measures: Measures): CompareGroup[] {
  const said = (use: SectionUse, lead: string): CompareRow[] => {
    const told = dayRows(options) !== undefined;
    return saidRows(options, use, lead, measures).filter(({ name }) => !(told && saidInDays.includes(name)));
  };
  return [
    group('Price', options, measures, () => [
      moneyRow('price', options, measures),
      ...heldRows(options, measures),
      ...said('allowances', 'Included: '),
      ...said('terms', ''),
    ]),
    group('Days', options, measures, () => dayRows(options) ?? numberRows(['visits'], options, measures)),
    group('Look, use and care', options, measures, () => said('comparison', '')),
  ];
}

const owned: readonly { readonly title: string; readonly lines: readonly ResultLine[] }[] = [
  { title: 'Profit', lines: resultsIn('profit') },
  { title: 'Crew time', lines: resultsIn('crew time').toReversed() },
  { title: 'Cost', lines: resultsIn('job cost', 'overhead') },
];

function ownerGroups(options: readonly NamedResults[], measures: Measures): CompareGroup[] {
  const groups = owned.map(({ title, lines }) =>
    group(title, options, measures, () => numberRows(lines, options, measures)),
  );
  return [...groups, group('To buy', options, measures, () => kitRows(options))];
}

function numberRows(
  lines: readonly ResultLine[],
  options: readonly NamedResults[],
  measures: Measures,
): readonly CompareRow[] {
  return lines.flatMap(
    (line) => keptRows.ofAll(resultsOf(options), line, [measures], () => numberRow(line, options, measures)) ?? [],
  );
}

function moneyRow(name: ResultLine, options: readonly NamedResults[], measures: Measures): CompareRow {
  const values = options.map(({ results }) => lineValue(results, name));
  const text = (value: CellValue): string => (typeof value === 'number' ? wholeDollars(value) : 'incomplete');
  return row(
    name,
    labelOf(name, options, measures),
    values,
    text,
    (more) => `${wholeDollars(Math.abs(more))} ${more > 0 ? 'more' : 'less'}`,
  );
}

function numberRow(name: string, options: readonly NamedResults[], measures: Measures): CompareRow | undefined {
  if (options.some(({ results }) => cellOfLine(results, name) === undefined)) return undefined;
  const unit = unitOf(name, options[0]?.results);
  const values = options.map(({ results }) => lineValue(results, name));
  const text = (value: CellValue): string =>
    typeof value === 'number' ? formatQuantity(value, unit, saidAs(unit, measures)) : 'incomplete';
  return row(name, labelOf(name, options, measures), values, text, (more) => apart(more, unit, measures));
}

/** A difference in words: hours to a tenth, shares in points. */
function apart(more: number, unit: Unit, measures: Measures): string {
  const way = more > 0 ? 'more' : 'less';
  if (isShare(unit)) return `${pointsApart(Math.abs(more) * 100)} points ${way}`;
  return `${formatQuantity(Math.abs(more), unit, isMoney(unit) ? { measures } : { digits: 1, measures })} ${way}`;
}

function pointsApart(points: number): string {
  return points < 0.1 ? 'under 0.1' : formatQuantity(points, one, { digits: 1 });
}

function row(
  name: string,
  label: string,
  values: readonly CellValue[],
  text: (value: CellValue) => string,
  inWords: (more: number) => string,
): CompareRow {
  const [reference] = values;
  const cells = values.map((value, at): CompareCell => {
    const more = typeof value === 'number' && typeof reference === 'number' ? value - reference : 0;
    return { text: text(value), difference: at === 0 || more === 0 ? '' : inWords(more) };
  });
  return { name, label, cells, differs: cells.some((cell) => cell.text !== cells[0]?.text) };
}

/** Says of which option the price is not to be given yet, and why, as the Price face does. */
function heldRows(options: readonly NamedResults[], measures: Measures): CompareRow[] {
  const held = options.map(({ results }) => heldBack(results, measures).join(' '));
  if (held.every((words) => words === '')) return [];
  const cells = held.map((words): CompareCell => ({ text: words === '' ? '–' : words, difference: '' }));
  return [{ name: 'held', label: 'Not to be given yet', cells, differs: true }];
}

/**
 * The customer's rows: a row for each label that any option says, in the order of the first that says it, so that what one
 * option skims and another coats over stands side by side.
 */
function saidRows(options: readonly NamedResults[], use: SectionUse, lead: string, measures: Measures): CompareRow[] {
  const said = options.map(
    ({ results }) => new Map(togetherByLabel(saidTexts(results, use, measures)).map((text) => [text.label, text])),
  );
  const labels = [...new Set(said.flatMap((texts) => [...texts.keys()]))];
  return labels.map((label) => {
    const name = said.flatMap((texts) => texts.get(label)?.name ?? [])[0] ?? label;
    const cells = said.map((texts): CompareCell => ({ text: texts.get(label)?.text ?? '–', difference: '' }));
    return {
      name,
      label: `${lead}${lead === '' ? label : label.toLowerCase()}`,
      cells,
      differs: cells.some((cell) => cell.text !== cells[0]?.text),
    };
  });
}

/** Packs of every product of any option. */
function kitRows(options: readonly NamedResults[]): CompareRow[] {
  const bought = options.map(({ results }) => packsOf(results));
  const products = [...new Set(bought.flatMap((packs) => [...packs.keys()]))];
  return products.map((product) => {
    const label = bought.flatMap((packs) => packs.get(product)?.label ?? [])[0] ?? product;
    const cells = bought.map((packs): CompareCell => ({ text: packs.get(product)?.words ?? '–', difference: '' }));
    return { name: product, label, cells, differs: cells.some((cell) => cell.text !== cells[0]?.text) };
  });
}

function packsOf({ option, read }: OptionResults): Map<string, { label: string; words: string }> {
  const packs = new Map<string, { label: string; words: string }>();
  for (const [table, { columns }] of option.plan.tables) {
    const [small, large] = [columns.get('packs'), columns.get('large_packs')];
    if (small === undefined || large === undefined) continue;
    (option.rows.get(table) ?? []).forEach(({ id, label }, at) => {
      const count = (cells: readonly number[]): number => Number(read(cells[at] ?? -1));
      const [smalls, larges] = [count(small), count(large)];
      const words = [larges > 0 ? `${larges} large` : '', smalls > 0 ? `${smalls}` : '']
        .filter((text) => text !== '')
        .join(' + ');
      if (words !== '') packs.set(id, { label, words: `${words} ${smalls + larges === 1 ? 'pack' : 'packs'}` });
    });
  }
  return packs;
}

function walkView(from: NamedResults, to: NamedResults, measures: Measures): WalkView {
  const walk = priceWalk(from.results, to.results);
  const head = { from: from.title, to: to.title };
  if (walk.kind === 'incomplete')
    return { ...head, steps: [{ words: 'One of the prices cannot be worked out', amount: '' }] };
  const steps = walk.steps.map(({ cost, delta, because }) => {
    const words = cost === 'rest' ? 'Discount, minimum and rounding' : labelOf(cost, [from], measures);
    const reason = because === undefined ? '' : `: ${moreWords(because, from.results, measures)}`;
    return { words: words + reason, amount: signedDollars(delta) };
  });
  const ends = (title: string, price: number) => ({ words: title, amount: wholeDollars(price) });
  return { ...head, steps: [ends(from.title, walk.from), ...steps, ends(to.title, walk.to)] };
}

function moreWords(
  { line, more }: { readonly line: string; readonly more: number },
  results: OptionResults,
  measures: Measures,
): string {
  return `${lineLabel(results, line, measures).toLowerCase()} ${apart(more, unitOf(line, results), measures)}`;
}

function signedDollars(amount: number): string {
  return `${amount < 0 ? '−' : '+'}${wholeDollars(Math.abs(amount))}`;
}

function labelOf(name: string, [first]: readonly NamedResults[], measures: Measures): string {
  return first === undefined ? name : lineLabel(first.results, name, measures);
}

function unitOf(name: string, results: OptionResults | undefined): Unit {
  const type = results?.stack.lines.get(name)?.type;
  return type?.kind === 'number' ? type.unit : one;
}
