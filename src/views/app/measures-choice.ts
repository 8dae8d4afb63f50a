import { keepSetting, keptSetting } from '../../storage/kept-settings.ts';
import type { Measures } from '../../units/measures.ts';

/** What lengths and amounts are shown and typed in. */
export const measuresOffered = [
  { measures: 'us', label: 'Feet and gallons' },
  { measures: 'metric', label: 'Metres and litres' },
] as const satisfies readonly { readonly measures: Measures; readonly label: string }[];

/** What was chosen last in this browser; feet and gallons before anything was. */
export function readMeasures(): Measures {
  const kept = keptSetting('units');
  return measuresOffered.find(({ measures }) => measures === kept)?.measures ?? 'us';
}

export function keepMeasures(measures: Measures): void {
  keepSetting('units', measures);
}
