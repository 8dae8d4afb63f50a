import type * as z from 'zod/mini';
import { parseCellName } from '../formula/cell-name.ts';
import { tellMisplaced } from './layer-rules.ts';
import { type ColumnFile, columnSchemas, columnShapeOf, type LineFile, lineSchemas, shapeOf } from './line-schema.ts';
import { reportIssues } from './schema-faults.ts';
import { type FaultReporter, type SheetFault, tellOnce } from './sheet-fault.ts';
import { readJson, sheetLimits } from './sheet-limits.ts';
import {
  type LineAt,
  ownSectionFrame,
  rowsSection,
  type SectionFile,
  type SheetFile,
  sheetFrame,
  type TableFile,
  tableFrame,
  useSection,
} from './sheet-schema.ts';

export interface ReadSheet {
  /** Undefined when not even the frame of the file could be read. Faulty lines are left out, and told. */
  readonly sheet: SheetFile | undefined;
  readonly faults: readonly SheetFault[];
}

/** Reads the text of a sheet file. Every fault of its shape comes at once, each with its path. */
export function readSheet(text: string): ReadSheet {
  const json = readJson(text);
  if (json.kind === 'fault') return { sheet: undefined, faults: [{ path: '', reason: json.reason }] };
  return readSheetValue(json.value);
}

/** The same for JSON that is parsed already (templates bundled with the app). */
export function readSheetValue(value: unknown): ReadSheet {
  const faults: SheetFault[] = [];
  const reader = new SheetReader(tellOnce(faults), 'checked');
  return { sheet: reader.sheet(value), faults };
}

/** The same for a sheet that was read without a fault when the app was built: its shape is not looked at again. */
export function readBuiltSheet(value: unknown): ReadSheet {
  const faults: SheetFault[] = [];
  return { sheet: new SheetReader(tellOnce(faults), 'trusted').sheet(value), faults };
}

class SheetReader {
  private readonly report: FaultReporter;
  private readonly brokenNames: string[] = [];
  private lines = 0;
  private columns = 0;
  private readonly shapes: 'checked' | 'trusted';

  constructor(report: FaultReporter, shapes: 'checked' | 'trusted') {
    this.report = report;
    this.shapes = shapes;
  }

  sheet(value: unknown): SheetFile | undefined {
    const frame = this.shape(sheetFrame, value, '');
    if (frame === undefined) {
      this.each(value, 'sections', sheetLimits.sections, (section, at) => this.section(section, `sections[${at}]`));
      return undefined;
    }
    const sections = frame.sections.flatMap((section, at) => this.section(section, `sections[${at}]`) ?? []);
    if (this.lines > sheetLimits.lines) this.report('sections', `A sheet has at most ${sheetLimits.lines} lines.`);
    if (this.columns > sheetLimits.columns)
      this.report('sections', `The tables of a sheet have at most ${sheetLimits.columns} columns.`);
    const { format: _, version: __, ...rest } = frame;
    const sheet = {
      ...rest,
      kinds: frame.kinds ?? [],
      needs: frame.needs ?? [],
      asks: frame.asks ?? [],
      sections,
      brokenNames: this.brokenNames,
    };
    if (this.shapes === 'checked') tellMisplaced(sheet, this.report);
    return sheet;
  }

  private section(value: unknown, path: string): SectionFile | undefined {
    if (isObject(value) && 'use' in value) {
      const use = this.shape(useSection, value, path);
      return use && { kind: 'use', use: use.use, set: use.set ?? {}, path };
    }
    if (isObject(value) && 'rowsFor' in value) {
      const rows = this.shape(rowsSection, value, path);
      return rows && { kind: 'rows', ...rows, path };
    }
    const own = this.shape(ownSectionFrame, value, path);
    if (own === undefined) return this.brokenSection(value, path);
    const lines = (own.lines ?? []).flatMap((line, at) => this.line(line, `${path}.lines[${at}]`) ?? []);
    const tables = (own.tables ?? []).flatMap((table, at) => this.table(table, `${path}.tables[${at}]`) ?? []);
    return { kind: 'own', id: own.id, title: own.title, note: own.note, for: own.for, lines, tables };
  }

  /** The lines and tables of a section whose frame is wrong are looked at, and known by name. */
  private brokenSection(value: unknown, path: string): undefined {
    this.each(value, 'lines', sheetLimits.lines, (line, at) => {
      if (this.line(line, `${path}.lines[${at}]`) !== undefined) this.broken(line);
    });
    this.each(value, 'tables', sheetLimits.sections, (table, at) => {
      if (this.table(table, `${path}.tables[${at}]`) !== undefined) this.broken(table);
    });
    return undefined;
  }

  private line(value: unknown, path: string): LineAt | undefined {
    this.lines += 1;
    if (this.lines > sheetLimits.lines) return this.broken(value);
    if (!isObject(value)) return this.notAnObject(path);
    const kind = shapeOf(value);
    const line = this.shape(lineSchemas[kind], value, path);
    if (line === undefined) return this.broken(value);
    return { line: { kind, ...line } as LineFile, path };
  }

  private table(value: unknown, path: string): TableFile | undefined {
    const frame = this.shape(tableFrame, value, path);
    if (frame === undefined) {
      this.each(value, 'columns', sheetLimits.lines, (column, at) => this.column(column, `${path}.columns[${at}]`));
      return this.broken(value);
    }
    this.columns += frame.columns.length;
    if (this.columns > sheetLimits.columns) return this.broken(frame);
    const columns = frame.columns.flatMap((column, at) => this.column(column, `${path}.columns[${at}]`) ?? []);
    if (columns.length < frame.columns.length) return this.broken(frame);
    if ((frame.rows === undefined) === (frame.gather === undefined)) {
      this.report(path, 'A table has either “rows” or “gather”.');
    }
    return {
      ...frame,
      rows: frame.gather === undefined ? (frame.rows ?? 'free') : 'gathered',
      gather: (frame.gather ?? []).map(parseCellName).filter((name) => name?.kind === 'column'),
      min: frame.min ?? 0,
      columns,
      newRow: frame.newRow ?? {},
      brings: frame.brings ?? [],
      start: frame.start ?? [],
      path,
    };
  }

  private column(value: unknown, path: string): ColumnFile | undefined {
    if (!isObject(value)) return this.notAnObject(path);
    const kind = columnShapeOf(value);
    const column = this.shape(columnSchemas[kind], value, path);
    if (kind === 'rowChoice') return column && ({ kind: 'choice', ...column, options: [] } as ColumnFile);
    return column && ({ kind, ...column } as ColumnFile);
  }

  private shape<S extends z.ZodMiniObject>(schema: S, value: unknown, path: string): z.infer<S> | undefined {
    // What the schema would give is the value itself: no schema of a sheet changes what it reads.
    if (this.shapes === 'trusted') return value as z.infer<S>;
    const read = schema.safeParse(value, { reportInput: true });
    if (read.success) return read.data;
    reportIssues(path, read.error.issues, Object.keys(schema.shape), this.report);
    return undefined;
  }

  private each(value: unknown, list: string, most: number, see: (item: unknown, at: number) => void): void {
    const items = isObject(value) ? Object.entries(value).find(([name]) => name === list)?.[1] : undefined;
    if (Array.isArray(items)) items.slice(0, most).forEach(see);
  }

  private broken(value: unknown): undefined {
    if (isObject(value) && 'name' in value && typeof value.name === 'string') this.brokenNames.push(value.name);
    return undefined;
  }

  private notAnObject(path: string): undefined {
    this.report(path, 'An object is wanted here.');
    return undefined;
  }
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
