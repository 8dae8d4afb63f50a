import { isCode } from '../formula/code-text.ts';
import { nearestName } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import { applySets, type PlacedSet } from './apply-set.ts';
import type { ComposedSection, ComposedSheet, PlacedLine, PlacedRow, PlacedTable } from './composed-sheet.ts';
import type { RowCell, RowFile } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import { withRowChoices } from './row-choices.ts';
import { rowNameRefusal, withRowCodes } from './row-names.ts';
import type { SheetFault } from './sheet-fault.ts';
import { sheetLimits } from './sheet-limits.ts';
import type { Layer, SheetFile, TableFile } from './sheet-schema.ts';

export interface Composed {
  readonly sheet: ComposedSheet;
  readonly faults: readonly SheetFault[];
}

/** Places the parts a system uses, adds rows to their tables and gives what `set` names. */
export function composeSheet(file: SheetFile, parts: ReadonlyMap<string, SheetFile>): Composed {
  const composer = new Composer(parts);
  composer.take(file, undefined);
  const placed = composer.sections(file.layer);
  const faults = [...composer.faults];
  const sections = withRowChoices(placed, file.layer, composer.brokenNames, faults);
  const set = applySets(sections, composer.sets, new Set(composer.brokenNames), faults);
  const { layer, id, title, summary, kinds, needs, asks } = file;
  return {
    sheet: { layer, id, title, summary, kinds, needs, asks, sections: set, brokenNames: composer.brokenNames },
    faults,
  };
}

interface RowsToAdd {
  readonly rows: readonly RowFile[];
  readonly path: string;
}

class Composer {
  readonly faults: SheetFault[] = [];
  readonly sets: PlacedSet[] = [];
  readonly brokenNames: string[] = [];
  private readonly parts: ReadonlyMap<string, SheetFile>;
  private readonly placed: ComposedSection[] = [];
  private readonly used = new Set<string>();
  private readonly rowsFor = new Map<string, RowsToAdd[]>();

  constructor(parts: ReadonlyMap<string, SheetFile>) {
    this.parts = parts;
  }

  take(file: SheetFile, part: string | undefined): void {
    this.brokenNames.push(...file.brokenNames);
    const inFile = (path: string): string => `${file.layer} ${file.id}: ${path}`;
    for (const section of file.sections) {
      // That a part uses no parts was told when it was read.
      if (section.kind === 'use' && file.layer === 'system') this.use(section.use, section.set, inFile(section.path));
      else if (section.kind === 'rows')
        this.addRows(section.rowsFor, { rows: section.rows, path: inFile(section.path) });
      else if (section.kind === 'own') {
        const lines = section.lines.map(({ line, path }): PlacedLine => ({ line, path: inFile(path) }));
        const tables = section.tables.map((table): PlacedTable => ({ table, path: inFile(table.path), rows: [] }));
        this.placed.push({
          id: section.id,
          title: section.title,
          note: section.note,
          for: section.for,
          part,
          lines,
          tables,
        });
      }
    }
  }

  /**
   * The placed sections with every row in its table, in list order. A part alone may add rows to a table that another
   * part brings; the others are checked when a system places them together.
   */
  sections(layer: Layer): ComposedSection[] {
    const known = new Set<string>();
    const sections = this.placed.map((section) => ({
      ...section,
      tables: section.tables.map((placed) => {
        known.add(placed.table.name);
        return { ...placed, rows: this.rowsOf(placed) };
      }),
    }));
    for (const [table, added] of this.rowsFor) {
      if (known.has(table) || this.brokenNames.includes(table) || layer === 'part') continue;
      const near = nearestName(table, known);
      const hint = didYouMean(near);
      for (const { path } of added) this.fault(`${path}.rowsFor`, `There is no table “${table}” in this sheet.${hint}`);
    }
    return sections;
  }

  private use(id: string, set: PlacedSet['set'], path: string): void {
    const part = this.parts.get(id);
    if (part === undefined) {
      const near = nearestName(id, this.parts.keys());
      this.fault(`${path}.use`, `There is no part “${id}”.${didYouMean(near)}`);
    } else if (this.used.has(id)) this.fault(`${path}.use`, `The part “${id}” is used already.`);
    else {
      this.used.add(id);
      this.sets.push({ set, path });
      this.take(part, id);
    }
  }

  private addRows(table: string, rows: RowsToAdd): void {
    this.rowsFor.set(table, [...(this.rowsFor.get(table) ?? []), rows]);
  }

  private rowsOf({ table, path }: PlacedTable): PlacedRow[] {
    const added = this.rowsFor.get(table.name) ?? [];
    if (table.rows === 'gathered' && (added.length > 0 || table.start.length > 0)) {
      this.fault(path, `The rows of ${table.name} are gathered from products; none can be added.`);
      return [];
    }
    const groups = [
      { rows: table.start, path: `${path}.start` },
      ...added.map((rows) => ({ ...rows, path: `${rows.path}.rows` })),
    ];
    const rows = groups.flatMap((group) => group.rows.map((cells, at) => ({ cells, path: `${group.path}[${at}]` })));
    if (rows.length > sheetLimits.rowsPerTable)
      this.fault(path, `A table has at most ${sheetLimits.rowsPerTable} rows.`);
    return this.identified(table, rows);
  }

  private identified(table: TableFile, given: readonly Omit<PlacedRow, 'id'>[]): PlacedRow[] {
    const key = table.columns.find((column) => column.kind === 'key')?.name;
    const rows = key === undefined || table.rows !== 'free' ? given : withRowCodes(given, key);
    const seen = new Map<string, string>();
    return rows.map((row, at) => {
      const code = key === undefined ? undefined : ownValue(row.cells, key);
      const id = typeof code === 'string' ? code : `row_${at + 1}`;
      if (key !== undefined && code === undefined) this.fault(row.path, `The row lacks its key “${key}”.`);
      else if (key !== undefined && (typeof code !== 'string' || !isCode(code)))
        this.fault(`${row.path}.${key}`, whyNoName(code, table.rows === 'free'));
      const before = seen.get(id);
      if (before !== undefined)
        this.fault(row.path, `There are two rows “${id}” in ${table.name}; the other is ${before}.`);
      seen.set(id, row.path);
      return { ...row, id };
    });
  }

  private fault(path: string, reason: string): void {
    this.faults.push({ path, reason });
  }
}

function whyNoName(given: RowCell | undefined, peopleName: boolean): string {
  if (!peopleName) return 'A key is a code: lower-case letters, digits and underscores.';
  const refusal = typeof given === 'string' ? rowNameRefusal(given) : undefined;
  return refusal ?? 'A row is called by a code, or by a word or two.';
}
