import type { LineFile, RowFile } from './line-schema.ts';
import type { Ask, Layer, Need, ProductKind, SectionUse, TableFile } from './sheet-schema.ts';

/** A sheet whose parts are placed, whose added rows stand in their tables and whose `set` values are given. */
export interface ComposedSheet {
  readonly layer: Layer;
  readonly id: string;
  readonly title: string;
  readonly summary?: string | undefined;
  readonly kinds: readonly ProductKind[];
  readonly needs: readonly Need[];
  readonly asks: readonly Ask[];
  readonly sections: readonly ComposedSection[];
  readonly brokenNames: readonly string[];
}

export interface ComposedSection {
  readonly id: string;
  readonly title: string;
  readonly note?: string | undefined;
  readonly for?: SectionUse | undefined;
  /** The part it comes from. */
  readonly part?: string | undefined;
  readonly lines: readonly PlacedLine[];
  readonly tables: readonly PlacedTable[];
}

export interface PlacedLine {
  readonly line: LineFile;
  /** Where it stands: its sheet and the path in that file, as in `part repairs: sections[0].lines[1]`. */
  readonly path: string;
}

export interface PlacedTable {
  readonly table: TableFile;
  readonly path: string;
  readonly rows: readonly PlacedRow[];
}

export interface PlacedRow {
  /** The key's code, or `row_1`, `row_2`, … in a table without a key: stable as long as the template is. */
  readonly id: string;
  readonly cells: RowFile;
  readonly path: string;
}
