import { didYouMean } from '../units/nearest-word.ts';
import { columnName } from './cell-name.ts';
import type { Checked, ValueType } from './checked-tree.ts';
import type { FormulaFault } from './fault.ts';
import { nearestName } from './nearest-name.ts';
import type { Scope, ScopeColumn } from './scope.ts';
import type { Expression, Span } from './tree.ts';

/** Finds what a name, `table.column`, `product.field`, `above.column` or `above(column)` means in a scope. */
export interface NameResolver {
  name(expression: Extract<Expression, { kind: 'name' }>): Checked;
  member(expression: Extract<Expression, { kind: 'member' }>): Checked;
  allAbove(expression: Extract<Expression, { kind: 'allAbove' }>): Checked;
}

/** How many unknown names of one formula are told with the nearest known one: looking takes time, and more help nobody. */
const mostHints = 3;

type CheckedCell = Extract<Checked, { kind: 'cell' }>;

export function resolverOf(scope: Scope, report: (fault: FormulaFault) => void): NameResolver {
  return new ScopeNames(scope, report);
}

class ScopeNames implements NameResolver {
  private readonly scope: Scope;
  private readonly report: (fault: FormulaFault) => void;
  private hints = 0;

  constructor(scope: Scope, report: (fault: FormulaFault) => void) {
    this.scope = scope;
    this.report = report;
  }

  name({ name, span }: Extract<Expression, { kind: 'name' }>): Checked {
    return this.cell(name, 'same', span) ?? this.line(name, span);
  }

  member({ of, member, span }: Extract<Expression, { kind: 'member' }>): Checked {
    if (of === 'above') return this.oneAbove(member, span);
    const table = this.scope.table(of);
    if (table === undefined) return this.field(this.cell(of, 'same', span) ?? this.line(of, span), member, span);
    if (table.tooHigh !== undefined) return this.refuse(span, tooHigh(of, table.tooHigh));
    const column = table.column(member);
    if (column === undefined) return this.refuse(span, this.unknownColumn(member, of));
    return this.range(of, member, 'all', column, span);
  }

  allAbove({ column: name, span }: Extract<Expression, { kind: 'allAbove' }>): Checked {
    const { scope } = this;
    const refusal = aboveRefusal(scope);
    if (refusal !== undefined || scope.ownTable === undefined) return this.refuse(span, refusal ?? '');
    const column = this.ownColumn(name);
    if (column === undefined) return this.refuse(span, this.unknownColumn(name, scope.ownTable));
    return this.range(scope.ownTable, name, 'above', column, span);
  }

  private oneAbove(member: string, span: Span): Checked {
    const refusal = aboveRefusal(this.scope);
    if (refusal !== undefined) return this.refuse(span, refusal);
    return this.cell(member, 'above', span) ?? this.refuse(span, this.unknownColumn(member, this.scope.ownTable ?? ''));
  }

  private ownColumn(name: string): ScopeColumn | undefined {
    const { ownTable } = this.scope;
    return ownTable === undefined ? undefined : this.scope.table(ownTable)?.column(name);
  }

  private cell(name: string, row: CheckedCell['row'], span: Span): Checked | undefined {
    const column = this.ownColumn(name);
    if (column === undefined || this.scope.ownTable === undefined) return undefined;
    if (column.kind === 'unreadable') return this.refuse(span, cannotRead(name, column.what));
    if (column.kind === 'mixedUnits' && row === 'above') {
      const reason = `The row above may have another unit in ${name}, so it cannot be read from here.`;
      return this.refuse(span, reason, 'type');
    }
    return { kind: 'cell', table: this.scope.ownTable, column: name, row, type: column.type, span };
  }

  private range(table: string, name: string, rows: 'all' | 'above', column: ScopeColumn, span: Span): Checked {
    if (column.kind === 'unreadable') return this.refuse(span, cannotRead(columnName(table, name), column.what));
    if (column.kind === 'mixedUnits') {
      const reason = `The rows of ${columnName(table, name)} have different units, so the column cannot be read as a whole.`;
      return this.refuse(span, reason, 'type');
    }
    return { kind: 'range', table, column: name, rows, type: column.type, span };
  }

  private line(name: string, span: Span): Checked {
    const line = this.scope.line(name);
    if (line === undefined) return this.refuse(span, this.unknownName(name));
    if (line.kind === 'tooHigh') return this.refuse(span, tooHigh(name, line.stands));
    if (line.kind === 'unreadable') return this.refuse(span, cannotRead(name, line.what));
    return { kind: 'line', name, type: line.type, span };
  }

  private field(product: Checked, name: string, span: Span): Checked {
    const { kind, type } = product;
    if (type.kind === 'faulty') return faultyNode(span);
    if ((kind !== 'line' && kind !== 'cell') || type.kind !== 'code' || !type.products)
      return this.refuse(span, 'Only a product has fields.');
    const found = this.scope.productField(type.products, name);
    if (found.kind === 'field') return { kind: 'productField', product, field: name, type: found.type, span };
    const reason =
      found.kind === 'unknown'
        ? `Products have no field “${name}”.${this.meant(name, found.fields)}`
        : `Products of the kind ${found.kinds.join(', ')} have no field “${name}”.`;
    return this.refuse(span, reason);
  }

  private unknownName(name: string): string {
    const table = this.scope.table(name);
    if (table === undefined) return `There is nothing called “${name}”.${this.meant(name, this.scope.names())}`;
    const [column = 'column'] = table.columnNames;
    return `“${name}” is a table. Name one of its columns, as in SUM(${columnName(name, column)}).`;
  }

  private unknownColumn(column: string, table: string): string {
    const columns = this.scope.table(table)?.columnNames ?? [];
    return `The table “${table}” has no column “${column}”.${this.meant(column, columns)}`;
  }

  private meant(word: string, candidates: Iterable<string>): string {
    if (this.hints >= mostHints) return '';
    this.hints += 1;
    return didYouMean(nearestName(word, candidates));
  }

  private refuse(at: Span, reason: string, kind: FormulaFault['kind'] = 'name'): Checked {
    this.report({ kind, at, reason });
    return faultyNode(at);
  }
}

export function faultyNode(span: Span): Checked {
  return { kind: 'number', value: 0, type: faulty, span };
}

const faulty: ValueType = { kind: 'faulty' };

function aboveRefusal(scope: Scope): string | undefined {
  if (scope.ownTable === undefined) return '“above” stands only in a column of a table.';
  return scope.mayReadAbove ? undefined : '“above” cannot stand here: the first row has none above it.';
}

function tooHigh(name: string, stands: string): string {
  return `“${name}” stands in the ${stands} sheet, which lies above this one. A formula reads its own sheet and what lies below it.`;
}

function cannotRead(name: string, what: string): string {
  return `“${name}” is ${what}, which no formula reads.`;
}
