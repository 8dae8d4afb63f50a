import { type CheckedFormula, checkFormula } from '../../src/formula/check.ts';
import type { ValueType } from '../../src/formula/checked-tree.ts';
import { parseFormula } from '../../src/formula/parser.ts';
import type { Scope, ScopeColumn, ScopeTable } from '../../src/formula/scope.ts';
import type { Expression } from '../../src/formula/tree.ts';
import { parseUnit } from '../../src/units/unit.ts';

/** A unit as text, the codes of a choice, or the kinds of a product. */
export type Kind = string | { readonly codes?: readonly string[] } | { readonly products: readonly string[] };

export interface ScopeParts {
  readonly lines?: Readonly<Record<string, Kind>>;
  readonly tables?: Readonly<Record<string, Readonly<Record<string, Kind>>>>;
  /** Fields of products, each with the kinds that have it. */
  readonly fields?: Readonly<Record<string, { readonly unit: string; readonly kinds: readonly string[] }>>;
  readonly ownTable?: string;
  readonly mayReadAbove?: boolean;
}

function typeOf(kind: Kind): ValueType {
  if (typeof kind !== 'string') return { kind: 'code', ...kind };
  const read = parseUnit(kind);
  if (read.kind === 'fault') throw new Error(read.reason);
  return { kind: 'number', unit: read.unit };
}

export function scopeOf({ lines = {}, tables = {}, fields = {}, ownTable, mayReadAbove = true }: ScopeParts): Scope {
  const lineTypes = new Map(Object.entries(lines));
  const tableTypes = new Map(Object.entries(tables).map(([name, columns]) => [name, new Map(Object.entries(columns))]));
  const fieldTypes = new Map(Object.entries(fields));
  const columnOf = (kind: Kind | undefined): ScopeColumn | undefined =>
    kind === undefined ? undefined : { kind: 'column', type: typeOf(kind) };
  const tableOf = (columns: ReadonlyMap<string, Kind>): ScopeTable => ({
    column: (name) => columnOf(columns.get(name)),
    columnNames: [...columns.keys()],
  });
  return {
    line: (name) => {
      const kind = lineTypes.get(name);
      return kind === undefined ? undefined : { kind: 'line', type: typeOf(kind) };
    },
    table: (name) => {
      const columns = tableTypes.get(name);
      return columns && tableOf(columns);
    },
    ...(ownTable !== undefined && { ownTable }),
    mayReadAbove,
    productField: (kinds, name) => {
      const field = fieldTypes.get(name);
      if (field === undefined) return { kind: 'unknown', fields: [...fieldTypes.keys()] };
      const lacking = kinds.filter((kind) => !field.kinds.includes(kind));
      return lacking.length > 0 ? { kind: 'lacking', kinds: lacking } : { kind: 'field', type: typeOf(field.unit) };
    },
    names: () => [...lineTypes.keys(), ...tableTypes.keys()],
  };
}

/** The tree of a formula that must be readable. */
export function treeOf(text: string): Expression {
  const parsed = parseFormula(text);
  if (parsed.kind === 'fault') throw new Error(`${text}: ${parsed.fault.reason}`);
  return parsed.tree;
}

export function checked(text: string, parts: ScopeParts): CheckedFormula {
  return checkFormula(treeOf(text), scopeOf(parts));
}

/** The reasons a formula is refused for, in telling order; a formula that cannot be read has one. */
export function reasons(text: string, parts: ScopeParts): string[] {
  const parsed = parseFormula(text);
  if (parsed.kind === 'fault') return [parsed.fault.reason];
  return checkFormula(parsed.tree, scopeOf(parts)).faults.map((fault) => fault.reason);
}
