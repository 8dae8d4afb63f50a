import { columnName } from '../formula/cell-name.ts';
import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import type { SheetFile, TableFile } from '../template/sheet-schema.ts';
import type { TemplateLibrary } from '../template/template-library.ts';

/** A line or a column, with the sheet that declares it. */
export interface Declared {
  /** `shop standard: labour_rate`, `part coats: coats.waste`. */
  readonly where: string;
  /** A line's name, or `table.column`. */
  readonly name: string;
  readonly definition: LineFile | ColumnFile;
}

/** Every sheet in the order of the page: price lists, shops, floors, parts, systems. */
export function sheetsOf(library: TemplateLibrary): SheetFile[] {
  return [
    ...byId(library.priceLists),
    ...byId(library.shops),
    ...byId(library.floors),
    ...partsInOrder(library),
    ...byId(library.systems),
  ];
}

/** Parts in the order in which systems use them: each after the one it follows where it first stands; unused ones last. */
function partsInOrder(library: TemplateLibrary): SheetFile[] {
  const order: string[] = [];
  for (const system of byId(library.systems)) {
    let at = 0;
    for (const section of system.sections) {
      if (section.kind !== 'use') continue;
      const known = order.indexOf(section.use);
      if (known < 0) order.splice(at, 0, section.use);
      at = (known < 0 ? at : known) + 1;
    }
  }
  const unused = byId(library.parts).flatMap(({ id }) => (order.includes(id) ? [] : [id]));
  return [...order, ...unused].flatMap((id) => library.parts.get(id) ?? []);
}

function byId(sheets: ReadonlyMap<string, SheetFile>): SheetFile[] {
  return [...sheets.values()].sort((left, right) => (left.id < right.id ? -1 : 1));
}

/** The tables a sheet declares. */
export function tablesIn(sheet: SheetFile): TableFile[] {
  return sheet.sections.flatMap((section) => (section.kind === 'own' ? section.tables : []));
}

/** The lines and columns a sheet declares, in its order. */
export function declaredIn(sheet: SheetFile): Declared[] {
  const place = `${sheet.layer} ${sheet.id}: `;
  return sheet.sections.flatMap((section) => {
    if (section.kind !== 'own') return [];
    const lines = section.lines.map(({ line }) => ({ name: line.name, definition: line }));
    const columns = section.tables.flatMap((table) =>
      table.columns.map((column) => ({ name: columnName(table.name, column.name), definition: column })),
    );
    return [...lines, ...columns].map((each) => ({ ...each, where: place + each.name }));
  });
}
