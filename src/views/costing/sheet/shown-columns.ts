import { unitOf } from '../../../formula/value-type.ts';
import { KeptByCells } from '../../../quote/kept-by-cells.ts';
import type { OptionResults } from '../../../quote/option-results.ts';
import type { CompiledColumn, CompiledTable } from '../../../template/compiled-stack.ts';
import type { ColumnFile } from '../../../template/line-schema.ts';
import type { Measures } from '../../../units/measures.ts';
import { labelIn } from '../../../units/said-units.ts';
import { one } from '../../../units/unit.ts';
import type { SheetInView } from './sheet-in-view.ts';

/** A column of a table as a screen heads it. */
export interface ShownColumn {
  readonly name: string;
  readonly label: string;
  readonly group: string;
  readonly detail: boolean;
  /** Words stand left, numbers right. */
  readonly words: boolean;
}

const wordKinds: readonly string[] = ['choice', 'product', 'key', 'words'];

/** The columns of a table that people see: its checks say what they have to say elsewhere. */
export function seenColumns({ columns }: CompiledTable): readonly CompiledColumn[] {
  return [...columns.values()].filter(({ definition }) => definition.kind !== 'check' && definition.kind !== 'text');
}

const keptColumns = new KeptByCells<readonly ShownColumn[]>();

/** The heads of a table's columns. Those that no row has a code for are details, as are those that say so. */
export function shownColumns(table: CompiledTable, { results, measures }: SheetInView): readonly ShownColumn[] {
  return keptColumns.of(results, table.definition.name, [measures], () =>
    seenColumns(table).map((column) => {
      const { definition } = column;
      return shownColumn(column, definition.detail === true || !isShown(definition, table, results), measures);
    }),
  );
}

/** Whether some row has a code for which the column is shown. */
function isShown({ shownFor }: ColumnFile, { definition: { name } }: CompiledTable, results: OptionResults): boolean {
  if (shownFor === undefined) return true;
  const cells = results.option.plan.tables.get(name)?.columns.get(shownFor.column) ?? [];
  return cells.some((cell) => shownFor.codes.some((code) => code === results.read(cell)));
}

function shownColumn({ definition, cases }: CompiledColumn, detail: boolean, measures: Measures): ShownColumn {
  const [first] = cases.values();
  return {
    name: definition.name,
    label: labelIn(definition.label, first === undefined ? one : unitOf(first.type), measures),
    group: definition.group ?? '',
    detail,
    words: wordKinds.includes(definition.kind),
  };
}

/**
 * What a row's card tells first wherever its table has these columns: what is needed, bought and paid. Tables without
 * three of them are filled up with the last numbers they work out, then with the first that are entered.
 */
const tellingFirst: readonly string[] = [
  'need',
  'packs',
  'cost',
  'coverage',
  'gallons',
  'pounds',
  'pieces',
  'task_hours',
  'site_hours',
  'paid',
];
const mostTelling = 3;

/** The columns that a closed card tells, in the order of the table. */
export function tellingColumns(columns: readonly CompiledColumn[]): readonly string[] {
  const shown = columns.map(({ definition }) => definition).filter((definition) => definition.detail !== true);
  const worked = shown.flatMap((column) =>
    (column.kind === 'formula' && column.code !== true) || column.kind === 'operated' ? [column.name] : [],
  );
  const entered = shown.flatMap((column) => (column.kind === 'entry' && column.yesNo !== true ? [column.name] : []));
  const ranked = [
    ...tellingFirst.filter((name) => worked.includes(name) || entered.includes(name)),
    ...worked.toReversed(),
    ...entered,
  ];
  const chosen = [...new Set(ranked)].slice(0, mostTelling);
  return shown.flatMap(({ name }) => (chosen.includes(name) ? [name] : []));
}
