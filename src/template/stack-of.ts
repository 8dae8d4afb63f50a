import { compileStack } from './compile.ts';
import type { ReadFormulas } from './compile-formula.ts';
import type { CompiledStack } from './compiled-stack.ts';
import { type Composed, composeSheet } from './compose.ts';
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
  return new StackCompilers().stackOf(files, parts);
}

interface Below {
  readonly files: readonly SheetFile[];
  readonly sheets: readonly Composed[];
  /** Undefined where it has a fault, which is then told with the stack. */
  readonly compiled?: CompiledStack | undefined;
}

/**
 * Composes and compiles stacks one after the other. Those of one quote lie on the same price list, shop and floor and use the
 * same parts: those three sheets are compiled once, and every formula is read once.
 */
export class StackCompilers {
  private readonly formulas: ReadFormulas = new Map();
  private below: Below | undefined;

  stackOf(files: StackFiles, parts: ReadonlyMap<string, SheetFile>): StackResult {
    const lower = [files.priceList, files.shop, files.floor];
    const faults: SheetFault[] = [];
    const notices: SheetFault[] = [];
    const former = formerNamesOf([...lower, files.system, ...usedParts(files.system, parts)], faults);
    const present = (file: SheetFile): SheetFile =>
      former === noFormerNames ? file : withPresentNames(file, former, notices);
    const placed = new Map([...parts].map(([id, part]) => [id, present(part)]));
    const below = this.belowOf(lower.map(present), placed);
    const composed = [...below.sheets, composeSheet(present(files.system), placed)];
    const compiled = compileStack(
      composed.map(({ sheet }) => sheet),
      { formulas: this.formulas, below: below.compiled },
    );
    faults.push(...composed.flatMap(({ faults: own }) => own), ...compiled.faults);
    return { stack: { ...compiled.stack, former }, faults, notices };
  }

  private belowOf(files: readonly SheetFile[], parts: ReadonlyMap<string, SheetFile>): Below {
    if (this.below?.files.every((file, at) => file === files[at]) === true) return this.below;
    const sheets = files.map((file) => composeSheet(file, parts));
    const { stack, faults } = compileStack(
      sheets.map(({ sheet }) => sheet),
      { formulas: this.formulas },
    );
    this.below = { files, sheets, compiled: faults.length === 0 ? stack : undefined };
    return this.below;
  }
}

function usedParts({ sections }: SheetFile, parts: ReadonlyMap<string, SheetFile>): SheetFile[] {
  return sections.flatMap((section) => (section.kind === 'use' ? (parts.get(section.use) ?? []) : []));
}
