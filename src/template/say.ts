import type { Scope } from '../formula/scope.ts';
import type { FormulaReader } from './compile-formula.ts';
import type { SayPiece } from './compiled-stack.ts';

/**
 * Cuts what a check or a text says into words and `{formula}` holes. A hole that names what a person writes, and nothing
 * else, is filled with it.
 */
export function readSay(text: string, scope: Scope, reader: FormulaReader, path: string): SayPiece[] {
  return text.split(/(\{[^{}]*\})/).flatMap((piece): SayPiece[] => {
    if (piece === '') return [];
    if (!piece.startsWith('{')) return [{ kind: 'words', words: piece }];
    const hole = piece.slice(1, -1);
    const written = writtenPiece(hole.trim(), scope);
    if (written !== undefined) return [written];
    const tree = reader.readAny(hole, scope, path);
    return tree === undefined ? [] : [{ kind: 'value', tree }];
  });
}

function writtenPiece(name: string, scope: Scope): SayPiece | undefined {
  const own = scope.ownTable === undefined ? undefined : scope.table(scope.ownTable)?.column(name);
  const named = own ?? scope.line(name);
  if (named?.kind !== 'unreadable' || named.unsaid === undefined) return undefined;
  return { kind: 'written', name, ofRow: own !== undefined, unsaid: named.unsaid };
}
