import { isMoney } from './format.ts';
import { declaredTerms, type Unit, type UnitTerm } from './unit.ts';
import { unitTextBySpelling } from './unit-table.ts';

/** What stands before the unit that was typed, and that unit ('' when none was). */
export interface SplitText {
  readonly number: string;
  readonly suffix: string;
}

const trailingUnit = /(?:\$? ?\/ ?)?[A-Za-z%°µμ_].*$|\$ ?(?:\/.*)?$/;

/** Splits '528 sq ft' into number and unit. Example: '38 $/h' → { number: '38', suffix: '$/h' }. */
export function splitTypedUnit(text: string): SplitText {
  const match = trailingUnit.exec(text);
  if (match === null) return { number: text, suffix: '' };
  return { number: text.slice(0, match.index).trim(), suffix: match[0].trim() };
}

/**
 * Whether a typed unit says the unit that is wanted, in any of its spellings: 'sq ft', 'ft²', 'SF' for ft2. The
 * dollars of $/h may be left out ('/h'), since the $ stands before the number.
 */
export function saysUnit(suffix: string, unit: Unit): boolean {
  if (suffix === '%' && unit.text === '1') return true;
  const [above = '', ...below] = suffix
    .toLowerCase()
    .replace(/\.$/, '')
    .replaceAll('·', '*')
    .split('/')
    .map((part) => part.trim());
  const terms = declaredTerms(unit);
  const numerator = terms.filter((term) => term.power > 0);
  const isUnderstood = above === '' && (numerator.length === 0 || (isMoney(unit) && numerator.length === 1));
  return (
    (isUnderstood || saysTerms(above.split('*'), numerator)) &&
    saysTerms(
      below,
      terms.filter((term) => term.power < 0),
    )
  );
}

function saysTerms(parts: readonly string[], terms: readonly UnitTerm[]): boolean {
  if (parts.length !== terms.length) return false;
  const left = [...terms];
  for (const part of parts) {
    const found = left.findIndex((term) => saysTerm(part.trim(), term));
    if (found < 0) return false;
    left.splice(found, 1);
  }
  return true;
}

function saysTerm(part: string, { atom, power }: UnitTerm): boolean {
  const size = Math.abs(power);
  const spellings = [atom.name, atom.symbol, atom.plural, ...atom.typed].map((spelling) => spelling.toLowerCase());
  if (size === 1) return spellings.includes(part);
  if (unitTextBySpelling.get(part) === `${atom.name}${size}`) return true;
  const words = size === 2 ? ['sq ', 'sq. ', 'square '] : size === 3 ? ['cu ', 'cu. ', 'cubic '] : [];
  return spellings.some((one) => part === `${one}${size}` || words.some((word) => part === word + one));
}
