import { describe, expect, it } from 'vitest';
import { writeFeetInches } from '../../src/units/feet-inches.ts';
import { readTyped } from '../../src/units/typed-number.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

function valueIn(text: string, unitName = 'ft'): number | string {
  const read = readTyped(text, unit(unitName));
  return read.kind === 'number' ? read.value : read.reason;
}

function echoOf(text: string, unitName = 'ft'): string | undefined {
  const read = readTyped(text, unit(unitName));
  return read.kind === 'number' ? read.echo : read.reason;
}

describe('feet and inches', () => {
  it.each([
    [`22' 7 1/2"`, 22.625],
    [`22'7 1/2"`, 22.625],
    [`22' 7½"`, 22.625],
    [`22′-7½″`, 22.625],
    ['22’ 7 1/2”', 22.625],
    [`22' 7 1/2''`, 22.625],
    ['22-7.5', 22.625],
    ['22-7 1/2', 22.625],
    ['22-7 1/2"', 22.625],
    ['22 7 1/2', 22.625],
    ['22.625', 22.625],
    ['22,625', 22625],
    ['22,6', 22.6],
    [`22' 6`, 22.5],
    ['22-6', 22.5],
    ['22 6', 22.5],
    ['22 6"', 22.5],
    ['22 ft 6 in', 22.5],
    ['22 feet 6 inches', 22.5],
    ['22ft 6in', 22.5],
    ['22 ft. 6 in.', 22.5],
    [`22'`, 22],
    [`22.5'`, 22.5],
    ['6"', 0.5],
    ['7 1/2"', 0.625],
    ['30"', 2.5],
    ['3/8"', 0.03125],
    [`0' 6"`, 0.5],
    [`22' 3/4"`, 22.0625],
    [`-22' 6"`, -22.5],
  ])('reads %s as %d ft', (text, feet) => {
    expect(valueIn(text)).toBe(feet);
  });

  it.each([
    [`22'6" * 2`, 45],
    [`22' 6" + 7' 6"`, 30],
    [`22' - 6"`, 21.5],
    [`(22'6" + 1'6") / 2`, 12],
    [`22' + 2`, 24],
    ['24 - 2', 22],
    ['24 - 20', 4],
    ['(24)-2', 22],
    ['2 * 11 ft', 22],
  ])('works out %s as %d ft', (text, feet) => {
    expect(valueIn(text)).toBe(feet);
  });

  it('takes a dash without spaces as inches, with spaces as minus', () => {
    expect([valueIn('24-2'), valueIn('24 - 2')]).toEqual([24 + 2 / 12, 22]);
    expect(valueIn('24-20')).toContain('write 24 - 20 with spaces to subtract');
  });

  it.each([
    ['24 -2', 'spaces on both sides'],
    ['24- 2', 'spaces on both sides'],
    ['24*22-6', 'spaces on both sides'],
    ['22.5-7', 'Feet beside inches are whole'],
    [`22.5' 7"`, 'Feet beside inches are whole'],
    [`22' 12"`, 'below 12'],
    ['22 14', 'below 12'],
    ['7 1/2', 'may be feet or inches'],
    ['22-7/8', 'may be feet or inches'],
    ['22-7/8"', 'may be feet or inches'],
    [`22' 7/2"`, 'not a fraction'],
    [`22' 1/0"`, 'not a fraction'],
    [`22' 7'`, 'Put'],
    [`22' * 24'`, 'not in ft'],
    [`22' / 2'`, 'not in ft'],
    [`'`, 'does not belong'],
    [`22'' 7'`, 'Put'],
  ])('refuses %s and says: %s', (text, said) => {
    expect(valueIn(text)).toContain(said);
  });

  it('multiplies marked lengths to an area of 549.1276 ft2', () => {
    expect(valueIn(`22'-7½" * 24'-3¼"`, 'ft2')).toBeCloseTo(549.1276, 4);
    expect(valueIn(`22' x 24' + 60`, 'ft2')).toBe(588);
    expect(valueIn('22 ft x 24 ft', 'ft2')).toBe(528);
    expect(valueIn(`22' * 24`, 'ft2')).toContain('give each length its mark');
    expect(valueIn(`22' * 24' + 3'`, 'ft2')).toContain('cannot be added');
  });

  it('reads 3/8, 7 1/2 and 1\' 2" in a field of inches', () => {
    expect([valueIn('3/8', 'in'), valueIn('7 1/2', 'in'), valueIn(`1' 2"`, 'in'), valueIn('6-2', 'in')]).toEqual([
      0.375, 7.5, 14, 4,
    ]);
  });

  it('echoes how it understood feet and inches', () => {
    expect(echoOf('22 7')).toBe('22 ft 7 in = 22.5833 ft');
    expect(echoOf('22-7 1/2')).toBe('22 ft 7 1/2 in = 22.625 ft');
    expect(echoOf('7"')).toBe('7 in = 0.5833 ft');
    expect(echoOf('22.7')).toBe(`22.7 ft ≈ 22' 8 3/8"`);
    expect(echoOf('22.5')).toBe(`22.5 ft = 22' 6"`);
    expect(echoOf('22')).toBeUndefined();
    expect(echoOf(`22'`)).toBeUndefined();
    expect(echoOf(`22'6" * 2`)).toBe(`22'6" * 2 = 45 ft`);
  });
});

describe('writing feet and inches', () => {
  it.each([
    [22.7, `22' 8 3/8"`],
    [22.625, `22' 7 1/2"`],
    [22, `22'`],
    [0.5, '6"'],
    [0.03125, '3/8"'],
    [22.0625, `22' 3/4"`],
    [0, `0'`],
    [11.9999, `12'`],
    [-22.5, `−22' 6"`],
    [Number.NaN, 'not a number'],
  ])('writes %d ft as %s', (feet, text) => {
    expect(writeFeetInches(feet)).toBe(text);
  });
});
