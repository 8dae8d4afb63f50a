import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/formula/cells.ts';
import { KeptByCells, MovingCells } from '../../src/quote/kept-by-cells.ts';

/** Cells of which a test says what each reads: 20 ft of cracks at $9, on the floor of Rosa’s garage. */
function cracked() {
  const values: CellValue[] = [20, 9, 1];
  const moving = new MovingCells((cell) => values[cell] ?? 0);
  const set = (cell: number, value: CellValue): void => {
    values[cell] = value;
    moving.moved([cell]);
  };
  return { moving, set };
}

/** What is told of the cracks, and how often it was told anew. */
function telling(option = cracked()) {
  const texts = new KeptByCells<string>();
  let times = 0;
  const tell = (also: unknown = undefined): string =>
    texts.of(option, 'cracks', [also], () => {
      times += 1;
      return `${option.moving.read(0)} ft at $${option.moving.read(1)}`;
    });
  return { ...option, tell, timesTold: () => times };
}

describe('what was made of cells', () => {
  it('is given again while those it was made of stand, though others move', () => {
    const { set, tell, timesTold } = telling();
    expect(tell()).toBe('20 ft at $9');
    set(2, 5);
    expect(tell()).toBe('20 ft at $9');
    expect(timesTold()).toBe(1);
  });

  it('is made anew when one of them moves, or fails', () => {
    const { set, tell, timesTold } = telling();
    tell();
    set(1, 15);
    expect(tell()).toBe('20 ft at $15');
    set(0, { kind: 'division', origin: 0 });
    expect(tell()).toContain('$15');
    expect(timesTold()).toBe(3);
  });

  it('is made anew when what else it was made of is another', () => {
    const { tell, timesTold } = telling();
    for (const who of ['nobody', 'nobody', 'R. Vale']) tell(who);
    expect(timesTold()).toBe(2);
  });

  it('is made each time where nothing is kept', () => {
    const texts = new KeptByCells<number>();
    let times = 0;
    for (const _ of [1, 2]) texts.of({}, 'cracks', [], () => (times += 1));
    texts.ofAll([cracked(), {}], 'cracks', [], () => (times += 1));
    expect(times).toBe(3);
  });

  it('is not kept when making it ends with an error', () => {
    const { moving, set } = cracked();
    const prices = new KeptByCells<number>();
    const price = (): number =>
      prices.of({ moving }, 'price', [], () => {
        const length = moving.read(0);
        if (typeof length !== 'number') throw new Error('no length');
        return length * 9;
      });
    expect(price()).toBe(180);
    set(0, { kind: 'division', origin: 0 });
    expect(price).toThrow('no length');
    expect(price).toThrow('no length');
    set(0, 30);
    expect(price()).toBe(270);
  });

  it('of two options is made anew when a cell of either moves, and when they change places', () => {
    const [flake, solid] = [cracked(), cracked()];
    const rows = new KeptByCells<string>();
    const row = (...options: (typeof flake)[]): string =>
      rows.ofAll(options, 'cracks', [], () => options.map(({ moving }) => moving.read(0)).join(' and '));
    expect(row(flake, solid)).toBe('20 and 20');
    solid.set(0, 45);
    expect(row(flake, solid)).toBe('20 and 45');
    expect(row(solid, flake)).toBe('45 and 20');
    flake.set(0, 30);
    expect(row(solid, flake)).toBe('45 and 30');
  });
});

describe('what was made of things that were made of cells', () => {
  /** A sentence in a section in a sheet. */
  function nested() {
    const option = telling();
    const sections = new KeptByCells<readonly string[]>();
    const section = () => sections.of(option, 'repairs', [], () => ['Repairs', option.tell()]);
    const sheet = () => sections.of(option, 'floor', [], () => ['The floor', ...section()]);
    return { ...option, section, sheet };
  }

  it('is made anew with them, however far down the cell is', () => {
    const { set, sheet } = nested();
    expect(sheet()).toEqual(['The floor', 'Repairs', '20 ft at $9']);
    set(0, 45);
    expect(sheet()).toEqual(['The floor', 'Repairs', '45 ft at $9']);
  });

  it('is made anew also when what is in it was asked for first, and after many moves', () => {
    const { set, sheet, section, tell } = nested();
    sheet();
    for (const length of [45, 400, 20]) {
      set(0, length);
      tell();
      section();
      expect(sheet()[2]).toBe(`${length} ft at $9`);
    }
  });

  it('is made anew when only something new in it moves', () => {
    const { moving, set } = cracked();
    const prices = new KeptByCells<number>();
    const inner = (cell: number) => prices.of({ moving }, `cell ${cell}`, [], () => Number(moving.read(cell)));
    const outer = () => prices.of({ moving }, 'outer', [], () => (inner(2) === 1 ? inner(0) : inner(1)));
    expect(outer()).toBe(20);
    set(2, 0);
    expect(outer()).toBe(9);
    set(1, 15);
    expect(outer()).toBe(15);
  });

  it('is the same object when it comes out as it was', () => {
    const { moving, set } = cracked();
    const rows = new KeptByCells<{ readonly dear: boolean; readonly words: readonly string[] }>();
    const row = () =>
      rows.of({ moving }, 'row', [], () => {
        const dear = Number(moving.read(1)) > 10;
        return { dear, words: ['cracks', dear ? 'dear' : 'cheap'] };
      });
    const before = row();
    set(1, 8);
    expect(row()).toBe(before);
    set(1, 15);
    expect(row()).not.toBe(before);
    expect(row()).toEqual({ dear: true, words: ['cracks', 'dear'] });
  });
});
