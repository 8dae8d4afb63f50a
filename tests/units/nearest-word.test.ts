import { expect, it } from 'vitest';
import { nearestWord } from '../../src/units/nearest-word.ts';

it('finds one wrong letter in three, whatever the case', () => {
  expect(nearestWord('surface_aera', ['floor_area', 'surface_area'])).toBe('surface_area');
  expect(nearestWord('GAL', ['gal', 'lb'])).toBe('gal');
  expect(nearestWord('hh', ['h'])).toBe('h');
});

it('finds nothing near to what is unlike everything', () => {
  expect(nearestWord('zebra', ['gal', 'ft', 'mil'])).toBeUndefined();
  expect(nearestWord('x', [])).toBeUndefined();
});

it('reads two swapped letters as one slip: aeras means areas', () => {
  expect(nearestWord('aeras', ['areas', 'bases'])).toBe('areas');
});
