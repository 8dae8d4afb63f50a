import { compileStack } from './compile.ts';
import type { CompiledStack } from './compiled-stack.ts';
import { composeSheet } from './compose.ts';
import { formerNamesOf, noFormerNames } from './former-names.ts';
import { withPresentNames } from './present-names.ts';
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
  /** What is no fault and worth knowing: a former name in use. */
  readonly notices: readonly SheetFault[];
}

/** Composes and compiles the four sheets of an option. */
export function stackOf(files: StackFiles, parts: ReadonlyMap<string, SheetFile>): StackResult {
  const sheets = [files.priceList, files.shop, files.floor, files.system];
  const faults: SheetFault[] = [];
  const notices: SheetFault[] = [];
  const former = formerNamesOf([...sheets, ...usedParts(files.system, parts)], faults);
  const present = (file: SheetFile): SheetFile =>
    former === noFormerNames ? file : withPresentNames(file, former, notices);
  const placed = new Map([...parts].map(([id, part]) => [id, present(part)]));
  const composed = sheets.map((file) => composeSheet(present(file), placed));
  const compiled = compileStack(composed.map(({ sheet }) => sheet));
  faults.push(...composed.flatMap(({ faults: own }) => own), ...compiled.faults);
  return { stack: { ...compiled.stack, former }, faults, notices };
}

function usedParts({ sections }: SheetFile, parts: ReadonlyMap<string, SheetFile>): SheetFile[] {
  return sections.flatMap((section) => (section.kind === 'use' ? (parts.get(section.use) ?? []) : []));
}
