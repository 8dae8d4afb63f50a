import { columnName } from '../formula/cell-name.ts';
import type { CompiledLine, CompiledTable, SayPiece } from './compiled-stack.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import type { ColumnFile, LineFile } from './line-schema.ts';
import type { FaultReporter } from './sheet-fault.ts';
import type { Layer, SectionUse } from './sheet-schema.ts';

const customersUses: readonly SectionUse[] = ['allowances', 'terms', 'comparison'];

/**
 * Tells texts that would show a customer what a person wrote: names are for the shop. Customers read the sections for
 * them, the stops of the floor, and checks that are open.
 */
export function tellNamesShown(
  sheets: readonly ComposedSheet[],
  lines: ReadonlyMap<string, CompiledLine>,
  tables: ReadonlyMap<string, CompiledTable>,
  report: FaultReporter,
): void {
  const sections = sheets.flatMap((sheet) => sheet.sections);
  for (const section of sections.filter((one) => one.for !== undefined && customersUses.includes(one.for)))
    for (const { line, path } of section.lines)
      if (line.kind === 'words' || tellsWords(lines.get(line.name)?.say)) report(path, forCustomers(line.name));
  for (const { definition, layer, path, say } of lines.values())
    if (isReadByCustomers(definition, layer) && tellsWords(say)) report(path, forCustomers(definition.name));
  for (const { definition: table, layer, columns } of tables.values())
    for (const { definition, cases } of columns.values())
      if (isReadByCustomers(definition, layer) && [...cases.values()].some(({ say }) => tellsWords(say)))
        report(columnName(table.name, definition.name), forCustomers(definition.name));
}

function isReadByCustomers(definition: LineFile | ColumnFile, layer: Layer): boolean {
  if (definition.kind !== 'check') return false;
  return definition.open === true || (layer === 'floor' && definition.severity === 'stop');
}

function tellsWords(say: readonly SayPiece[] = []): boolean {
  return say.some(({ kind }) => kind === 'written');
}

function forCustomers(name: string): string {
  return `Customers read “${name}”, and what a person writes is not for them.`;
}
