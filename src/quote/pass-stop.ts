import type { SingleEdit } from './edit.ts';
import type { OptionResults } from './option-results.ts';
import type { PassedStop, SheetPlace } from './quote-document.ts';
import { openChecks } from './told-checks.ts';

/**
 * The edit by which somebody goes ahead past a stop as it stands now, in one option or, for a stop of the shop or the floor,
 * in all. Undefined for what is no open stop.
 */
export function passEdit(
  results: OptionResults,
  option: string,
  check: string,
  given: Pick<PassedStop, 'by' | 'why' | 'at'>,
): SingleEdit | undefined {
  const open = openChecks(results).find(({ name, severity }) => name === check && severity === 'stop');
  if (open === undefined) return undefined;
  const pass = { ...given, by: given.by.trim(), why: given.why.trim(), said: open.says };
  return { kind: 'passStop', sheet: sheetOf(open.layer, option), check, pass };
}

/** The edit after which the stop stands again. */
export function takePassEdit(results: OptionResults, option: string, check: string): SingleEdit | undefined {
  const open = openChecks(results).find(({ name }) => name === check);
  return open && { kind: 'passStop', sheet: sheetOf(open.layer, option), check };
}

function sheetOf(layer: string, option: string): SheetPlace {
  return layer === 'shop' || layer === 'floor' ? { kind: layer } : { kind: 'option', option };
}
