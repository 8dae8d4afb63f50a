import { contentHash } from '../quote/canonical-json.ts';
import type { SheetHash } from '../quote/quote-document.ts';
import type { RawSheets } from '../quote/stored-sheets.ts';
import { readJson } from '../template/sheet-limits.ts';
import { fault, messages, type StoreFault } from './messages.ts';

export type SheetTexts = ReadonlyMap<SheetHash, string>;

/**
 * The texts to store of those wanted sheets that are given. A fault when one is not what its hash says; `trusted` ones were hashed
 * when the app was built.
 */
export async function checkedTexts(
  wanted: Iterable<SheetHash>,
  given: RawSheets,
  trusted: RawSheets,
): Promise<{ readonly kind: 'texts'; readonly texts: SheetTexts } | StoreFault> {
  const texts = new Map<SheetHash, string>();
  for (const hash of wanted) {
    const sheet = trusted.get(hash) ?? given.get(hash);
    if (sheet === undefined) continue;
    if (!trusted.has(hash) && (await contentHash(sheet)) !== hash) return fault(messages.sheetMixedUp(hash));
    texts.set(hash, JSON.stringify(sheet));
  }
  return { kind: 'texts', texts };
}

/** Reads stored sheets and sees that each is still what its hash says. Those in `needed` must be there. */
export async function readSheetTexts(
  texts: SheetTexts,
  needed: ReadonlySet<SheetHash>,
): Promise<{ readonly kind: 'sheets'; readonly sheets: RawSheets } | StoreFault> {
  const sheets = new Map<SheetHash, unknown>();
  for (const [hash, text] of texts) {
    const json = typeof text === 'string' ? readJson(text) : undefined;
    const whole = json?.kind === 'json' && (await contentHash(json.value)) === hash;
    if (whole) sheets.set(hash, json.value);
    else if (needed.has(hash)) return fault(messages.sheetDamaged(hash));
  }
  const missing = [...needed].find((hash) => !sheets.has(hash));
  return missing === undefined ? { kind: 'sheets', sheets } : fault(messages.sheetMissing(missing));
}
