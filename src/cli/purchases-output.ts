import { valueText } from '../formula/explain.ts';
import type { OptionResults } from '../quote/option-results.ts';
import { cellIn, lineIn, type TypedValue, wordsOf } from './option-cells.ts';
import { layTable } from './text-layout.ts';

/** The columns of a gathered table that hold a pack’s size, by its measure. */
const sizes = ['gallons', 'pounds', 'pieces'];

/** What to buy: each product that is needed, in packs, with its cost. Empty when the system buys nothing. */
export function purchaseLines(results: OptionResults): string[] {
  const gathered = [...results.stack.tables.values()].filter(({ definition }) => definition.rows === 'gathered');
  const rows = gathered.flatMap(({ definition: { name } }) =>
    (results.option.rows.get(name) ?? []).flatMap(({ label }, row): string[][] => {
      const need = cellIn(results, name, 'need', row);
      if (need === undefined || need.value === 0) return [];
      return [[label, wordsOf(need), packsIn(results, name, row, need), wordsOf(cellIn(results, name, 'cost', row))]];
    }),
  );
  if (rows.length === 0) return [];
  const together = lineIn(results, 'materials_bought');
  if (together !== undefined) rows.push(['Together', '', '', wordsOf(together)]);
  return [
    'TO BUY',
    ...layTable(
      [
        { heading: 'product', align: 'left' },
        { heading: 'need', align: 'right' },
        { heading: 'packs', align: 'left' },
        { heading: 'cost', align: 'right' },
      ],
      rows,
    ),
  ];
}

/** `2 × 3 gal + 1 × 15 gal`. */
function packsIn(results: OptionResults, table: string, row: number, need: TypedValue): string {
  const packs = [
    ['packs', 'pack'],
    ['large_packs', 'large'],
  ].flatMap(([column = '', prefix = '']) => {
    const count = cellIn(results, table, column, row);
    if (count === undefined || count.value === 0) return [];
    if (typeof count.value !== 'number') return [wordsOf(count)];
    const size = sizes.flatMap((measure) => cellIn(results, table, `${prefix}_${measure}`, row) ?? [])[0];
    const held = size === undefined ? '' : ` × ${valueText(size.value, need.type)}`;
    return [`${count.value}${held}`];
  });
  return packs.join(' + ');
}
