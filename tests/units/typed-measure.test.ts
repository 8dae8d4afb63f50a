import { describe, expect, it } from 'vitest';
import { formatForTyping } from '../../src/units/format.ts';
import { readTypedIn, standingText, textBesideUnit, textToKeep } from '../../src/units/typed-measure.ts';
import { parseUnit, type Unit } from '../../src/units/unit.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

function typedValue(text: string, declared: string, measures: 'us' | 'metric'): number {
  const read = readTypedIn(text, unit(declared), measures);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.value;
}

describe('typed where metric is shown', () => {
  it.each([
    ['3.048', 'ft', 10],
    ['6.9 m', 'ft', 22.637795275590552],
    ['9.290304', 'ft2', 100],
    ['9,290304 m²', 'ft2', 100],
    ['203.2', 'mil', 8],
    ['203.2 µm', 'mil', 8],
    ['3.785411784', 'gal', 1],
    ['20', 'degF', 68],
    ['20 °C', 'degF', 68],
    ['5', 'ddegF', 9],
    ['1.5 + 1.548', 'ft', 10],
    ['45.359237', 'lb', 100],
    ['1.72368932329209', 'lb/in2', 250],
    ['1.72368932329209 MPa', 'lb/in2', 250],
    ['38', '$/h', 38],
    ['8', '%', 0.08],
  ])('%s of %s is %d of it', (text, declared, value) => {
    expect(typedValue(text, declared, 'metric')).toBeCloseTo(value, 9);
  });

  it.each([
    [`22' 7"`, 'ft', 22 + 7 / 12],
    ['22 ft', 'ft', 22],
    ['400 sq ft', 'ft2', 400],
    [`20' * 20'`, 'ft2', 400],
    ['8 mils', 'mil', 8],
    ['3 gal', 'gal', 3],
    ['68 °F', 'degF', 68],
    ['134 ft2/gal', 'ft2/gal', 134],
    ['$8.50/ft2', '$/ft2', 8.5],
  ])('%s of %s is still read as %d, since it says its unit', (text, declared, value) => {
    expect(typedValue(text, declared, 'metric')).toBe(value);
  });

  it('echoes feet and inches in metres', () => {
    expect(readTypedIn(`22' 7"`, unit('ft'), 'metric')).toMatchObject({ echo: `22' 7" = 6.8834 m` });
  });

  it('does not take 22 7 for feet and inches, nor 22-7 for anything but a difference', () => {
    expect(readTypedIn('22 7', unit('ft'), 'metric')).toMatchObject({ kind: 'fault' });
    expect(typedValue('22-7', 'ft', 'metric')).toBeCloseTo(15 / 0.3048, 9);
  });

  it('refuses what says a unit of another kind, and names the metric one', () => {
    expect(readTypedIn('3 kg', unit('ft'), 'metric')).toMatchObject({ kind: 'fault' });
    expect(readTypedIn('528 ft', unit('ft2'), 'metric')).toMatchObject({
      kind: 'fault',
      reason: expect.stringContaining('m²'),
    });
  });
});

describe('typed where feet are shown', () => {
  it('reads 6.9 m and 20 °C too, and echoes them in feet and °F', () => {
    expect(readTypedIn('6.9 m', unit('ft'), 'us')).toMatchObject({ echo: '6.9 m = 22.6378 ft' });
    expect(typedValue('20 °C', 'degF', 'us')).toBe(68);
  });

  it('reads a number alone in feet', () => {
    expect(typedValue('22 7', 'ft', 'us')).toBeCloseTo(22 + 7 / 12, 12);
    expect(typedValue('22.5', 'ft', 'us')).toBe(22.5);
  });
});

describe('the text kept with an entry', () => {
  it('is none for a plain number, in either measures', () => {
    expect(textToKeep('6.9', typedValue('6.9', 'ft', 'metric'), unit('ft'), 'metric')).toBeUndefined();
    expect(textToKeep('22.5', 22.5, unit('ft'), 'us')).toBeUndefined();
  });

  it('has its unit where it was typed in metric, so that it cannot be taken for feet', () => {
    const kept = textToKeep('3*2.3', typedValue('3*2.3', 'ft', 'metric'), unit('ft'), 'metric');
    expect(kept).toBe('3*2.3 m');
    expect(textToKeep('$88/2', typedValue('$88/2', '$/ft2', 'metric'), unit('$/ft2'), 'metric')).toBe('$88/2/m²');
    expect(typedValue('3*2.3 m', 'ft', 'us')).toBe(typedValue('3*2.3', 'ft', 'metric'));
  });

  it('is the whole of a number with more digits than are shown', () => {
    const typed = '6.12345678901';
    expect(textToKeep(typed, typedValue(typed, 'ft', 'metric'), unit('ft'), 'metric')).toBe(`${typed} m`);
  });

  it('is that of a number with more decimals than are shown, so that it comes back, and 20 ft is 6.1 m', () => {
    const kept = textToKeep('6.096', 20, unit('ft'), 'metric');
    expect(kept).toBe('6.096 m');
    expect(standingText(20, kept, unit('ft'), 'metric')).toBe('6.096');
    expect(standingText(20, undefined, unit('ft'), 'metric')).toBe('6.1');
  });

  it('stands in the field of its own measures only', () => {
    const value = typedValue('3*2.3', 'ft', 'metric');
    expect(standingText(value, '3*2.3 m', unit('ft'), 'metric')).toBe('3*2.3');
    expect(standingText(value, '3*2.3 m', unit('ft'), 'us')).toBe(formatForTyping(value, unit('ft')));
    expect(standingText(22.5, `22' 6"`, unit('ft'), 'us')).toBe(`22' 6"`);
    expect(standingText(22.5, `22' 6"`, unit('ft'), 'metric')).toBe('6.86');
    expect(standingText(21, '3*7', unit('ft'), 'metric')).toBe('6.4');
  });
});

describe('a text beside its unit', () => {
  it.each([
    ['$41.50', '$/h', '41.50'],
    ['41.50/h', '$/h', '41.50'],
    ['$88/2', '$/h', '88/2'],
    ['8 percent', '%', '8'],
    ['8%', '%', '8'],
    ['528 sq ft', 'ft2', '528'],
    ['24*22+60', 'ft2', '24*22+60'],
    [`20' * 20'`, 'ft2', '400'],
    [`3' + 2' 6"`, 'ft', '5.5'],
    ['76 ft 6 in', 'ft', '76.5'],
    ['22,5', 'ft', '22,5'],
    ['1,200 ft', 'ft', '1,200'],
    [`1000' + 200'`, 'ft', '1200'],
    ['2 gal', 'gal', '2'],
    ['2026-03-09', 'date', '2026-03-09'],
  ])('%s of %s stands as %s, so that nothing is said twice', (typed, declared, text) => {
    expect(textBesideUnit(typed, unit(declared), 'us')).toEqual({ text, saysUnit: false });
  });

  it.each([
    [`76' 6"`, `76' 6"`],
    [`76′ 6″`, `76′ 6″`],
    [`22' 7 1/2"`, `22' 7 1/2"`],
    [`76'`, `76'`],
    ['22 7', `22' 7"`],
    ['22-7.5', `22' 7 1/2"`],
  ])('%s stands as %s and has no ft behind it', (typed, text) => {
    expect(textBesideUnit(typed, unit('ft'), 'us')).toEqual({ text, saysUnit: true });
  });

  it('is a number where sixteenths of an inch would not say it: 22 7.3 is 22.6083 ft', () => {
    expect(textBesideUnit('22 7.3', unit('ft'), 'us')).toEqual({ text: '22.6083', saysUnit: false });
  });

  it('stays as it was typed where it cannot be read', () => {
    expect(textBesideUnit('two dozen ft', unit('ft'), 'us')).toEqual({ text: 'two dozen ft', saysUnit: false });
  });

  it('has no m twice in metric: 6.9m stands as 6.9', () => {
    expect(textBesideUnit('6.9m', unit('ft'), 'metric')).toEqual({ text: '6.9', saysUnit: false });
  });
});
