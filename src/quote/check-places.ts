import { cellName } from '../formula/cell-name.ts';
import type { CellPlace } from '../formula/cells.ts';
import { type CompiledTable, caseOf, type SayPiece } from '../template/compiled-stack.ts';
import type { OptionPlan, OptionRow } from '../template/plan.ts';
import type { Layer } from '../template/sheet-schema.ts';
import type { OptionResults } from './option-results.ts';

export type Severity = 'note' | 'caution' | 'stop';

/** A check of an option, wherever it stands. */
export interface CheckPlace {
  /** A line's name, or `table.row.column`. */
  readonly name: string;
  readonly label: string;
  readonly layer: Layer;
  readonly severity: Severity;
  /** A stop with no way round. */
  readonly absolute: boolean;
  /** Its words may be read by a customer, as those of every stop of the floor may. */
  readonly open: boolean;
  readonly source?: string;
  readonly cell: number;
  readonly place: CellPlace;
  /** What it says when it does not hold, with the row it says it of. */
  readonly say: readonly SayPiece[];
  readonly row?: string;
}

/** Only rows and columns make new ones, and those make a new plan. */
const known = new WeakMap<OptionPlan, readonly CheckPlace[]>();

/** Every check that a formula makes: lines, then columns, each in sheet order. */
export function checkPlaces(results: OptionResults): readonly CheckPlace[] {
  const kept = known.get(results.option);
  if (kept !== undefined) return kept;
  const tables = [...results.stack.tables.values()];
  const places = [...linePlaces(results), ...tables.flatMap((table) => columnPlaces(results, table))];
  known.set(results.option, places);
  return places;
}

function linePlaces({ stack, option }: OptionResults): CheckPlace[] {
  return [...stack.lines.values()].flatMap(({ definition, layer, say = [] }): CheckPlace[] => {
    const { name } = definition;
    const cell = option.plan.lines.get(name);
    if (definition.kind !== 'check' || cell === undefined) return [];
    return [{ ...described(definition), name, layer, cell, place: { kind: 'line', name }, say }];
  });
}

function columnPlaces({ option }: OptionResults, { definition, layer, columns }: CompiledTable): CheckPlace[] {
  const { name } = definition;
  const rows = option.rows.get(name) ?? [];
  return [...columns.values()].flatMap((column): CheckPlace[] => {
    const check = column.definition;
    if (check.kind !== 'check') return [];
    const cells = option.plan.tables.get(name)?.columns.get(check.name) ?? [];
    return cells.map((cell, at) => {
      const { id = '', label = '', unitCase = '' }: Partial<OptionRow> = rows[at] ?? {};
      return {
        ...described(check),
        name: cellName(name, id, check.name),
        layer,
        cell,
        place: { kind: 'cell', table: name, column: check.name, row: at },
        say: caseOf(column, unitCase)?.say ?? [],
        row: label,
      };
    });
  });
}

interface CheckDefinition {
  readonly label: string;
  readonly severity: Severity;
  readonly absolute?: boolean | undefined;
  readonly open?: boolean | undefined;
  readonly source?: string | undefined;
}

type Described = Pick<CheckPlace, 'label' | 'severity' | 'absolute' | 'open' | 'source'>;

function described({ label, severity, absolute, open, source }: CheckDefinition): Described {
  return { label, severity, absolute: absolute === true, open: open === true, ...(source !== undefined && { source }) };
}
