import type { FaultReporter } from './sheet-fault.ts';
import type { Layer, SectionFile, SheetFile } from './sheet-schema.ts';

/** Tells what stands in a sheet of a layer that has no such thing. */
export function tellMisplaced(sheet: SheetFile, report: FaultReporter): void {
  if (sheet.needs.length > 0 && sheet.layer !== 'part') report('needs', 'Only a part has needs.');
  if (sheet.kinds.length > 0 && sheet.layer !== 'pricelist')
    report('kinds', 'Only a price list has kinds of products.');
  sheet.sections.forEach((section, at) => {
    const refusal = misplaced(section, sheet.layer);
    if (refusal !== undefined) report(`sections[${at}]`, refusal);
  });
}

function misplaced(section: SectionFile, layer: Layer): string | undefined {
  switch (section.kind) {
    case 'use':
      if (layer === 'system') return undefined;
      return layer === 'part' ? 'A part does not use other parts.' : 'Only a system uses parts.';
    case 'rows':
      return layer === 'system' || layer === 'part' ? undefined : 'Only a system or a part adds rows to tables.';
    case 'own':
      if (layer === 'pricelist') return section.lines.length > 0 ? 'A price list has no lines.' : undefined;
      return section.tables.some(({ columns }) => columns.some(({ kinds }) => kinds !== undefined))
        ? 'Only fields of a price list have kinds.'
        : undefined;
    default:
      return section satisfies never;
  }
}
