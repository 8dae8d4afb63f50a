import { compileStack } from './compile.ts';
import type { CompiledStack } from './compiled-stack.ts';
import { composeSheet } from './compose.ts';
import type { SheetFault } from './sheet-fault.ts';
import type { SheetFile } from './sheet-schema.ts';

/** The files of one option's stack. */
export interface StackFiles {
  readonly priceList: SheetFile;
  readonly shop: SheetFile;
  readonly floor: SheetFile;
  readonly system: SheetFile;
}

export interface StackResult {
  readonly stack: CompiledStack;
  readonly faults: readonly SheetFault[];
}

/** Composes and compiles the four sheets of an option. */
export function stackOf(files: StackFiles, parts: ReadonlyMap<string, SheetFile>): StackResult {
  const composed = [files.priceList, files.shop, files.floor, files.system].map((file) => composeSheet(file, parts));
  const compiled = compileStack(composed.map(({ sheet }) => sheet));
  return { stack: compiled.stack, faults: [...composed.flatMap(({ faults }) => faults), ...compiled.faults] };
}
