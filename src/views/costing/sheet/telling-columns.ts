import type { CompiledColumn } from '../../../template/compiled-stack.ts';

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
