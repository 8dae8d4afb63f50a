import type { CompiledStack } from '../template/compiled-stack.ts';
import type { SheetFault } from '../template/sheet-fault.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import { StackCompilers, type StackResult } from '../template/stack-of.ts';
import type { QuoteDocument, QuoteOption, SheetHash } from './quote-document.ts';
import type { SheetStore } from './sheet-store.ts';

/** Compiles the stacks of quotes once for each set of pinned sheets. */
export class QuoteStacks {
  private readonly store: SheetStore;
  private readonly compilers = new StackCompilers();
  private readonly compiled = new Map<string, StackResult>();

  constructor(store: SheetStore) {
    this.store = store;
  }

  /** The compiled stack of an option. Faults say which pinned sheet is not at hand, or what is wrong in one. */
  of(quote: QuoteDocument, option: QuoteOption): { stack?: CompiledStack; faults: readonly SheetFault[] } {
    const { priceList, shop, floor, parts } = quote.sheets;
    const key = [priceList, shop, floor, option.system, ...Object.values(parts)].join(' ');
    const known = this.compiled.get(key);
    if (known !== undefined) return known;
    const missing: SheetFault[] = [];
    const sheet = (hash: SheetHash, what: string): SheetFile | undefined => {
      const found = this.store.sheets.get(hash);
      if (found === undefined)
        missing.push({
          path: what,
          reason: `The ${what} sheet this quote was made with (${hash.slice(0, 12)}…) is not at hand.`,
        });
      return found;
    };
    const files = [
      sheet(priceList, 'price list'),
      sheet(shop, 'shop'),
      sheet(floor, 'floor'),
      sheet(option.system, 'system'),
    ];
    const partFiles = new Map(
      Object.entries(parts).flatMap(([id, hash]) => {
        const part = sheet(hash, `part ${id}`);
        return part === undefined ? [] : [[id, part] as const];
      }),
    );
    const [priceListFile, shopFile, floorFile, systemFile] = files;
    if (!priceListFile || !shopFile || !floorFile || !systemFile || missing.length > 0) return { faults: missing };
    const result = this.compilers.stackOf(
      { priceList: priceListFile, shop: shopFile, floor: floorFile, system: systemFile },
      partFiles,
    );
    this.compiled.set(key, result);
    return result;
  }
}
