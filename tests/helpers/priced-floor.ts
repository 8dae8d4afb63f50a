import type { CellValue } from '../../src/formula/cells.ts';
import { MovingCells } from '../../src/quote/kept-by-cells.ts';
import { saidTexts } from '../../src/quote/said-texts.ts';
import { type ToldCheck, toldChecks } from '../../src/quote/told-checks.ts';
import type { OptionPlan } from '../../src/template/plan.ts';
import { cellNamed, missing } from './cell-named.ts';
import type { Given } from './given-floor.ts';
import { type SetFloor, setFloor } from './live-floors.ts';
import { shippedStack } from './shipped-stacks.ts';

/** A floor worked out: what its lines and cells read. */
export interface PricedFloor {
  value(name: string): CellValue;
  /** By its number in the plan. */
  read(cell: number): CellValue;
  /** A number; throws for a failed one. */
  number(name: string): number;
  check(name: string): ToldCheck;
  /** What the customer, or on the day the crew, is told in a line; undefined while it is not told. */
  said(name: string): string | undefined;
  readonly option: OptionPlan;
}

/** The newest are kept, as many tests ask for the same floor. */
const mostKept = 64;
const keptFloors = new Map<string, PricedFloor>();

/** Prices by both evaluators, which must agree in every cell. */
export function priced(system: string, given: Given = {}): PricedFloor {
  const asked = JSON.stringify([system, given]);
  const floor = keptFloors.get(asked) ?? pricedByBoth(system, given);
  keptFloors.set(asked, floor);
  for (const oldest of keptFloors.keys()) {
    if (keptFloors.size <= mostKept) break;
    keptFloors.delete(oldest);
  }
  return floor;
}

function pricedByBoth(system: string, given: Given): PricedFloor {
  const { floor, values } = setFloor(system, given);
  const read = floor.valuesWith(values);
  const engine = floor.engineValuesWith(values);
  const different = read.findIndex((value, cell) => !same(value, engine[cell]));
  if (different !== -1)
    throw new Error(`The evaluators disagree on ${JSON.stringify(floor.option.plan.cells[different])}`);
  return reading(system, floor.optionWith(values), read, given);
}

/** Prices by the closures alone, for thousands of floors. */
export function quicklyPriced(system: string, given: Given = {}): PricedFloor {
  const { floor, values }: SetFloor = setFloor(system, given);
  return reading(system, floor.optionWith(values), floor.valuesWith(values), given);
}

/** A name that reaches nothing would leave a test asserting the template's own value. */
function mustHold(option: OptionPlan, name: string, value: number | string): void {
  const content = option.plan.cells[cellNamed(option, name)]?.content;
  if (content === undefined || !('value' in content) || content.value !== value)
    throw new Error(`${name} does not take ${value}`);
}

function reading(system: string, option: OptionPlan, values: readonly CellValue[], given: Given): PricedFloor {
  for (const [name, value] of Object.entries({ ...given.set, ...given.instead })) mustHold(option, name, value);
  const { stack } = shippedStack(system);
  const moving = new MovingCells((cell) => values[cell] ?? missing(`cell ${cell}`));
  const results = { stack, option, read: moving.read, moving };
  const value = (name: string): CellValue => values[cellNamed(option, name)] ?? missing(name);
  const number = (name: string): number => {
    const found = value(name);
    if (typeof found !== 'number') throw new Error(`${name} is ${JSON.stringify(found)}, not a number`);
    return found;
  };
  const check = (name: string): ToldCheck => toldChecks(results).find((told) => told.name === name) ?? missing(name);
  const said = (name: string): string | undefined => {
    const texts = (['allowances', 'terms', 'comparison', 'day'] as const).flatMap((use) => saidTexts(results, use));
    return texts.find((text) => text.name === name)?.text;
  };
  return { value, read: results.read, number, check, said, option };
}

function same(left: CellValue, right: CellValue | undefined): boolean {
  if (typeof left !== 'object' || typeof right !== 'object') return Object.is(left, right);
  return left.kind === right.kind && left.origin === right.origin;
}
