import {
  type ShownFrom,
  type ShownSection,
  sheetInView,
  shownSection,
} from '../../src/views/costing/sheet/shown-sheet.ts';

/** All of a sheet, as Costing shows it section by section. */
export interface ShownSheet {
  readonly title: string;
  readonly sections: readonly ShownSection[];
}

export function shownSheet(from: ShownFrom): ShownSheet {
  const sheet = sheetInView(from);
  return { title: sheet.title, sections: sheet.sections.map((section) => shownSection(section, sheet)) };
}
