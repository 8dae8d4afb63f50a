import { beforeEach, describe, expect, it } from 'vitest';
import { GridEditor } from '../../../../src/views/costing/grid/grid-editor.ts';
import { fieldAt } from '../../../../src/views/costing/grid/grid-shape.ts';
import type { ShownTable } from '../../../../src/views/costing/sheet/shown-table.ts';
import { coatTable } from '../../../helpers/shown-fields.ts';

const coverage = { row: 'base', column: 'coverage' };
const reason = 'It must lie between 1 and 2,000.';
const refused = (): ReadonlyMap<string, string> => new Map([['coats.base.coverage', reason]]);
const none: ReadonlyMap<string, string> = new Map();

/** Coats whose coverage is as it is typed. */
function covering(typed: string): ShownTable {
  return coatTable(['base', 'clear'], { coverage: { typed, shown: typed } });
}

let editor: GridEditor;
let entered: number;
let givenUp: number;

beforeEach(() => {
  entered = 0;
  givenUp = 0;
  editor = new GridEditor(
    () => undefined,
    () => {
      entered += 1;
    },
    () => {
      givenUp += 1;
    },
  );
});

function typeOver(table: ShownTable, text: string): void {
  editor.begin(coverage, text);
  editor.finish(fieldAt(table, coverage));
}

describe('a refused text of a grid', () => {
  beforeEach(() => {
    editor.follow(covering('134'), none);
    typeOver(covering('134'), '-5');
    editor.follow(covering('134'), refused());
  });

  it('stays at its cell with the reason while others are entered', () => {
    expect(entered).toBe(1);
    editor.follow(coatTable(['base', 'clear', 'second'], { coverage: { typed: '134' } }), none);
    expect(editor.unreadAt(coverage)).toMatchObject({ text: '-5', reason });
  });

  it('goes when Undo brings 120 back under it', () => {
    editor.follow(covering('120'), none);
    expect(editor.unreadAt(coverage)).toBe(undefined);
    editor.follow(covering('134'), none);
    expect(editor.unreadAt(coverage)).toBe(undefined);
  });

  it('stays while somebody mends it, though the value under it is another', () => {
    editor.begin(coverage, '-50');
    editor.follow(covering('120'), none);
    expect(editor.draftAt(coverage)).toBe('-50');
    expect(editor.unreadAt(coverage)).toMatchObject({ text: '-5' });
  });

  it('gives its refusal up when it is dropped, and a text that could not be read has none to give up', () => {
    editor.drop(coverage);
    expect([editor.unread.size, givenUp]).toEqual([0, 1]);
    editor.follow(covering('134'), none);
    typeOver(covering('134'), 'wide');
    expect(editor.unreadAt(coverage)?.text).toBe('wide');
    editor.drop(coverage);
    expect([editor.unread.size, givenUp]).toEqual([0, 1]);
  });

  it('comes back when it is refused again for the same reason', () => {
    editor.drop(coverage);
    editor.follow(covering('134'), none);
    typeOver(covering('134'), '-5');
    editor.follow(covering('134'), refused());
    expect(editor.unreadAt(coverage)).toMatchObject({ text: '-5', reason });
  });

  it('does not come back when later something else is refused at its cell', () => {
    editor.follow(covering('120'), none);
    editor.follow(covering('120'), refused());
    expect(editor.unreadAt(coverage)).toBe(undefined);
  });
});
