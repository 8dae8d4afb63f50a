import { formatQuantity } from './format.ts';
import type { Measures } from './measures.ts';
import { parseUnit, type Unit } from './unit.ts';

/** What labels say in US units, with the atom that the label's own unit then has. Longest first. */
const metricWords: readonly (readonly [atom: string, us: string, metric: string])[] = [
  ['lb', 'pounds a square inch', 'megapascals'],
  ['ft', 'square feet', 'square metres'],
  ['ft', 'square foot', 'square metre'],
  ['in', 'square inches', 'square millimetres'],
  ['in', 'square inch', 'square millimetre'],
  ['in', 'cubic inches', 'millilitres'],
  ['in', 'cubic inch', 'millilitre'],
  ['ft', 'feet', 'metres'],
  ['ft', 'foot', 'metre'],
  ['in', 'inches', 'millimetres'],
  ['in', 'inch', 'millimetre'],
  ['mil', 'mils', 'micrometres'],
  ['mil', 'mil', 'micrometre'],
  ['mi', 'miles', 'kilometres'],
  ['mi', 'mile', 'kilometre'],
  ['gal', 'gallons', 'litres'],
  ['gal', 'gallon', 'litre'],
  ['lb', 'pounds', 'kilograms'],
  ['lb', 'pound', 'kilogram'],
  ['oz', 'ounces', 'grams'],
  ['oz', 'ounce', 'gram'],
  ['ddegF', 'degrees F', 'degrees C'],
  ['ddegF', 'degree F', 'degree C'],
];

/**
 * A label beside a value of `unit`, with the units it says in words made metric with it. A word for a unit that the value
 * does not have stays. Example: 'Price a square foot' of $/ft2 → 'Price a square metre'; 'Foot traffic' of 1 stays.
 */
export function labelIn(label: string, unit: Unit, measures: Measures): string {
  if (measures === 'us') return label;
  return metricWords.reduce(
    (text, [atom, us, metric]) => (unit.powers.has(atom) || isRatio(unit, us) ? withWord(text, us, metric) : text),
    amountsIn(label, measures),
  );
}

/** Of a ratio, such as what a square foot costs beside another, the unit may be any; other words may be no units. */
function isRatio(unit: Unit, us: string): boolean {
  return unit.powers.size === 0 && /^(square f(oo|ee)t|gallons?)$/.test(us);
}

function withWord(text: string, us: string, metric: string): string {
  // “an inch” is “a millimetre”: every metric word here begins with a consonant.
  const word = new RegExp(`\\b(?:(a)n )?(${us})\\b`, 'gi');
  return text.replace(word, (_, article: string | undefined, found: string) => {
    const capital = article === undefined && found.charAt(0) !== found.charAt(0).toLowerCase();
    const written = capital ? metric.charAt(0).toUpperCase() + metric.slice(1) : metric;
    return article === undefined ? written : `${article} ${written}`;
  });
}

const inchesPerFoot = 12;
const centimetres = 2;
/** `in` is a word too: it is a unit where a phrase ends with it, or a side follows. */
const amount =
  /(?<![\d.,/])(\d+(?:,\d{3})*(?:\.\d+)?) (ft²|ft|gal|lb|mil|in(?= (?:wide|high|deep|thick|long)|[.,;:)]|$))(?![\w²³/])(?: (\d+(?:\.\d+)?) in\b)?/g;
/** Numbers that share one unit, as in “8 to 12 ft”: the first of them would be left behind. 1,000 ft² is one number. */
const sharedUnit = /\d ?(?:to|or|and|,(?!\d{3}\b)|–|-|×|x) ?\d+(?:\.\d+)? (?:ft|in|gal|lb|mil)/;

/**
 * The amounts that words of a sheet say in figures, in `measures`, lengths to the centimetre: 'two 9 ft doors, 6 in' →
 * 'two 2.74 m doors, 0.15 m'. Fractions such as 1/4 in are names of products and stay, and so do words in which several
 * numbers share a unit.
 */
export function amountsIn(words: string, measures: Measures): string {
  if (measures === 'us' || sharedUnit.test(words)) return words;
  return words.replace(amount, (whole, number: string, unitText: string, inches: string | undefined) => {
    const value = Number(number.replaceAll(',', ''));
    if (unitText === 'ft') return inUnit(value + Number(inches ?? 0) / inchesPerFoot, 'ft', centimetres);
    if (inches !== undefined) return whole;
    if (unitText === 'in') return inUnit(value / inchesPerFoot, 'ft', centimetres);
    return inUnit(value, unitText.replace('²', '2'), undefined);
  });
}

function inUnit(value: number, unitText: string, digits: number | undefined): string {
  const read = parseUnit(unitText);
  if (read.kind === 'fault') throw new Error(read.reason);
  return formatQuantity(value, read.unit, { measures: 'metric', ...(digits !== undefined && { digits }) });
}
