import { numberIn, type PrintedQuote, type PrintedRow } from './printed-quote.ts';

const inches = 12;
/** Common practice, no source: footprints from 4 ft2 up are left out of the floor. */
const worthLeavingOut = 4;

/** What stands on a floor, goes up from it or lies past its doors: feet, square feet and pieces. */
export interface BuiltOn {
  readonly lip: number;
  readonly doorsPassed: number;
  readonly leftOut: number;
  readonly around: number;
  readonly pieces: number;
  readonly steps: number;
  readonly stepArea: number;
  readonly curbLength: number;
  readonly curbArea: number;
}

/** From the rows of the floor, one after another. */
export function builtOn(quote: PrintedQuote): BuiltOn {
  const doors = quote.rows('openings').map((row) => (numberIn(row, 'width') * numberIn(row, 'lip')) / inches);
  const standing = included(quote.rows('obstacles'));
  const flights = included(quote.rows('steps'));
  const curbs = included(quote.rows('curbs'));
  return {
    lip: total(doors),
    doorsPassed: doors.filter((area) => area > 0).length,
    leftOut: total(
      standing
        .filter((row) => numberIn(row, 'footprint') >= worthLeavingOut)
        .map((row) => numberIn(row, 'pieces') * numberIn(row, 'footprint')),
    ),
    around: total(standing.map((row) => numberIn(row, 'pieces') * numberIn(row, 'around'))),
    pieces: total(standing.map((row) => numberIn(row, 'pieces'))),
    steps: total(flights.map((row) => Math.max(numberIn(row, 'risers'), numberIn(row, 'treads')))),
    stepArea: total(flights.map((row) => (numberIn(row, 'width') * flightInches(row)) / inches)),
    curbLength: total(curbs.map((row) => numberIn(row, 'length'))),
    curbArea: total(curbs.map((row) => (numberIn(row, 'length') * curbInches(row)) / inches)),
  };
}

/** Hours of one person complete, common practice, no source: 1.5 steps an hour; a curb as a stem wall, 18 ft an hour to 8 in. */
export function hoursOnIt({ steps, curbLength, curbArea, pieces, doorsPassed }: BuiltOn) {
  const across = curbLength > 0 ? (curbArea / curbLength) * inches : 0;
  return {
    steps: steps / 1.5,
    curbs: (curbLength / 18) * Math.max(1, across / 8),
    obstacles: pieces / 4 + doorsPassed * 0.3,
  };
}

const flightInches = (row: PrintedRow): number =>
  numberIn(row, 'risers') * numberIn(row, 'riser_height') + numberIn(row, 'treads') * numberIn(row, 'tread_depth');

const curbInches = (row: PrintedRow): number =>
  numberIn(row, 'faces') * numberIn(row, 'height') + numberIn(row, 'top_width');

const included = (rows: readonly PrintedRow[]): readonly PrintedRow[] =>
  rows.filter((row) => numberIn(row, 'include') === 1);

const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);
