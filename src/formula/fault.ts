import type { Span } from './tree.ts';

/** What is wrong with a formula, in the order in which faults are told. */
export const faultKinds = ['limit', 'reading', 'name', 'column', 'type', 'arguments', 'cycle'] as const;

export interface FormulaFault {
  readonly kind: (typeof faultKinds)[number];
  readonly at: Span;
  readonly reason: string;
}

/** Sorts faults into the order in which they are told: by kind, then by place. */
export function inTellingOrder(faults: readonly FormulaFault[]): FormulaFault[] {
  return [...faults].sort((a, b) => faultKinds.indexOf(a.kind) - faultKinds.indexOf(b.kind) || a.at.start - b.at.start);
}
