import { describe, expect, it } from 'vitest';
import { addressCells, columnLetters } from '../../src/engine/cell-addresses.ts';
import { formulaText } from '../../src/engine/emit-cell.ts';
import type { CellPlace } from '../../src/formula/cells.ts';
import type { Checked } from '../../src/formula/checked-tree.ts';
import {
  call,
  code,
  column,
  field,
  here,
  line,
  minus,
  num,
  oneUp,
  op,
  planOf,
  rowsAbove,
  tableCell,
} from './plan-builder.ts';

const plan = planOf({
  lines: { area: 400, depth: 2 },
  tables: {
    coats: { product: ['grey', 'clear'], gallons: [1, 2] },
    extras: { cost: [] },
    products: { product: ['grey'], solids: [1] },
  },
});
const addresses = addressCells(plan);
const second: CellPlace = { kind: 'cell', table: 'coats', column: 'gallons', row: 1 };
const text = (tree: Checked) => formulaText(tree, second, plan, addresses);

describe('the formula of a cell', () => {
  it('writes names as absolute addresses', () => {
    expect(text(line('depth'))).toBe("=('_lines'!$A$2)");
    expect(text(here('coats', 'gallons'))).toBe("=('coats'!$B$2)");
    expect(text(oneUp('coats', 'gallons'))).toBe("=('coats'!$B$1)");
    expect(text(call('SUM', column('coats', 'gallons')))).toBe("=(SUM('coats'!$B$1:$B$2))");
    expect(text(call('SUM', rowsAbove('coats', 'gallons')))).toBe("=(SUM('coats'!$B$1:$B$1))");
    expect(text(call('SUM', column('extras', 'cost')))).toBe("=(SUM('extras'!$A$1:$A$1))");
    expect(text(field(here('coats', 'product'), 'solids'))).toBe(
      "=(INDEX('products'!$B$1:$B$1,MATCH('coats'!$A$2,'products'!$A$1:$A$1,0)))",
    );
  });

  it('puts each operation in parentheses, but leaves a chain flat', () => {
    expect(text(op(op(num(1), '-', num(2)), '+', num(3)))).toBe('=((1-2+3))');
    expect(text(op(num(1), '-', op(num(2), '+', num(3))))).toBe('=((1-(2+3)))');
    expect(text(op(minus(num(2)), '^', num(2)))).toBe('=(((-2)^2))');
    expect(text(minus(op(num(2), '^', num(2))))).toBe('=((-(2^2)))');
    expect(text(op(op(num(1), '<', num(2)), '=', op(num(3), '<', num(4))))).toBe('=(((1<2)=(3<4)))');
  });

  it('writes numbers with a small e and codes in quotes', () => {
    expect(text(op(num(1e21), '*', num(1e-7)))).toBe('=((1e+21*1e-7))');
    expect(text(code('grey'))).toBe('=("grey")');
    expect(() => text(num(Number.POSITIVE_INFINITY))).toThrow('formula holds the number Infinity');
  });
});

describe('addresses', () => {
  it('lead back to their cell', () => {
    const cell = tableCell(plan, 'coats', 'gallons', 1);
    expect(addresses.of(cell)).toEqual({ sheet: 1, col: 1, row: 1 });
    expect(addresses.cellAt(addresses.of(cell))).toBe(cell);
    expect(addresses.cellAt({ sheet: 1, col: 1, row: 2 })).toBeUndefined();
  });

  it('number columns A to Z, AA to ZZ, AAA', () => {
    expect([0, 25, 26, 27, 701, 702].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'AB', 'ZZ', 'AAA']);
  });
});
