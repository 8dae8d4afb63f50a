import { expect, it } from 'vitest';
import { rowPlace } from '../../src/quote/named-cell.ts';

it('a row is named by its key, or by its number from 1', () => {
  const ids = ['bay', 'shed'];
  expect(['bay', 'shed', '1', '2'].map((row) => rowPlace(ids, row))).toEqual([0, 1, 0, 1]);
  expect(['', '0', '3', '-1', '1.5', 'porch'].map((row) => rowPlace(ids, row))).toEqual(Array(6).fill(undefined));
});
