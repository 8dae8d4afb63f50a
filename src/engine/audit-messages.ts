import type { CellValue, PlainPlan } from '../formula/cells.ts';

/** One option as the page has it now. */
export interface AuditedOption {
  /** Which laying out of the option it is; another one is opened anew. */
  readonly workbook: number;
  /** Left out where the auditor has it already. */
  readonly plan?: PlainPlan;
  /** What was entered into cells since they were laid out. */
  readonly entered: ReadonlyMap<number, number | string>;
  /** What the page shows, cell by cell. */
  readonly values: readonly CellValue[];
}

/** A whole quote, to be worked out again and compared. */
export interface AuditRequest {
  readonly revision: number;
  readonly options: readonly AuditedOption[];
}

export interface CellDifference {
  readonly workbook: number;
  readonly cell: number;
  readonly page: CellValue;
  readonly auditor: CellValue | undefined;
}

export type AuditAnswer =
  | { readonly kind: 'compared'; readonly revision: number; readonly differences: readonly CellDifference[] }
  /** Working it out again came to an end that only a bug can make. */
  | { readonly kind: 'broken'; readonly revision: number; readonly reason: string };

/** The way to an auditor: a worker on the page. */
export interface AuditorLine {
  ask(request: AuditRequest): void;
  close(): void;
}

/** Who hears the auditor. `lost` is told when there is none, or none any more: off the net it cannot be loaded. */
export interface AuditorEars {
  answered(answer: AuditAnswer): void;
  lost(): void;
}

export type CallAuditor = (ears: AuditorEars) => AuditorLine;
