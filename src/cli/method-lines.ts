import type { ColumnFile, LineFile } from '../template/line-schema.ts';
import { mostWritten, notSaid } from '../template/written-text.ts';
import { formatForTyping } from '../units/format.ts';
import { dateText, serialDay } from '../units/serial-day.ts';
import { one, parseUnit, prettyUnit, type Unit } from '../units/unit.ts';
import { code, words } from './markdown.ts';

type Definition = LineFile | ColumnFile;
type Entry = Extract<Definition, { kind: 'entry' }>;

const headings = [
  'What',
  'Name',
  'Kinds',
  'Value or formula',
  'Unit',
  'Low – high',
  'Limits',
  'Says',
  'Source and notes',
] as const;

/** The headings of a table of lines or columns, as `definitionRow` fills them. */
export const definitionHeadings: readonly string[] = headings;

/** One line or column as a row of a table: what it holds and where that comes from. */
export function definitionRow(definition: Definition): string[] {
  const { name, label, source, note } = definition;
  const cells: Record<(typeof headings)[number], string> = {
    What: words(label) + ('result' in definition && definition.result === true ? ' (result)' : ''),
    Name: code(name),
    Kinds: 'kinds' in definition ? (definition.kinds ?? []).map(code).join(', ') : '',
    'Value or formula': heldIn(definition),
    Unit: unitOf(definition),
    'Low – high': definition.kind === 'entry' ? rangeOf(definition) : '',
    Limits: definition.kind === 'entry' ? limitsOf(definition) : '',
    Says: saysOf(definition),
    'Source and notes': [source, note].flatMap((text) => (text === undefined ? [] : words(text))).join('. '),
  };
  return headings.map((heading) => cells[heading]);
}

/** A number in its unit as it would be typed, all its digits: shares in percent, dates as ISO text; a code as code. */
export function valueText(value: number | string, unit: string | undefined): string {
  if (typeof value === 'number') return formatForTyping(value, readUnit(unit ?? '1'));
  if (unit !== 'date') return code(value);
  const day = serialDay(value);
  return day === undefined ? words(value) : dateText(day);
}

/** `ft²/gal`; empty for a plain number. */
export function unitWords(unit: string | undefined): string {
  if (unit === undefined || unit === '1') return '';
  return unit === 'date' ? 'date' : prettyUnit(readUnit(unit));
}

/** A unit that cannot be read is told when the sheet is compiled; here its number is shown plain. */
function readUnit(text: string): Unit {
  const read = parseUnit(text);
  return read.kind === 'unit' ? read.unit : one;
}

function heldIn(definition: Definition): string {
  switch (definition.kind) {
    case 'entry':
      return enteredOf(definition);
    case 'choice':
      return [
        standardOf(definition),
        `of ${definition.options.map((option) => `${code(option.code)} ${words(option.label)}`).join(', ')}`,
      ].join(' ');
    case 'product':
      return `${standardOf(definition)} of the kinds ${definition.accepts.map(code).join(', ')}`;
    case 'formula':
    case 'check': {
      const formula = code(definition.kind === 'formula' ? definition.formula : definition.check);
      const first = 'first' in definition ? definition.first : undefined;
      return first === undefined ? formula : `${formula}, in the first row ${code(first)}`;
    }
    case 'operated':
      return `from the ${definition.by}`;
    case 'text':
      return 'when' in definition && definition.when !== undefined ? `while ${code(definition.when)}` : '';
    case 'words':
      return definition.words === '' ? writtenBy : `${words(definition.words)}, ${writtenBy}`;
    case 'key':
      return 'the row’s code';
    default:
      return definition satisfies never;
  }
}

const writtenBy = `what a person writes, ${mostWritten} characters at most`;

function enteredOf(definition: Entry): string {
  const value = 'value' in definition ? definition.value : definition.default;
  const own = 'perRow' in definition && definition.perRow === true ? 'the row’s value or formula' : 'each row’s own';
  if (value === undefined) return own;
  const shown = definition.yesNo === true ? (value === 1 ? 'yes' : 'no') : valueText(value, definition.unit);
  return 'perRow' in definition && definition.perRow === true ? `${shown}, or ${own}` : shown;
}

function standardOf(definition: Extract<Definition, { kind: 'choice' | 'product' }>): string {
  const value = 'value' in definition ? definition.value : definition.default;
  return value === undefined ? 'each row’s own,' : `${code(value)},`;
}

function unitOf(definition: Definition): string {
  switch (definition.kind) {
    case 'entry': {
      const by = 'unitBy' in definition ? definition.unitBy : undefined;
      if (by === undefined) return definition.yesNo === true ? 'yes or no' : unitWords(definition.unit);
      const cases = Object.entries(by.units).map(([option, unit]) => `${unitWords(unit) || '1'} for ${code(option)}`);
      return cases.join(', ');
    }
    case 'formula':
      return definition.code === true ? 'code' : unitWords(definition.unit);
    case 'operated':
      return definition.unit === undefined ? 'code' : unitWords(definition.unit);
    default:
      return '';
  }
}

function rangeOf({ low, likely, high, unit }: Entry): string {
  const shown = (value: number | undefined): string => (value === undefined ? '…' : valueText(value, unit));
  const likelyWords = likely === undefined ? '' : `, likely ${shown(likely)}`;
  return low === undefined && high === undefined
    ? likelyWords.slice(2)
    : `${shown(low)} – ${shown(high)}${likelyWords}`;
}

function limitsOf({ limits, whole, unit }: Entry): string {
  const [least, most] = limits ?? [];
  const span = least === undefined || most === undefined ? '' : `${valueText(least, unit)} – ${valueText(most, unit)}`;
  return [span, ...(whole === true ? ['whole'] : [])].filter((text) => text !== '').join(', ');
}

function saysOf(definition: Definition): string {
  if (definition.kind === 'text') return words(definition.text);
  if (definition.kind === 'words') return `while nothing is written: ${words(definition.unsaid ?? notSaid)}`;
  if (definition.kind !== 'check') return '';
  const wayRound = definition.absolute === true ? ' (no way round)' : '';
  return `${definition.severity}${wayRound}: ${words(definition.say)}`;
}
