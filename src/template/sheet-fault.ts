import { sheetLimits } from './sheet-limits.ts';

/** One thing wrong with a sheet file: where, and what would be right. */
export interface SheetFault {
  /**
   * Where in the file, as in `sections[2].lines[0].formula`. Once sheets lie on each other the sheet stands before it:
   * `part repairs: sections[2].lines[0].formula`. In a quote's plan it may be a table's or a cell's name.
   */
  readonly path: string;
  readonly reason: string;
}

export type FaultReporter = (path: string, reason: string) => void;

/** Adds faults to `faults`, the same one once only, and no more of them than anybody would read. */
export function tellOnce(faults: SheetFault[]): FaultReporter {
  const told = new Set<string>();
  return (path, reason) => {
    const once = `${path}\n${reason}`;
    if (told.has(once) || told.size > sheetLimits.faultsTold) return;
    told.add(once);
    faults.push(
      told.size > sheetLimits.faultsTold ? { path: '', reason: 'There are more faults than these.' } : { path, reason },
    );
  };
}
