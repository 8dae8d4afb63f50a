import type { RowFile } from '../../template/line-schema.ts';
import { writeSidesInMetres } from '../../units/length-text.ts';
import { amountsIn } from '../../units/said-units.ts';

const sidesInFeet = /(\d+(?:\.\d+)?) × (\d+(?:\.\d+)?)/;

/**
 * A size's label for metric, worked out from its rows: 'Two-car 20 × 20' of 20 by 20 ft → 'Two-car 6.1 × 6.1 m'. Sides that
 * the label does not say stand behind it; what is no one rectangle keeps its label, its figures in metres.
 */
export function sizeInMetric(label: string, rows: readonly RowFile[]): string {
  const [row, ...others] = rows;
  const { length, width } = row ?? {};
  if (others.length > 0 || typeof length !== 'number' || typeof width !== 'number') return amountsIn(label, 'metric');
  const said = sidesInFeet.exec(label);
  const [first, second] = [Number(said?.[1]), Number(said?.[2])];
  const isSame = (first === length && second === width) || (first === width && second === length);
  return isSame
    ? label.replace(sidesInFeet, writeSidesInMetres(first, second))
    : `${label} (${writeSidesInMetres(length, width)})`;
}
