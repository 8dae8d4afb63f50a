import type { RowFile } from '../../template/line-schema.ts';
import { writeSidesInMetres } from '../../units/length-text.ts';
import type { Measures } from '../../units/measures.ts';
import { amountsIn } from '../../units/said-units.ts';

/** An answer as its key shows it: the unit is lighter than the words before it. */
export interface AnswerText {
  readonly words: string;
  /** Empty where the words end with none, or have it within. */
  readonly unit: string;
}

const sidesInFeet = /(\d+(?:\.\d+)?) × (\d+(?:\.\d+)?)(?: ft\b)?/;

/**
 * A size's label with the unit of its sides. 'Two-car 20 × 20' of 20 by 20 ft → 'Two-car 20 × 20' ft, and worked out from
 * its rows in metric, 'Two-car 6.1 × 6.1' m. There, sides that the label does not say stand behind it; what is no one
 * rectangle keeps its label, its figures in metres.
 */
export function sizeIn(label: string, rows: readonly RowFile[], measures: Measures): AnswerText {
  const [row, ...others] = rows;
  const { length, width } = row ?? {};
  if (others.length > 0 || typeof length !== 'number' || typeof width !== 'number')
    return { words: amountsIn(label, measures), unit: '' };
  const said = sidesInFeet.exec(label);
  const [first, second] = [Number(said?.[1]), Number(said?.[2])];
  const isSame = (first === length && second === width) || (first === width && second === length);
  if (!isSame)
    return { words: measures === 'us' ? label : `${label} (${writeSidesInMetres(length, width)})`, unit: '' };
  const sides = measures === 'us' ? `${first} × ${second} ft` : writeSidesInMetres(first, second);
  return lastUnitApart(label.replace(sidesInFeet, sides));
}

function lastUnitApart(text: string): AnswerText {
  const [, words = text, unit = ''] = /^(.*\d) (ft|m)$/.exec(text) ?? [];
  return { words, unit };
}
