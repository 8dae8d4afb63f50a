import { beforeEach, describe, expect, it } from 'vitest';
import { clearedWords } from '../../src/quote/answer-clears.ts';
import { answerEdit, answersOf, asksOf, standingAnswer } from '../../src/quote/asks.ts';
import { lineValue, type OptionResults } from '../../src/quote/option-results.ts';
import type { Ask } from '../../src/template/sheet-schema.ts';
import { flake, type OpenQuote, openQuote } from '../helpers/demo-quote.ts';

let open: OpenQuote;

beforeEach(async () => {
  open = await openQuote();
});

function results(): OptionResults {
  const found = open.session.results(flake);
  if (found === undefined) throw new Error('The option is gone');
  return found;
}

function ask(id: string, layer: 'floor' | 'system' = 'floor'): Ask {
  const found = asksOf(results(), layer).find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`Nobody asks ${id}`);
  return found;
}

function answer(id: string, at: number, layer: 'floor' | 'system' = 'floor'): void {
  const sheet = layer === 'floor' ? ({ kind: 'floor' } as const) : ({ kind: 'option', option: flake } as const);
  const edit = answerEdit(ask(id, layer), at, sheet, results());
  if (edit === undefined) throw new Error(`${id} has no answer ${at}`);
  const done = open.session.dispatch(edit);
  if (done.kind === 'refused') throw new Error(done.reason);
}

describe('the questions of the first minute', () => {
  it('measure a one-car garage of 240 ft² with one touch, in place of all areas there were', () => {
    open.session.dispatch({
      kind: 'addRow',
      sheet: { kind: 'floor' },
      table: 'areas',
      row: 'apron',
      at: 1,
      cells: { place: 'apron' },
    });
    answer('size', 0);
    expect(lineValue(results(), 'floor_area')).toBe(240);
    expect(standingAnswer(ask('size'), results())).toBe(0);
  });

  it('coat 6 in past a 16 ft door with one touch, 8 ft² more, and stay inside again with another', () => {
    const before = Number(lineValue(results(), 'floor_area'));
    answer('door-lip', 2);
    expect(lineValue(results(), 'floor_area')).toBe(before + 8);
    expect(standingAnswer(ask('door-lip'), results())).toBe(2);
    answer('door-lip', 0);
    expect(lineValue(results(), 'floor_area')).toBe(before);
  });

  it('count 13 steps with one touch, and none at first', () => {
    expect(standingAnswer(ask('steps'), results())).toBe(0);
    answer('steps', 3);
    expect(lineValue(results(), 'step_count')).toBe(13);
    expect(lineValue(results(), 'floor_area')).toBe(528);
  });

  it('are undone in one step, size, joints and all', () => {
    const before = open.session.quote;
    answer('size', 5);
    open.session.undo();
    expect(open.session.quote).toEqual(before);
  });

  it('take out at a basement what only a garage has, say so, keep its cracks, and give it all back in one step', () => {
    answer('door-seal', 1);
    answer('door-lip', 2);
    answer('cracks', 2);
    const before = open.session.quote;
    const size = ask('size');
    const basement = answersOf(size).findIndex((label) => label.startsWith('Basement'));
    const words = clearedWords(size, basement, results(), 'us');
    expect(words).toBe(
      'Taken out: door openings, door seal off and back on. Kept: cracks to fill 30 ft. Undo puts it back.',
    );
    answer('size', basement);
    expect(open.session.undoable).toMatchObject({ words: 'Size, without door openings, door seal off and back on' });
    expect(
      ['coated_doors', 'door_lip', 'door_seal_off', 'crack_length'].map((name) => lineValue(results(), name)),
    ).toEqual([0, 0, 0, 30]);
    expect(standingAnswer(size, results())).toBe(basement);
    expect(clearedWords(size, basement, results(), 'us')).toBe('');
    open.session.undo();
    expect(open.session.quote).toEqual(before);
  });

  it('ask nothing of garage doors and stem walls in a basement, nor of flames on a patio', () => {
    const asked = (): string[] => asksOf(results(), 'floor').map(({ id }) => id);
    const ofGarages = ['door-lip', 'door-seal', 'door-strip', 'stem-walls'];
    const size = (name: string): void =>
      answer(
        'size',
        answersOf(ask('size')).findIndex((label) => label.startsWith(name)),
      );
    expect(asked()).toEqual(expect.arrayContaining([...ofGarages, 'heat', 'pilot-light', 'joints']));
    size('Basement');
    expect(asked().filter((id) => ofGarages.includes(id) || id === 'joints')).toEqual([]);
    expect(asked()).toEqual(expect.arrayContaining(['heat', 'pilot-light', 'cracks']));
    size('Patio');
    expect(asked().filter((id) => [...ofGarages, 'heat', 'pilot-light'].includes(id))).toEqual([]);
    size('Two-car');
    expect(asked()).toEqual(expect.arrayContaining(ofGarages));
  });

  it('go on asking where what was answered still counts: a door that stays under a floor below grade', () => {
    answer('door-lip', 2);
    open.session.dispatch({ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'grade', value: 'below_grade' });
    expect(standingAnswer(ask('door-lip'), results())).toBe(2);
    answer('door-lip', 0);
    expect(asksOf(results(), 'floor').map(({ id }) => id)).not.toContain('door-lip');
  });

  it('take nothing out from one garage to another', () => {
    answer('door-lip', 2);
    expect(clearedWords(ask('size'), 0, results(), 'us')).toBe('');
    answer('size', 0);
    expect(lineValue(results(), 'coated_doors')).toBe(1);
  });

  it('judge many cracks as 60 ft and say which answer stands; 37 ft is none of them', () => {
    answer('cracks', 3);
    expect(lineValue(results(), 'crack_length')).toBe(60);
    expect(standingAnswer(ask('cracks'), results())).toBe(3);
    open.session.dispatch({ kind: 'enterLine', sheet: { kind: 'floor' }, line: 'crack_length', value: 37 });
    expect(standingAnswer(ask('cracks'), results())).toBeUndefined();
  });

  it('let a slab be cracked and painted and oily at once', () => {
    answer('cracks', 2);
    answer('painted', 1);
    answer('oil', 1);
    expect(['cracks', 'painted', 'oil', 'damp'].map((id) => standingAnswer(ask(id), results()))).toEqual([2, 1, 1, 0]);
  });

  it('switch an extra of one system on, which costs more, and off again', () => {
    const price = (): number => Number(lineValue(results(), 'price'));
    const before = price();
    answer('second-clear', 1, 'system');
    expect(price()).toBeGreaterThan(before);
    answer('second-clear', 0, 'system');
    expect(price()).toBe(before);
  });
});
