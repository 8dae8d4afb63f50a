/**
 * The one table of atoms that a unit is made of. To add a unit, add a row here; if it is shown in metric,
 * add its factor in conversion.ts as well.
 */
export type AtomKind = 'measure' | 'money' | 'counting' | 'share' | 'point';

export interface Atom {
  /** As written in a template: `ft`, `gal`, `$`. */
  readonly name: string;
  readonly kind: AtomKind;
  /** As shown: `°F`, `µm`; for a word its singular. */
  readonly symbol: string;
  /** As shown for more than one; the symbol itself unless it is a word. */
  readonly plural: string;
  /** Other spellings that people type, lower case. */
  readonly typed: readonly string[];
  /** For a point: the atom of the difference of two such points. */
  readonly difference?: string;
}

function measure(name: string, typed: readonly string[] = [], symbol: string = name): Atom {
  return { name, kind: 'measure', symbol, plural: symbol, typed };
}

/** A measure that is shown as the word for one of it, or for more. */
function inWords(name: string, singular: string, plural: string, typed: readonly string[]): Atom {
  return { name, kind: 'measure', symbol: singular, plural, typed };
}

function counting(name: string, singular: string, plural: string, typed: readonly string[] = []): Atom {
  return { name, kind: 'counting', symbol: singular, plural, typed };
}

function point(name: string, symbol: string, difference: string, typed: readonly string[]): Atom {
  return { name, kind: 'point', symbol, plural: symbol, typed, difference };
}

const atoms: readonly Atom[] = [
  measure('ft', ['foot', 'feet', 'lf', 'lin ft', 'linear feet']),
  measure('in', ['inch', 'inches']),
  measure('mil', ['mils', 'thou']),
  measure('mi', ['mile', 'miles']),
  measure('gal', ['gals', 'gallon', 'gallons']),
  measure('lb', ['lbs', 'pound', 'pounds']),
  measure('oz', ['ounce', 'ounces']),
  measure('h', ['hr', 'hrs', 'hour', 'hours']),
  measure('min', ['mins', 'minute', 'minutes']),
  inWords('d', 'day', 'days', ['day', 'days']),
  inWords('yr', 'year', 'years', ['yrs', 'year', 'years']),
  measure('ddegF', ['°', 'f', 'deg f', 'degf', 'degrees', 'degrees f'], '°F'),
  measure('ddegC', ['°', 'c', 'deg c', 'degc', 'degrees', 'degrees c'], '°C'),
  point('degF', '°F', 'ddegF', ['°', 'f', 'deg f', 'degrees', 'degrees f']),
  point('degC', '°C', 'ddegC', ['°', 'c', 'deg c', 'degrees', 'degrees c']),
  point('date', 'date', 'd', []),
  measure('m', ['metre', 'metres', 'meter', 'meters']),
  measure('mm', ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
  measure('um', ['µm', 'μm', 'micron', 'microns'], 'µm'),
  measure('km', ['kilometre', 'kilometres', 'kilometer', 'kilometers']),
  measure('L', ['litre', 'litres', 'liter', 'liters']),
  measure('mL', ['millilitre', 'millilitres', 'milliliter', 'milliliters']),
  measure('kg', ['kilogram', 'kilograms']),
  measure('g', ['gram', 'grams']),
  measure('MPa', ['megapascal', 'megapascals']),
  measure('A', ['amp', 'amps', 'ampere', 'amperes']),
  measure('V', ['volt', 'volts']),
  { name: '$', kind: 'money', symbol: '$', plural: '$', typed: ['usd', 'dollar', 'dollars'] },
  { name: '%', kind: 'share', symbol: '%', plural: '%', typed: ['percent', 'pct'] },
  counting('person', 'person', 'people', ['persons']),
  counting('crew_day', 'crew day', 'crew days', ['crew-day', 'crew-days']),
  counting('visit', 'visit', 'visits'),
  counting('trip', 'trip', 'trips'),
  counting('coat', 'coat', 'coats'),
  counting('job', 'job', 'jobs'),
  counting('each', 'piece', 'pieces', ['ea']),
  counting('pack', 'pack', 'packs'),
  counting('batch', 'batch', 'batches'),
  counting('step', 'step', 'steps'),
];

/** Every atom by its name, in table order. */
export const atomsByName: ReadonlyMap<string, Atom> = new Map(atoms.map((atom) => [atom.name, atom]));

/**
 * What people write instead of a unit text, for "did you mean": every typed spelling of an atom, and the common
 * words for areas.
 */
export const unitTextBySpelling: ReadonlyMap<string, string> = new Map([
  ...atoms.flatMap((atom) => atom.typed.map((spelling): [string, string] => [spelling, atom.name])),
  ['sqft', 'ft2'],
  ['sf', 'ft2'],
  ['sqm', 'm2'],
]);
