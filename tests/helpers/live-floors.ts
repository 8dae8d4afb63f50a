import { productTable } from '../../src/formula/cells.ts';
import { enteredRefusal } from '../../src/quote/entered-refusal.ts';
import type { CompiledStack } from '../../src/template/compiled-stack.ts';
import type { ColumnFile, LineFile } from '../../src/template/line-schema.ts';
import { type OptionPlan, planOption } from '../../src/template/plan.ts';
import { cellIn, cellNamed } from './cell-named.ts';
import { entriesOf, type Given, givenRow, withFields } from './given-floor.ts';
import { LiveFloor } from './live-floor.ts';
import { shippedStack } from './shipped-stacks.ts';

/** A floor that was laid out before, and what is to be set on it to have the one that is asked for. */
export interface SetFloor {
  readonly floor: LiveFloor;
  readonly values: ReadonlyMap<number, number | string>;
}

/** The newest are kept; each holds some megabytes. */
const mostKept = 32;
const kept = new Map<string, LiveFloor>();

/** Lays out what is given, unless a floor is kept that differs from it in nothing but numbers and choices. */
export function setFloor(system: string, given: Given): SetFloor {
  const { stack, products } = shippedStack(system);
  withFields(products, given.products ?? {});
  const { laid, set, refused } = partsOf(stack, given);
  // Laying it out tells why.
  if (refused) return { floor: laidOut(system, given), values: new Map() };
  const key = JSON.stringify([system, laid], (name, value) => (name !== '' && typeof value === 'number' ? '#' : value));
  const floor = kept.get(key) ?? laidOut(system, laid);
  // Put last again, as the one used last.
  kept.delete(key);
  kept.set(key, floor);
  for (const oldest of kept.keys()) if (kept.size > mostKept) kept.delete(oldest);
  return { floor, values: valuesOf(floor.option, { ...given, set }) };
}

interface Parts {
  /** What decides which cells there are and what formulas stand in them; of its numbers nothing but that they are there. */
  readonly laid: Given;
  /** What is set in cells of the floor, laid out already or not. */
  readonly set: NonNullable<Given['set']>;
  readonly refused: boolean;
}

function partsOf(stack: CompiledStack, { set = {}, instead = {}, rows = {} }: Given): Parts {
  const [laidSet, cellSet]: [Record<string, number | string>, Record<string, number | string>] = [{}, {}];
  let refused = Object.values(instead).some((value) => !Number.isFinite(value));
  for (const [name, value] of Object.entries(set)) {
    const definition = definitionOf(stack, name);
    const standing = definition !== undefined && holds(definition, value) && !isUnitColumn(stack, name);
    // A row may have its own formula there, which another value takes the place of only when it is laid out.
    if (!standing || ('perRow' in definition && definition.perRow)) laidSet[name] = value;
    if (!standing) continue;
    cellSet[name] = value;
    refused ||= enteredRefusal(definition, value, []) !== undefined;
  }
  for (const [table, own] of Object.entries(rows))
    for (const cells of own)
      for (const [column, value] of Object.entries(cells)) {
        const definition = stack.tables.get(table)?.columns.get(column)?.definition;
        if (typeof value !== 'number' || definition?.kind !== 'entry') continue;
        refused ||= enteredRefusal(definition, value, []) !== undefined;
      }
  return { laid: { set: laidSet, instead, rows }, set: cellSet, refused };
}

function definitionOf(stack: CompiledStack, name: string): LineFile | ColumnFile | undefined {
  const [table = '', , column] = name.split('.');
  if (column === undefined) return stack.lines.get(name)?.definition;
  return stack.tables.get(table)?.columns.get(column)?.definition;
}

/** Whether a cell of this kind holds such a value as it is. */
function holds({ kind }: LineFile | ColumnFile, value: number | string): boolean {
  return typeof value === 'number' ? kind === 'entry' : kind === 'choice';
}

function isUnitColumn(stack: CompiledStack, name: string): boolean {
  const [table = '', , column] = name.split('.');
  return column !== undefined && stack.tables.get(table)?.unitColumn === column;
}

function laidOut(system: string, given: Given): LiveFloor {
  const { stack, products } = shippedStack(system);
  const option = planOption(stack, entriesOf(given), withFields(products, given.products ?? {}));
  if (option.faults.length > 0)
    throw new Error(option.faults.map(({ path, reason }) => `${path}: ${reason}`).join('\n'));
  return new LiveFloor(option);
}

/** By cell; a row's own number first, which what is set by name takes the place of. */
function valuesOf(
  option: OptionPlan,
  { set = {}, instead = {}, rows = {}, products = {} }: Given,
): Map<number, number | string> {
  const values = new Map<number, number | string>();
  for (const [table, own] of Object.entries(rows))
    for (const [at, cells] of own.entries())
      for (const [column, value] of Object.entries(cells)) {
        const cell = cellIn(option, table, givenRow(at), column);
        if (typeof value === 'number' && cell !== undefined) values.set(cell, value);
      }
  for (const [name, value] of Object.entries({ ...set, ...instead })) values.set(cellNamed(option, name), value);
  for (const [name, value] of Object.entries(products)) {
    const [product = '', field = ''] = name.split('.');
    // Products that the floor does not use have no cells.
    const cell = cellIn(option, productTable, product, field);
    if (cell !== undefined) values.set(cell, value);
  }
  return values;
}
