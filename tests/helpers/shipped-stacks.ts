import type { CompiledStack } from '../../src/template/compiled-stack.ts';
import type { ProductRow } from '../../src/template/entries.ts';
import type { SheetFile } from '../../src/template/sheet-schema.ts';
import { stackOf } from '../../src/template/stack-of.ts';
import { shippedLibrary, shippedProducts } from './shipped-templates.ts';

export interface ShippedStack {
  readonly stack: CompiledStack;
  readonly products: ReadonlyMap<string, ProductRow>;
}

const shipped = readShipped();
export const shippedSystems: readonly string[] = [...shipped.library.systems.keys()];
const compiled = new Map<string, ShippedStack>();

/** A system that is shipped, over the shipped shop, floor and price list; compiled when first asked for. */
export function shippedStack(system: string): ShippedStack {
  const stack = compiled.get(system) ?? compiledStack(system);
  compiled.set(system, stack);
  return stack;
}

function readShipped() {
  const { library, faults } = shippedLibrary();
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  const layers = [library.priceLists, library.shops, library.floors];
  const [priceList, shop, floor] = layers.map((sheets) => [...sheets.values()][0]);
  if (!priceList || !shop || !floor) throw new Error('A layer has no sheet');
  const { products, faults: productFaults } = shippedProducts(priceList);
  if (productFaults.length > 0) throw new Error(JSON.stringify(productFaults));
  return { library, sheets: { priceList, shop, floor }, products };
}

type Parts = ReadonlyMap<string, SheetFile>;

/** Keeps a shipped system over other parts under a name of its own, by which it may then be asked for. */
export function keepOverParts(name: string, system: string, parts: (shipped: Parts) => Parts): void {
  if (!compiled.has(name)) compiled.set(name, compiledStack(system, parts(shipped.library.parts)));
}

function compiledStack(id: string, parts: Parts = shipped.library.parts): ShippedStack {
  const { library, sheets, products } = shipped;
  const system = library.systems.get(id);
  if (system === undefined) throw new Error(`No system ${id} is shipped`);
  const { stack, faults } = stackOf({ ...sheets, system }, parts);
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  return { stack, products };
}
