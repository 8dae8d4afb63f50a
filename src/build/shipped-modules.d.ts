/** Written by `shipped-sheets.ts` when the app is built. */
declare module 'virtual:shipped-sheets' {
  import type { BuiltSheet, OfferedSheet } from '../quote/sheet-store.ts';
  import type { ProductRow } from '../template/entries.ts';

  export const under: readonly BuiltSheet[];
  export const systems: readonly OfferedSheet[];
  export const products: readonly ProductRow[];
  export const fetchSystems: () => Promise<readonly BuiltSheet[]>;
}
