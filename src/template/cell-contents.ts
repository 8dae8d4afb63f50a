import type { CellContent } from '../formula/cells.ts';
import type { ValueType } from '../formula/checked-tree.ts';
import { isCode } from '../formula/code-text.ts';
import type { Scope } from '../formula/scope.ts';
import { serialDay } from '../units/serial-day.ts';
import type { FormulaReader } from './compile-formula.ts';
import type { ColumnCase, CompiledColumn, CompiledLine } from './compiled-stack.ts';
import type { GivenValue } from './entries.ts';
import type { ColumnFile, LineFile, RowCell } from './line-schema.ts';
import { ownValue } from './own-value.ts';
import type { FaultReporter } from './sheet-fault.ts';
import type { StandingRow } from './table-rows.ts';

type EntryLike = Extract<LineFile, { kind: 'entry' }> | Extract<ColumnFile, { kind: 'entry' }>;

/** What stands in the cells of lines and rows: a value or a formula, each value checked against what it may be. */
export class CellContents {
  private readonly report: FaultReporter;
  private readonly reader: FormulaReader;
  private readonly accepts: (product: string, kinds: readonly string[]) => string | undefined;

  constructor(
    report: FaultReporter,
    reader: FormulaReader,
    accepts: (product: string, kinds: readonly string[]) => string | undefined,
  ) {
    this.report = report;
    this.reader = reader;
    this.accepts = accepts;
  }

  /** Undefined for free text, which no formula reads, and for what was refused. */
  ofLine(line: CompiledLine, given: GivenValue | undefined): CellContent | undefined {
    const { definition, tree, path } = line;
    switch (definition.kind) {
      case 'text':
      case 'words':
        return undefined;
      case 'formula':
      case 'check':
        if (given?.kind === 'instead') return this.departure(definition, given.value, path);
        if (tree?.kind === 'number') return number(tree.value);
        return tree && { kind: 'formula', tree };
      default:
        if (given?.kind === 'written') return this.noWords(definition.name, path);
        return this.value(given?.value ?? definition.value, definition, definition.name, path);
    }
  }

  ofCell(
    column: CompiledColumn,
    one: ColumnCase,
    row: StandingRow,
    place: number,
    scope: Scope,
  ): CellContent | undefined {
    const { definition } = column;
    const path = `${row.path}.${definition.name}`;
    const given = row.given.get(definition.name);
    switch (definition.kind) {
      case 'text':
      case 'words':
        return undefined;
      case 'formula':
      case 'check': {
        if (given?.kind === 'instead') return this.departure(definition, given.value, path);
        const tree = place === 0 && one.first !== undefined ? one.first : one.tree;
        return tree && { kind: 'formula', tree };
      }
      case 'operated':
        return { kind: 'result' };
      case 'key':
        return this.key(given?.value ?? ownValue(row.cells, definition.name), definition.name, path);
      default:
        if (given?.kind === 'written') return this.noWords(definition.name, path);
        return this.entered(
          definition,
          given?.value ?? ownValue(row.cells, definition.name) ?? definition.default,
          one.type,
          path,
          scope,
        );
    }
  }

  private entered(
    definition: Extract<ColumnFile, { kind: 'entry' | 'choice' | 'product' }>,
    cell: RowCell | undefined,
    type: ValueType,
    path: string,
    scope: Scope,
  ): CellContent | undefined {
    if (cell === undefined)
      return this.refuse(path, `“${definition.name}” is missing: the row gives none, and the column has no default.`);
    if (typeof cell !== 'object') return this.value(cell, definition, definition.name, path);
    if (definition.kind !== 'entry' || !definition.perRow)
      return this.refuse(path, `A row gives no formula for “${definition.name}”.`);
    const tree = this.reader.read(cell.formula, scope, type, path);
    return tree && { kind: 'formula', tree };
  }

  private key(value: RowCell | undefined, name: string, path: string): CellContent | undefined {
    if (typeof value !== 'string') return this.refuse(path, `“${name}” is missing: every row has its code.`);
    if (isCode(value)) return { kind: 'code', value };
    return this.refuse(path, `“${value}” is not a code: lower-case letters, digits and underscores.`);
  }

  private departure(
    definition: Extract<LineFile | ColumnFile, { kind: 'formula' | 'check' }>,
    value: number,
    path: string,
  ): CellContent | undefined {
    const { kind, name } = definition;
    if (kind === 'check') return this.refuse(path, `“${name}” is a check; no value stands in its place.`);
    if (definition.code) return this.refuse(path, `“${name}” is a code; no number stands in its place.`);
    return Number.isFinite(value) ? number(value) : this.refuse(path, `“${name}” must be a number.`);
  }

  private value(
    value: number | string,
    definition: EntryLike | Extract<LineFile | ColumnFile, { kind: 'choice' | 'product' }>,
    name: string,
    path: string,
  ): CellContent | undefined {
    if (definition.kind === 'choice') {
      const codes = definition.options.map((option) => option.code);
      if (typeof value === 'string' && codes.includes(value)) return { kind: 'code', value };
      return this.refuse(path, `“${value}” is not among the choices of “${name}”: ${codes.join(', ')}.`);
    }
    if (definition.kind === 'product') {
      const refusal =
        typeof value === 'string' ? this.accepts(value, definition.accepts) : 'The code of a product is wanted here.';
      return refusal === undefined && typeof value === 'string'
        ? { kind: 'code', value }
        : this.refuse(path, refusal ?? '');
    }
    if (typeof value === 'string' && definition.unit !== 'date')
      return this.refuse(path, `“${name}” is a number in ${definition.unit ?? 'its unit'}, not “${value}”.`);
    const asNumber = typeof value === 'string' ? serialDay(value) : value;
    const refusal =
      asNumber === undefined
        ? `“${value}” is no date; write it as 2026-05-31.`
        : entryRefusal(definition, name, asNumber);
    return refusal === undefined && asNumber !== undefined ? number(asNumber) : this.refuse(path, refusal ?? '');
  }

  private noWords(name: string, path: string): undefined {
    return this.refuse(path, `“${name}” takes no words.`);
  }

  private refuse(path: string, reason: string): undefined {
    this.report(path, reason);
    return undefined;
  }
}

/** Why an entry cannot hold this number, or undefined when it can; `say` writes a number of the entry's unit. */
export function entryRefusal(
  definition: EntryLike,
  name: string,
  value: number,
  say: (value: number) => string = String,
): string | undefined {
  if (!Number.isFinite(value)) return `“${name}” must be a number.`;
  const [least, most] = definition.limits ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (value < least || value > most)
    return `“${name}” must lie between ${say(least)} and ${say(most)}; ${say(value)} does not.`;
  if (definition.whole && !Number.isInteger(value)) return `“${name}” must be a whole number.`;
  if (definition.yesNo && value !== 0 && value !== 1) return `“${name}” is 1 for yes or 0 for no.`;
  return undefined;
}

function number(value: number): CellContent {
  return { kind: 'number', value };
}
