import { placeText } from '../../src/formula/cell-name.ts';
import type { CellValue } from '../../src/formula/cells.ts';
import { type Closures, closuresOf } from '../../src/formula/closures.ts';
import { compileStack } from '../../src/template/compile.ts';
import type { CompiledStack } from '../../src/template/compiled-stack.ts';
import { composeSheet } from '../../src/template/compose.ts';
import { noEntries, type ProductRow, type StackEntries } from '../../src/template/entries.ts';
import { type OptionPlan, planOption } from '../../src/template/plan.ts';
import { readSheet } from '../../src/template/read-sheet.ts';
import { resultLines, resultUnit } from '../../src/template/result-lines.ts';
import type { Layer, SheetFile } from '../../src/template/sheet-schema.ts';

// Small sheets as they stand in files. Every builder takes `more` for what the test is about.
type Json = Readonly<Record<string, unknown>>;

const source = 'made up for this test';

export const entry = (name: string, unit: string, value: number | string, more: Json = {}) => ({
  name,
  label: name,
  unit,
  value,
  source,
  ...more,
});
export const formula = (name: string, unit: string, text: string, more: Json = {}) => ({
  name,
  label: name,
  unit,
  formula: text,
  ...more,
});
export const codeFormula = (name: string, text: string, more: Json = {}) => ({
  name,
  label: name,
  code: true,
  formula: text,
  ...more,
});
export const choice = (name: string, codes: readonly string[], value: string) => ({
  ...choiceParts(name, codes),
  value,
});
export const productLine = (name: string, accepts: readonly string[], value: string) => ({
  name,
  label: name,
  accepts,
  value,
  source,
});
export const text = (name: string, words: string) => ({ name, label: name, text: words });
export const check = (name: string, condition: string, more: Json = {}) => ({
  name,
  label: name,
  check: condition,
  severity: 'caution',
  say: 'It does not hold.',
  ...more,
});

export const key = (name: string) => ({ name, label: name, key: true });
export const entryColumn = (name: string, unit: string, standard: number, more: Json = {}) => ({
  name,
  label: name,
  unit,
  default: standard,
  source,
  ...more,
});
export const choiceColumn = (name: string, codes: readonly string[], standard: string) => ({
  ...choiceParts(name, codes),
  default: standard,
});
export const productColumn = (name: string, accepts: readonly string[], standard: string) => ({
  name,
  label: name,
  accepts,
  default: standard,
  source,
});

function choiceParts(name: string, codes: readonly string[]) {
  return { name, label: name, options: codes.map((code) => ({ code, label: code })), source };
}

export const table = (name: string, columns: readonly Json[], start: readonly Json[] = [], more: Json = {}) => ({
  name,
  title: name,
  rows: 'free',
  columns,
  start,
  ...more,
});
export const gathered = (name: string, gather: readonly string[], columns: readonly Json[]) => ({
  name,
  title: name,
  gather,
  columns: [key('product'), ...columns],
});
export const section = (id: string, lines: readonly Json[] = [], tables: readonly Json[] = []) => ({
  id,
  title: id,
  lines,
  tables,
});
export const sheet = (layer: Layer, id: string, sections: readonly Json[], more: Json = {}) => ({
  format: 'spreadrate.sheet',
  version: 1,
  layer,
  id,
  title: id,
  sections,
  ...more,
});
export const floor = (lines: readonly Json[], tables: readonly Json[] = []) =>
  sheet('floor', 'garage', [section('measure', lines, tables)]);

/** A system of these sections, with every result line 0. */
export const system = (sections: readonly Json[], without: readonly string[] = []) => {
  const results = resultLines.filter((name) => !without.includes(name));
  const lines = results.map((name) => formula(name, resultUnit(name), '0', { result: true }));
  return sheet('system', 'rolled', [...sections, section('results', lines)]);
};

/** Kinds and fields of four products: two bases, a clear coat without a density, a flake. */
export const priceList = sheet(
  'pricelist',
  'list',
  [
    section(
      'products',
      [],
      [
        table('products', [
          key('product'),
          { name: 'solids', label: 'Solids', unit: '%', kinds: ['base', 'clear'], source },
          { name: 'density', label: 'Density', unit: 'lb/gal', kinds: ['base'], source },
          { name: 'pack_price', label: 'Pack price', unit: '$', source },
          { ...choiceParts('gloss', ['matt', 'shiny']), kinds: ['clear'] },
        ]),
      ],
    ),
  ],
  {
    kinds: [
      { kind: 'base', label: 'Base', soldBy: 'gal' },
      { kind: 'clear', label: 'Clear', soldBy: 'gal' },
      { kind: 'flake', label: 'Flake', soldBy: 'lb' },
    ],
  },
);

const product = (code: string, kind: string, fields: ProductRow['fields']): readonly [string, ProductRow] => [
  code,
  { product: code, kind, name: code, fields },
];
const products: ReadonlyMap<string, ProductRow> = new Map([
  product('base_slate', 'base', { solids: 0.97, density: 11, pack_price: 135 }),
  product('base_sand', 'base', { solids: 0.9, density: 12, pack_price: 140 }),
  product('clear_satin', 'clear', { solids: 0.85, pack_price: 66, gloss: 'matt' }),
  product('flake_granite', 'flake', { pack_price: 78 }),
]);

export interface Laid {
  /** Every fault as `path: reason`, of reading, composing, compiling and, when those are well, of the plan. */
  readonly faults: readonly string[];
  readonly stack: CompiledStack;
  readonly plan: OptionPlan;
  value(line: string): CellValue | undefined;
  column(table: string, column: string): readonly CellValue[];
}

/** Reads, composes, compiles, plans and works out sheets, lowest first; parts are those that systems use. */
export function laid(
  sheets: readonly object[],
  parts: readonly object[] = [],
  entries: StackEntries = noEntries,
): Laid {
  const read = [...parts, ...sheets].map((file) => readSheet(JSON.stringify(file)));
  const files = read.flatMap(({ sheet: file }) => file ?? []);
  const partFiles = new Map<string, SheetFile>(files.slice(0, parts.length).map((file) => [file.id, file]));
  const composed = files.slice(parts.length).map((file) => composeSheet(file, partFiles));
  const compiled = compileStack(composed.map((each) => each.sheet));
  const told = [...read.flatMap((each) => each.faults), ...composed.flatMap((each) => each.faults), ...compiled.faults];
  // What has faults, or is a part alone, is not laid out.
  const bare = told.length > 0 || composed.some((each) => each.sheet.layer === 'part');
  const plan = planOption(bare ? compileStack([]).stack : compiled.stack, entries, products);
  const faults = (told.length > 0 ? told : plan.faults).map(({ path, reason }) => `${path}: ${reason}`);
  let closures: Closures | undefined;
  const value = (cell: number | undefined): CellValue => {
    closures ??= closuresOf(plan.plan, plan.graph);
    return closures.value(cell ?? -1);
  };
  return {
    faults,
    stack: compiled.stack,
    plan,
    value: (line) => value(plan.plan.lines.get(line)),
    column: (name, column) => (plan.plan.tables.get(name)?.columns.get(column) ?? []).map(value),
  };
}

/** A value in words: a failed one as `division at coats.rate row 2`. */
export function spoken(value: CellValue | undefined, { plan }: Laid): number | string | boolean | undefined {
  return typeof value === 'object' ? `${value.kind} at ${placeText(plan.plan.cells[value.origin]?.place)}` : value;
}
