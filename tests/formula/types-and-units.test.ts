import { describe, expect, it } from 'vitest';
import { unitText } from '../../src/units/unit.ts';
import { checked, reasons, type ScopeParts } from '../helpers/formula-scope.ts';

const parts: ScopeParts = {
  lines: {
    area: 'ft2',
    length: 'ft',
    hours: 'h',
    price: '$',
    share: '%',
    slab: 'degF',
    air: 'degF',
    margin: 'ddegF',
    start: 'date',
    end: 'date',
    cure: 'd',
    coats_wanted: 'coat',
    yes: '1',
    finish: { codes: ['matt', 'gloss'] },
    hardness: { codes: ['soft', 'hard'] },
    shape: { codes: ['square', 'circle', 'known'] },
    task: {},
    sealer: { products: ['clear'] },
    primer: { products: ['base'] },
  },
  tables: {
    rooms: { room: { codes: ['bay', 'stem'] }, size: 'ft2', edge: 'ft', warm: 'degF' },
    tasks: { task: { codes: ['grind'] }, hours_taken: 'h' },
  },
};

/** The unit of a number, or what else a formula gives. */
function gives(text: string): string {
  const { tree, faults } = checked(text, parts);
  if (faults.length > 0) throw new Error(`${text}: ${faults.map((fault) => fault.reason).join(' ')}`);
  if (tree.type.kind === 'number') return unitText(tree.type.unit);
  return tree.type.kind === 'code' ? `code ${tree.type.codes?.join('|') ?? ''}` : tree.type.kind;
}

describe('units', () => {
  it.each([
    ['area * 8 / area', '1'],
    ['length * length', 'ft2'],
    ['price / hours', '$/h'],
    ['length^3', 'ft3'],
    ['length^-2', '1/ft2'],
    ['length^2^2', 'ft4'],
    ['share^0.5', '1'],
    ['SQRT(area)', 'ft'],
    ['area + 0', 'ft2'],
    ['0 + area', 'ft2'],
    ['0 - area', 'ft2'],
    ['MAX(0, area, 0)', 'ft2'],
    ['IF(area > 0, area, 0)', 'ft2'],
    ['IF(area > 0, 0, -0) + area', 'ft2'],
    ['coats_wanted + share', '1'],
    ['-area', 'ft2'],
    ['ROUNDUP(price, 2)', '$'],
    ['INT(hours)', 'h'],
    ['SUM(rooms.size, area)', 'ft2'],
    ['SUMPRODUCT(rooms.size, rooms.edge)', 'ft3'],
    ['COUNT(rooms.size)', '1'],
    ['INDEX(rooms.size, MATCH("bay", rooms.room, 0))', 'ft2'],
    ['SUMIFS(rooms.size, rooms.room, "bay", rooms.edge, 0)', 'ft2'],
  ])('%s is %s', (text, wanted) => {
    expect(gives(text)).toBe(wanted);
  });

  it.each([
    ['area + length', 'A number in ft cannot be added to a number in ft2.'],
    ['area - hours', 'A number in h cannot be taken from a number in ft2.'],
    ['area + 1', 'A plain number cannot be added to a number in ft2.'],
    ['area = length', 'A number in ft2 cannot be compared with a number in ft.'],
    ['area > 5', 'A number in ft2 cannot be compared with a plain number.'],
    ['length^0.5', 'A number in ft takes only a whole number as its power.'],
    ['length^share', 'A number in ft takes only a whole number as its power.'],
    ['2^length', 'A power is a plain number, not a number in ft.'],
    ['SQRT(length)', 'There is no square root of a number in ft.'],
    ['EXP(hours)', 'A plain number is wanted here, not a number in h.'],
    ['MAX(area, length)', 'A number in ft2 is wanted here, not a number in ft.'],
    ['IF(yes = 1, area, length)', 'Both arms of IF must be alike: one is a number in ft2, the other a number in ft.'],
    ['ROUND(price, hours)', 'A plain number is wanted here, not a number in h.'],
    ['SUMIFS(rooms.size, rooms.edge, area)', 'A number in ft2 cannot be compared with a number in ft.'],
    ['SUMIFS(rooms.size, tasks.hours_taken, 0)', 'All columns here must be of one table.'],
    ['COUNTIFS(rooms.size, 0, tasks.hours_taken, 0)', 'All columns here must be of one table.'],
    ['SUMPRODUCT(rooms.size, tasks.hours_taken)', 'All columns here must be of one table.'],
    ['MATCH(hours, rooms.size, 0)', 'A number in h cannot be compared with a number in ft2.'],
    ['MATCH(area, rooms.size, 1)', 'MATCH looks for an equal value: 0 is wanted here.'],
    ['INDEX(rooms.size, area)', 'A plain number is wanted here, not a number in ft2.'],
    ['INDEX(rooms.size, 1, 2)', 'A column is one wide: 1 is wanted here.'],
  ])('%s is refused', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });
});

describe('points on a scale', () => {
  it.each([
    ['slab - air', 'ddegF'],
    ['slab + margin', 'degF'],
    ['margin + slab', 'degF'],
    ['slab - margin', 'degF'],
    ['slab + 0', 'degF'],
    ['slab - 0', 'degF'],
    ['end - start', 'd'],
    ['start + cure', 'date'],
    ['MIN(slab, air)', 'degF'],
    ['AVERAGE(rooms.warm)', 'degF'],
    ['IF(slab > air, slab, air)', 'degF'],
    ['slab >= air + margin', 'truth'],
    ['DATE(2026, 5, 31) + cure', 'date'],
    ['WEEKDAY(start, 2)', '1'],
  ])('%s is %s', (text, wanted) => {
    expect(gives(text)).toBe(wanted);
  });

  it.each([
    ['slab + air', 'A number in degF cannot be added to a number in degF.'],
    ['slab + 5', 'A plain number cannot be added to a number in degF.'],
    ['margin - slab', 'A number in degF cannot be taken from a number in ddegF.'],
    ['0 - slab', 'A number in degF cannot be taken from a plain number.'],
    ['slab = 0', 'A number in degF cannot be compared with a plain number.'],
    ['IF(yes = 1, slab, 0)', 'Both arms of IF must be alike: one is a number in degF, the other a plain number.'],
    ['-slab', 'A number in degF cannot take a sign.'],
    ['ABS(slab)', 'A number in degF is a point on a scale and has no size.'],
    ['slab * 2', 'A number in degF is a point on a scale: it can only be compared, or taken from another.'],
    ['start / cure', 'A number in date is a point on a scale: it can only be compared, or taken from another.'],
    ['start^2', 'A number in date is a point on a scale: it can only be compared, or taken from another.'],
    ['start - slab', 'A number in degF cannot be taken from a number in date.'],
    ['SUM(rooms.warm)', 'A number in degF cannot be added up.'],
    ['SQRT(slab)', 'There is no square root of a number in degF.'],
    ['WEEKDAY(cure)', 'A date is wanted here, not a number in d.'],
  ])('%s is refused', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });
});

describe('codes and conditions', () => {
  it.each([
    ['finish = "matt"', 'truth'],
    ['IF(finish <> "matt", "soft", hardness)', 'code soft|hard'],
    ['INDEX(rooms.room, 1)', 'code bay|stem'],
    ['IF(AND(yes = 1, NOT(finish = "gloss")), 1, 0)', '1'],
    ['sealer = primer', 'truth'],
    ['sealer = "clear_satin"', 'truth'],
  ])('%s is %s', (text, wanted) => {
    expect(gives(text)).toBe(wanted);
  });

  it.each([
    ['finish = "mat"', '“mat” is never among matt, gloss. Did you mean “matt”?'],
    ['"mat" = finish', '“mat” is never among matt, gloss. Did you mean “matt”?'],
    ['finish = hardness', '“matt”, “gloss” are never among soft, hard.'],
    ['MATCH("hall", rooms.room, 0)', '“hall” is never among bay, stem.'],
    ['finish = "Matt finish"', '“Matt finish” is not a code. A code is lower-case letters, digits and underscores.'],
    ['finish = "true"', '“true” is not a code. A code is lower-case letters, digits and underscores.'],
    ['finish < "matt"', 'Codes have no order; compare them with = or <>.'],
    ['finish + 1', '“+” works on numbers, and this is a code.'],
    ['1 * (area > 0)', '“*” works on numbers, and this is a condition.'],
    ['area = finish', 'A number in ft2 cannot be compared with a code.'],
    ['-finish', 'A code cannot take a sign.'],
    ['(area > 0) = (area > 0)', 'A condition cannot be compared with a condition.'],
    ['IF(yes, 1, 0)', 'A condition is wanted here, not a plain number. Compare it, as in … = 1.'],
    ['AND(finish)', 'A condition is wanted here, not a code.'],
    ['IF(area > 0, finish, 1)', 'Both arms of IF must be alike: one is a code, the other a plain number.'],
    ['MAX(finish)', 'A number is wanted here, not a code.'],
    ['SUM(rooms.room)', 'A number is wanted here, not a code.'],
    ['sealer + 1', '“+” works on numbers, and this is a product.'],
  ])('%s is refused', (text, reason) => {
    expect(reasons(text, parts)).toEqual([reason]);
  });
});

describe('SWITCH over a choice', () => {
  it.each([
    ['SWITCH(finish, "matt", area, "gloss", area * 2)', 'ft2'],
    ['SWITCH(finish, "gloss", 0, "matt", area)', 'ft2'],
    ['SWITCH(finish, "gloss", slab, "matt", air)', 'degF'],
    ['SWITCH(finish, "matt", 0, "gloss", -0) + area', 'ft2'],
    ['SWITCH(finish, "matt", hardness, "gloss", "none")', 'code soft|hard|none'],
    ['SWITCH(finish, "matt", area > 0, "gloss", yes = 1)', 'truth'],
    ['SWITCH(IF(yes = 1, "soft", hardness), "soft", 1, "hard", 2)', '1'],
    ['SWITCH(INDEX(rooms.room, 1), "bay", 1, "stem", 2)', '1'],
  ])('%s is %s', (text, wanted) => {
    expect(gives(text)).toBe(wanted);
  });

  it.each([
    ['SWITCH(finish, "matt", 1)', ['SWITCH has no arm for “gloss”.']],
    ['SWITCH(shape, "circle", 1)', ['SWITCH has no arm for “square”, “known”.']],
    ['SWITCH(finish, "mat", 1, "gloss", 2)', ['“mat” is never among matt, gloss. Did you mean “matt”?']],
    [
      'SWITCH(finish, "mat", 1)',
      ['SWITCH has no arm for “gloss”.', '“mat” is never among matt, gloss. Did you mean “matt”?'],
    ],
    ['SWITCH(finish, "matt", 1, "gloss", 2, "satin", 3)', ['“satin” is never among matt, gloss.']],
    ['SWITCH(finish, "matt", 1, "gloss", 2, "matt", 3)', ['“matt” has its arm already.']],
    [
      'SWITCH(finish, hardness, 1, "gloss", 2)',
      ['SWITCH has no arm for “matt”.', 'A code in quotation marks is wanted here.'],
    ],
    [
      'SWITCH(finish, "matt", area, "gloss", length)',
      ['All arms of SWITCH must be alike: one is a number in ft2, the other a number in ft.'],
    ],
    [
      'SWITCH(finish, "matt", 0, "gloss", slab)',
      ['All arms of SWITCH must be alike: one is a number in degF, the other a plain number.'],
    ],
    [
      'SWITCH(finish, "matt", 1, "gloss", hardness)',
      ['All arms of SWITCH must be alike: one is a plain number, the other a code.'],
    ],
    ['SWITCH(area, "matt", 1)', ['SWITCH chooses by a code, and this is a number in ft2.']],
    ['SWITCH(area > 0, "matt", 1)', ['SWITCH chooses by a code, and this is a condition.']],
    [
      'SWITCH(sealer, "clear_satin", 1)',
      ['SWITCH chooses among options that are known, and any product of the price list may stand here.'],
    ],
    ['SWITCH(task, "grind", 1)', ['SWITCH chooses among options that are known, and any code may stand here.']],
    ['SWITCH(nothing, "matt", 1)', ['There is nothing called “nothing”.']],
  ])('%s is refused', (text, told) => {
    expect(reasons(text, parts)).toEqual(told);
  });

  it('is refused at the place of what is wrong', () => {
    const text = 'SWITCH(finish, "matt", 1, "glos", 2)';
    const [fault] = checked(text, parts).faults;
    expect(text.slice(fault?.at.start, fault?.at.end)).toBe('"glos"');
  });
});
