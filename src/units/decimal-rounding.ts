/**
 * The one rounding file. Each function takes the value's 15 significant decimal digits (its shortest decimal
 * text, rounded half away from zero to 15 digits) and rounds those, so that 1.005, which in binary is a little
 * less, rounds to 1.01 as on paper, and 86.00000000000001 packs are 86.
 */

const nearest = 0;
const away = 1;
const toward = 2;
type Way = typeof nearest | typeof away | typeof toward;

/** Powers of ten that a double holds exactly. */
const powersOfTen: readonly number[] = [
  1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
  1e21, 1e22,
];

/** Beyond this the fast path's slack would be too near to a half. */
const fastLimit = 1e12;
/** More than the 15-digit reading can move a value (0.5e-14) plus the scaling's own error (1.2e-16), relative. */
const readingSlack = 1e-14;
const digitsKept = 15;
/** No double has digits that far out: the smallest is 5e-324, the largest 1.8e308. */
const placesLimit = 400;

/** Rounds half away from zero. `places` may be negative. Example: `roundTo(2.345, 2)` → 2.35. */
export function roundTo(value: number, places: number): number {
  return round(value, places, nearest);
}

/** Rounds away from zero. Example: `roundUpTo(0.071, 2)` → 0.08, `roundUpTo(0.07, 2)` → 0.07. */
export function roundUpTo(value: number, places: number): number {
  return round(value, places, away);
}

/** Rounds toward zero. Example: `roundDownTo(-2.99, 0)` → -2. */
export function roundDownTo(value: number, places: number): number {
  return round(value, places, toward);
}

/** The greatest whole number that is not above the 15-digit reading. Example: `wholePart(-1.5)` → -2. */
export function wholePart(value: number): number {
  return round(value, 0, value < 0 ? away : toward);
}

/**
 * The value as HyperFormula 3.5.0 reads a cell with `precisionRounding: 14`, the same steps in the same order
 * (Exporter, cellValueRounding), so that the closures agree with it bit for bit. Unlike it, never -0.
 * Beyond its range (sizes below 1e-294) HyperFormula's reading is NaN, and so is this one.
 * Example: `fifteenDigits(0.1 + 0.2)` → 0.3.
 */
export function fifteenDigits(value: number): number {
  if (value === 0) return 0;
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  const multiplier = 10 ** (digitsKept - 1 - exponent);
  return value < 0 ? -Math.round(-value * multiplier) / multiplier : Math.round(value * multiplier) / multiplier;
}

function round(value: number, places: number, way: Way): number {
  if (value === 0) return 0;
  const size = value < 0 ? -value : value;
  const rounded = roundFast(size, places, way) ?? roundDigits(size, places, way);
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

/** Answers when no boundary is near or the value stands exactly on the grid; undefined when the digits decide. */
function roundFast(size: number, places: number, way: Way): number | undefined {
  const scale = powersOfTen[places < 0 ? -places : places];
  if (scale === undefined) return undefined;
  const scaled = places < 0 ? size / scale : size * scale;
  if (!(scaled < fastLimit)) return undefined;
  const whole = Math.floor(scaled);
  const part = scaled - whole;
  const slack = scaled * readingSlack;
  if (way === nearest) {
    if (Math.abs(part - 0.5) > slack) return unscale(part > 0.5 ? whole + 1 : whole, places, scale);
    return undefined;
  }
  if (part > slack && 1 - part > slack) return unscale(way === away ? whole + 1 : whole, places, scale);
  // A number with at most 15 digits is the only one of that length that reads as this double.
  const onGrid = unscale(part > 0.5 ? whole + 1 : whole, places, scale);
  return onGrid === size ? size : undefined;
}

/** One operation on two exact operands, so the result is the double nearest to the decimal. */
function unscale(whole: number, places: number, scale: number): number {
  return places < 0 ? whole * scale : whole / scale;
}

function roundDigits(size: number, places: number, way: Way): number {
  if (!Number.isFinite(size) || Number.isNaN(places)) return Number.isNaN(places) ? Number.NaN : size;
  const wanted = Math.max(-placesLimit, Math.min(placesLimit, Math.trunc(places)));
  const [mantissa = '', exponent = ''] = size.toExponential().split('e');
  const digits = mantissa.replace('.', '').padEnd(digitsKept, '0');
  const carry = (digits[digitsKept] ?? '0') >= '5' ? 1 : 0;
  const reading = Number(digits.slice(0, digitsKept)) + carry;
  // The reading counts units of 10^unit; the answer shall count units of 10^-wanted.
  const unit = Number(exponent) - (digitsKept - 1);
  const drop = -wanted - unit;
  if (drop <= 0) return Number(`${reading}e${unit}`);
  const step = powersOfTen[Math.min(drop, digitsKept + 2)] ?? 1;
  const rest = reading % step;
  const up = way === away ? rest > 0 : way === nearest && rest * 2 >= step;
  return Number(`${(reading - rest) / step + (up ? 1 : 0)}e${-wanted}`);
}
