import type { ValueType } from '../formula/checked-tree.ts';
import { valueText } from '../formula/explain.ts';
import type { OptionResults } from '../quote/option-results.ts';
import { formatNumber } from '../units/format.ts';
import type { Measures } from '../units/measures.ts';
import { one } from '../units/unit.ts';
import { cellIn, lineIn, type TypedValue, wordsOf } from './option-cells.ts';
import { layTable } from './text-layout.ts';

/** The columns of a gathered table that hold a pack’s size, by its measure. */
const sizes = ['gallons', 'pounds', 'pieces'];

/** What to buy: each product that is needed, in packs, with its cost. Empty when the system buys nothing. */
export function purchaseLines(results: OptionResults, measures: Measures): string[] {
  const gathered = [...results.stack.tables.values()].filter(({ definition }) => definition.rows === 'gathered');
  const rows = gathered.flatMap(({ definition: { name } }) =>
    (results.option.rows.get(name) ?? []).flatMap(({ label }, row): string[][] => {
      const need = cellIn(results, name, 'need', row);
      if (need === undefined || need.value === 0) return [];
      const cost = wordsOf(cellIn(results, name, 'cost', row), measures);
      return [[label, needIn(need, measures), packsIn(results, name, row, need, measures), cost]];
    }),
  );
  if (rows.length === 0) return [];
  const together = lineIn(results, 'materials_bought');
  if (together !== undefined) rows.push(['Together', '', '', wordsOf(together, measures)]);
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

/** `4.348 gal`; of what is counted `0.97 pieces`. */
function needIn(need: TypedValue, measures: Measures): string {
  if (!isCounted(need.type) || typeof need.value !== 'number') return wordsOf(need, measures);
  const number = formatNumber(need.value, one, { digits: 2 });
  return `${number} ${number === '1' ? 'piece' : 'pieces'}`;
}

/** `2 × 3 gal + 1 × 15 gal`; of what is counted `2`, or `2 × 10 pieces`. */
function packsIn(results: OptionResults, table: string, row: number, need: TypedValue, measures: Measures): string {
  const packs = [
    ['packs', 'pack'],
    ['large_packs', 'large'],
  ].flatMap(([column = '', prefix = '']) => {
    const count = cellIn(results, table, column, row);
    if (count === undefined || count.value === 0) return [];
    if (typeof count.value !== 'number') return [wordsOf(count, measures)];
    const size = sizes.flatMap((measure) => cellIn(results, table, `${prefix}_${measure}`, row) ?? [])[0];
    return [`${count.value}${size === undefined ? '' : heldIn(size, need.type, measures)}`];
  });
  return packs.join(' + ');
}

/** What a pack holds, with the sign before it; nothing for a pack of one piece. */
function heldIn({ value }: TypedValue, type: ValueType, measures: Measures): string {
  if (!isCounted(type)) return ` × ${valueText(value, type, measures)}`;
  return value === 1 ? '' : ` × ${valueText(value, { kind: 'number', unit: one })} pieces`;
}

function isCounted(type: ValueType): boolean {
  return type.kind === 'number' && type.unit.text === 'each';
}
