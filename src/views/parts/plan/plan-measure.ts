import { fromMetric } from '../../../units/conversion.ts';
import { writeFeetInches } from '../../../units/feet-inches.ts';
import { formatQuantity } from '../../../units/format.ts';
import type { Measures } from '../../../units/measures.ts';
import { one, parseUnit, type Unit } from '../../../units/unit.ts';

/** How a plan writes and steps lengths. All numbers are in feet. */
export interface PlanMeasure {
  /** As it stands at a side: 14' 6", or 4.42 m. */
  readonly length: (feet: number) => string;
  /** As it is said: 14 ft 6 in. */
  readonly spoken: (feet: number) => string;
  readonly area: (squareFeet: number) => string;
  /** What is kept as typed with a corner's place; undefined keeps the number alone. */
  readonly typed: (feet: number) => string | undefined;
  /** Lengths that a scale bar may have, rising. */
  readonly bars: readonly number[];
  /** What a corner snaps to while it is dragged: no finger is finer. */
  readonly drag: number;
  /** What an arrow key moves a corner by, alone and with Shift. */
  readonly step: number;
  readonly longStep: number;
}

const roundLengths = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

const feetAndInches: PlanMeasure = {
  length: writeFeetInches,
  spoken: (feet) => writeFeetInches(feet).replace("'", ' ft').replace('"', ' in'),
  area: (squareFeet) => formatQuantity(squareFeet, unitOf('ft2')),
  typed: writeFeetInches,
  bars: roundLengths,
  drag: 0.25,
  step: 1 / 12,
  longStep: 1,
};

const metres: PlanMeasure = {
  length: (feet) => formatQuantity(feet, unitOf('ft'), { measures: 'metric', digits: 2 }),
  spoken: (feet) => formatQuantity(feet, unitOf('ft'), { measures: 'metric', digits: 2 }),
  area: (squareFeet) => formatQuantity(squareFeet, unitOf('ft2'), { measures: 'metric' }),
  typed: () => undefined,
  bars: roundLengths.map(inFeet),
  drag: inFeet(0.05),
  step: inFeet(0.01),
  longStep: inFeet(0.1),
};

export function planMeasure(measures: Measures): PlanMeasure {
  return measures === 'us' ? feetAndInches : metres;
}

function inFeet(metresLong: number): number {
  return fromMetric(metresLong, unitOf('ft'));
}

function unitOf(text: string): Unit {
  const parsed = parseUnit(text);
  return parsed.kind === 'unit' ? parsed.unit : one;
}
