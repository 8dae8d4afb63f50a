import type { DeclaredNames, DeclaredTable } from './declared-names.ts';
import type { FaultReporter } from './sheet-fault.ts';

/** Tells what is wrong with where a table finds the corners of outlines (`outline`). */
export function tellOutline(declared: DeclaredTable, names: DeclaredNames, report: FaultReporter): void {
  const { outline, columns } = declared.table;
  if (outline === undefined) return;
  const path = `${declared.path}.outline`;
  const needNumber = (name: string, unit: string): void => {
    const column = columns.find((candidate) => candidate.name === name);
    const isNumber = column?.kind === 'entry' || column?.kind === 'formula';
    if (!isNumber || column.unit !== unit) report(path, `“${name}” is no column of this table with the unit ${unit}.`);
  };
  needNumber(outline.of, '1');
  needNumber(outline.across, 'ft');
  needNumber(outline.along, 'ft');
  const areas = names.tables.get(outline.table);
  if (areas?.layer !== declared.layer) {
    report(path, `“${outline.table}” is no table of this sheet.`);
    return;
  }
  const shape = areas.table.columns.find((candidate) => candidate.name === outline.shape);
  if (shape?.kind !== 'choice') report(path, `“${outline.shape}” is no choice column of “${outline.table}”.`);
  else if (!shape.options.some(({ code }) => code === outline.code))
    report(path, `“${outline.code}” is not among the choices of “${outline.shape}”.`);
}
