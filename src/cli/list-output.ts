import { writtenLine } from '../quote/option-results.ts';
import type { CompiledLine, CompiledTable } from '../template/compiled-stack.ts';
import type { ColumnFile } from '../template/line-schema.ts';
import type { SheetFile } from '../template/sheet-schema.ts';
import { mostWritten } from '../template/written-text.ts';
import { dateText } from '../units/serial-day.ts';
import { lineIn } from './option-cells.ts';
import type { PricedSystem } from './price-systems.ts';
import { layTable, wrap } from './text-layout.ts';

/** The systems there are. */
export function systemList(systems: Iterable<SheetFile>): string {
  const lines = [...systems].flatMap(({ id, title, summary }) => [
    ...wrap(`${title}`, `  ${id}  `),
    ...(summary === undefined ? [] : wrap(summary, '      ')),
  ]);
  return `SYSTEMS\n${lines.join('\n')}\n`;
}

/** What may be set: the entries of shop, floor and each system, and their tables with the keys of their rows. */
export function entryList(systems: readonly PricedSystem[]): string {
  const [first] = systems;
  const places = [
    ...(first === undefined ? [] : [placeLines(first, 'shop', 'shop'), placeLines(first, 'floor', 'floor')]),
    ...systems.map((system) => placeLines(system, 'system', system.sheet.id)),
  ];
  return `${places.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function placeLines(system: PricedSystem, layer: 'shop' | 'floor' | 'system', where: string): string[] {
  const { stack } = system.results;
  const rows = [...stack.lines.values()].flatMap((line) =>
    line.layer === layer && isEntered(line.definition.kind) ? [entryRow(system, line, where)] : [],
  );
  const tables = [...stack.tables.values()].filter((table) => table.layer === layer);
  return [
    ...layTable(
      [
        { heading: 'name', align: 'left' },
        { heading: 'value', align: 'right' },
        { heading: 'unit or choices', align: 'left' },
        { heading: 'where', align: 'left' },
      ],
      rows,
    ),
    ...tables.flatMap((table) => tableLines(system, table, where)),
  ];
}

/** Values as --set takes them: dates as ISO text, shares as fractions. */
function entryRow({ results }: PricedSystem, { definition }: CompiledLine, where: string): string[] {
  if (definition.kind === 'words')
    return [definition.name, writtenLine(results, definition.name), unitOrChoices(definition), where];
  const value = lineIn(results, definition.name)?.value;
  const isDate = definition.kind === 'entry' && definition.unit === 'date';
  const shown = isDate && typeof value === 'number' ? dateText(value) : String(value);
  return [definition.name, shown, unitOrChoices(definition), where];
}

function tableLines({ results }: PricedSystem, table: CompiledTable, where: string): string[] {
  const { name, rows } = table.definition;
  const keys = (results.option.rows.get(name) ?? []).map(({ id }) => id);
  const columns = [...table.columns.values()].filter(({ definition }) => isEntered(definition.kind));
  const words = { free: 'rows may be given', fixed: 'fixed rows', gathered: 'rows gathered' } as const;
  return [
    '',
    ...wrap(`${where}, ${words[rows]}`, `  ${name}  `),
    ...wrap(keys.length === 0 ? 'none' : keys.join(', '), '    rows     '),
    ...wrap(
      columns.length === 0
        ? 'none: it is worked out'
        : columns.map(({ definition }) => `${definition.name} (${unitOrChoices(definition)})`).join(', '),
      '    columns  ',
    ),
  ];
}

function isEntered(kind: ColumnFile['kind'] | CompiledLine['definition']['kind']): boolean {
  return kind === 'entry' || kind === 'choice' || kind === 'product' || kind === 'words';
}

function unitOrChoices(definition: ColumnFile | CompiledLine['definition']): string {
  switch (definition.kind) {
    case 'entry':
      if ('unitBy' in definition && definition.unitBy !== undefined)
        return Object.entries(definition.unitBy.units)
          .map(([code, unit]) => `${unit} for ${code}`)
          .join('; ');
      return definition.yesNo === true ? '1 or 0' : (definition.unit ?? '');
    case 'choice':
      return definition.options.map(({ code }) => code).join(' | ');
    case 'product':
      return `product: ${definition.accepts.join(' | ')}`;
    case 'words':
      return `words, at most ${mostWritten} characters`;
    default:
      return '';
  }
}
