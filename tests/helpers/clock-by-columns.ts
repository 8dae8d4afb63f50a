import { readFileSync } from 'node:fs';
import * as z from 'zod';
import type { ColumnFile } from '../../src/template/line-schema.ts';
import { readSheetValue } from '../../src/template/read-sheet.ts';
import type { SheetFile, TableFile } from '../../src/template/sheet-schema.ts';
import { repository } from './repository-files.ts';
import { keepOverParts } from './shipped-stacks.ts';

const clockColumns = z.object({ of: z.string(), columns: z.array(z.object({ name: z.string() }).loose()) });
const written = clockColumns.parse(
  JSON.parse(readFileSync(`${repository}/templates/parts/hours/clock-columns.json`, 'utf8')),
);

/** The name of a shipped system whose crew's day is worked out by columns of formulas in place of the operator. */
export function byColumnsOf(system: string): string {
  const name = `${system} by columns`;
  keepOverParts(name, system, (parts) => new Map([...parts].map(withColumns)));
  return name;
}

function withColumns([id, part]: readonly [string, SheetFile]): [string, SheetFile] {
  const sections = part.sections.map((section) =>
    section.kind === 'own' ? { ...section, tables: section.tables.map(byColumns) } : section,
  );
  return [id, { ...part, sections }];
}

function byColumns(table: TableFile): TableFile {
  if (table.name !== written.of) return table;
  const { by: _, ...rest } = table;
  const formulas = formulaColumns();
  const own = table.columns.map((column) => formulas.get(column.name) ?? column);
  const more = [...formulas.values()].filter(({ name }) => !own.some((column) => column.name === name));
  return { ...rest, columns: [...own, ...more] };
}

/** The columns of the file, read as those of a sheet are. */
function formulaColumns(): Map<string, ColumnFile> {
  const table = {
    name: written.of,
    title: '',
    rows: 'free',
    columns: written.columns.map((column) => ({ label: '', ...column })),
  };
  const sheet = {
    format: 'spreadrate.sheet',
    version: 1,
    layer: 'part',
    id: 'clock',
    title: '',
    sections: [{ id: 'clock', title: '', tables: [table] }],
  };
  const read = readSheetValue(sheet);
  if (read.faults.length > 0) throw new Error(JSON.stringify(read.faults));
  const [section] = read.sheet?.sections ?? [];
  const columns = section?.kind === 'own' ? (section.tables[0]?.columns ?? []) : [];
  return new Map(columns.map((column) => [column.name, column]));
}
