import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import { evaluatorOf, type OptionResults, writtenLine } from '../../../quote/option-results.ts';
import {
  entriesAt,
  layerOf,
  nothingEntered,
  type QuoteDocument,
  type SheetPlace,
} from '../../../quote/quote-document.ts';
import { filledLine } from '../../../quote/said-texts.ts';
import type { ComposedSection } from '../../../template/composed-sheet.ts';
import type { ProductRow } from '../../../template/entries.ts';
import type { LineFile } from '../../../template/line-schema.ts';
import type { Measures } from '../../../units/measures.ts';
import { type ProductNames, type ShownField, shownField } from '../../parts/shown-field.ts';
import { plainStandard, type SheetInView, type ShownInstead } from './sheet-in-view.ts';
import { type ShownTable, shownTable } from './shown-table.ts';

/** A section of a sheet as a screen shows it. */
export interface ShownSection {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly lines: readonly ShownField[];
  readonly tables: readonly ShownTable[];
  /** Names of the lines at which our standard stands and nobody has looked. */
  readonly unchecked: readonly string[];
}

/** What a sheet is shown from. */
export interface ShownFrom {
  readonly quote: QuoteDocument;
  readonly place: SheetPlace;
  readonly results: OptionResults;
  /** Every product that may be chosen; those of the quote go before. */
  readonly priceList: ReadonlyMap<string, ProductRow>;
  readonly measures: Measures;
}

const keptSections = new KeptByCells<ShownSection>();
const keptLines = new KeptByCells<ShownField | undefined>();
const keptNames = new KeptByCells<ProductNames>();

/** The sheet at a place with the numbers of one option; its sections are made when they are drawn. */
export function sheetInView({ quote, place, results, priceList, measures }: ShownFrom): SheetInView {
  const layer = layerOf(place);
  const { title = '', sections = [] } = results.stack.sheets.find((sheet) => sheet.layer === layer) ?? {};
  const entries = entriesAt(quote, place) ?? nothingEntered;
  const products = productNames(results, priceList, quote.products);
  return { layer, title, sections, results, evaluate: evaluatorOf(results), products, measures, entries };
}

export function shownSection(section: ComposedSection, sheet: SheetInView): ShownSection {
  const { layer, results, entries, products, measures } = sheet;
  return keptSections.of(results, `${layer} ${section.id}`, [entries, products, measures], () => {
    const { id, title, note = '' } = section;
    const lines = section.lines.flatMap(({ line }) => shownLine(line.name, sheet) ?? []);
    const tables = section.tables.flatMap(({ table }) => shownTable(table.name, sheet) ?? []);
    const unchecked = lines.filter(isUnchecked).map(({ name }) => name);
    return { id, title, note, lines, tables, unchecked };
  });
}

function shownLine(name: string, sheet: SheetInView): ShownField | undefined {
  const { results, products, measures, entries } = sheet;
  return keptLines.of(results, name, [entries.lines[name], products, measures], () => lineOf(name, sheet));
}

function lineOf(name: string, sheet: SheetInView): ShownField | undefined {
  const { results, evaluate } = sheet;
  const line = results.stack.lines.get(name);
  if (line === undefined || line.definition.kind === 'check') return undefined;
  const { definition, type, tree } = line;
  const place = { kind: 'line', name } as const;
  // A text is told only while its condition holds: an unmet “Go” must not stand on the sheet.
  if (definition.kind === 'text' && tree !== undefined && evaluate(tree, place) !== true) return undefined;
  const stored = sheet.entries.lines[name];
  const cell = results.option.plan.lines.get(name);
  const shown = shownField({
    definition,
    type,
    cell,
    stored,
    value: cell === undefined ? undefined : results.read(cell),
    standard:
      definition.kind === 'words'
        ? definition.words
        : plainStandard('value' in definition ? definition.value : undefined),
    ownFormula: false,
    worked:
      definition.kind === 'formula' && stored !== undefined && tree !== undefined ? evaluate(tree, place) : undefined,
    productNames: sheet.products,
    measures: sheet.measures,
  });
  return { ...shown, ...told(definition, sheet) };
}

/** Of what has no cell: a text with its holes filled, or what a person wrote. */
function told({ kind, name }: LineFile, { results, evaluate, measures }: SheetInView): ShownInstead {
  if (kind === 'text') return { shown: filledLine(results, name, evaluate, measures) };
  if (kind !== 'words') return {};
  const words = writtenLine(results, name);
  return { shown: words, typed: words };
}

function productNames(
  results: OptionResults,
  priceList: ReadonlyMap<string, ProductRow>,
  pinned: readonly ProductRow[],
): ProductNames {
  return keptNames.of(results, 'products', [priceList, pinned], () => {
    const all = [...priceList.values(), ...pinned];
    return new Map(all.map(({ product, name, kind }) => [product, { code: product, label: name, kind }]));
  });
}

/** What nobody has written needs no looking at. */
function isUnchecked({ kind, standing }: ShownField): boolean {
  return standing === 'unchecked' && (kind === 'number' || kind === 'yesNo' || kind === 'choice');
}
