import type { Scope } from '../formula/scope.ts';
import type { FormulaReader } from './compile-formula.ts';
import type { SayPiece } from './compiled-stack.ts';

/** Cuts what a check or a text says into words and `{formula}` holes. */
export function readSay(text: string, scope: Scope, reader: FormulaReader, path: string): SayPiece[] {
  return text.split(/(\{[^{}]*\})/).flatMap((piece): SayPiece[] => {
    if (piece === '') return [];
    if (!piece.startsWith('{')) return [{ kind: 'words', words: piece }];
    const tree = reader.readAny(piece.slice(1, -1), scope, path);
    return tree === undefined ? [] : [{ kind: 'value', tree }];
  });
}
