import type { TemplateLibrary } from '../template/template-library.ts';
import { type Declared, declaredIn, sheetsOf } from './method-names.ts';

/** A publication that a template cites: the words by which its `source` names it. */
export const publications: readonly string[] = [
  '16 CFR 1500.133',
  '16 CFR 429.1',
  '40 CFR 261.7',
  'ACI 548.8M-07',
  'ANSI A326.3-2022',
  'ASTM D4262',
  'ASTM D4263',
  'Alduchov and Eskridge 1996',
  'California Business and Professions Code 7159.5(a)(3)',
  'Contact Dermatitis 10(3):146, 1984',
  'NIST Handbook 44, Appendix C',
  'NCHRP Synthesis 423 (2011)',
  'OSHA 29 CFR 1926.1153, Table 1',
  'UFC 3-190-06',
];

interface Mark {
  /** As the page names it. */
  readonly mark: string;
  readonly pattern: RegExp;
}

/** What says that nobody has published the value. It counts even where the same source names a publication too. */
const weakMarks: readonly Mark[] = [
  { mark: 'a guess, no source', pattern: /\ba guess\b|\bguesses\b/ },
  { mark: 'common practice, no source', pattern: /\bcommon practice, no source\b/ },
  { mark: 'from memory', pattern: /\bfrom memory\b/ },
  { mark: 'common wording of specifications', pattern: /^common wording of / },
];

/** Values that need no publication: they are read, chosen, or follow from others. */
const plainMarks: readonly Mark[] = [
  {
    mark: 'measured, seen or decided for this job',
    pattern:
      /^(the measure|this (job|customer|address)|seen on the (visit|slab)|what was done|a named person’s reading|read (on the slab|beside it)|0 until it is read|the forecast)\b/,
  },
  {
    mark: 'the product’s data sheet or its supplier',
    pattern: /^(the product’s data sheet|the supplier’s price list)\b/,
  },
  {
    mark: 'follows from the rest of the sheet',
    pattern: /^(the coat it goes into|the system’s coats|nothing to fill|the unit it is sold by|one trip a day, by)\b/,
  },
  { mark: 'arithmetic, geometry or a definition', pattern: /^(derived|geometry|definition of|arithmetic)\b/ },
  { mark: 'the firm’s own statement, invented here', pattern: /^the firm’s own statement\b/ },
  { mark: 'an example', pattern: /^example\b/ },
];

export type Origin =
  | { readonly kind: 'mark'; readonly mark: string }
  | { readonly kind: 'publication'; readonly mark: string }
  | { readonly kind: 'unknown' };

/** Where a value comes from, as its `source` says. */
export function originOf(source: string): Origin {
  const marked = (marks: readonly Mark[]): Mark | undefined => marks.find(({ pattern }) => pattern.test(source));
  const weak = marked(weakMarks);
  if (weak !== undefined) return { kind: 'mark', mark: weak.mark };
  if (citedIn(source).length > 0) return { kind: 'publication', mark: 'a publication' };
  const plain = marked(plainMarks);
  return plain === undefined ? { kind: 'unknown' } : { kind: 'mark', mark: plain.mark };
}

function citedIn(source: string): string[] {
  return publications.filter((publication) => source.includes(publication));
}

/** What of a template lacks a source, or has one that is neither a mark nor a publication of the list; a sentence each. */
export function sourceFaults(library: TemplateLibrary): string[] {
  return sheetsOf(library)
    .flatMap(declaredIn)
    .flatMap(({ where, definition }): string[] => {
      const source = definition.source?.trim() ?? '';
      if (source === '') return isGiven(definition) ? [`${where} has no source.`] : [];
      return originOf(source).kind === 'unknown'
        ? [`${where}: “${source}” is no known mark and cites no publication of the list in src/cli/method-sources.ts.`]
        : [];
    });
}

/** How many entries and choices have which mark, most first. */
export function countsByMark(library: TemplateLibrary): (readonly [mark: string, count: number])[] {
  const counts = new Map<string, number>();
  for (const { definition } of sheetsOf(library).flatMap(declaredIn)) {
    if (!isGiven(definition)) continue;
    const origin = originOf(definition.source ?? '');
    const mark = origin.kind === 'unknown' ? 'not said' : origin.mark;
    counts.set(mark, (counts.get(mark) ?? 0) + 1);
  }
  return [...counts].sort(([left, many], [right, more]) => more - many || (left < right ? -1 : 1));
}

/** Each publication that is cited, by name, with the places that cite it. */
export function citations(
  library: TemplateLibrary,
): { readonly publication: string; readonly places: readonly string[] }[] {
  const declared = sheetsOf(library).flatMap(declaredIn);
  return publications.flatMap((publication) => {
    const places = declared.flatMap(({ where, definition }) =>
      citedIn(definition.source ?? '').includes(publication) ? [where] : [],
    );
    return places.length === 0 ? [] : [{ publication, places }];
  });
}

function isGiven(definition: Declared['definition']): boolean {
  return definition.kind === 'entry' || definition.kind === 'choice';
}
