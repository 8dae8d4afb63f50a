import { sheetLimits } from '../template/sheet-limits.ts';

/** Limits of a quote or of one entry of its log, seen before any schema walks it. */
const quoteLimits = { depth: sheetLimits.depth, members: 200_000, characters: 5_000_000 } as const;

/**
 * Why a value from outside is too deep or too large for a quote, or holds a property `__proto__`, which readers of
 * objects drop without a word; undefined when it may be looked at. Values that hold themselves are too deep.
 */
export function sizeFault(value: unknown): string | undefined {
  let members = 0;
  let characters = 0;
  const waiting: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 1 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (typeof next.value === 'string') characters += next.value.length;
    if (characters > quoteLimits.characters) return `There are more than ${quoteLimits.characters} characters in it.`;
    if (typeof next.value !== 'object' || next.value === null) continue;
    if (next.depth > quoteLimits.depth) return `It is nested deeper than ${quoteLimits.depth} levels.`;
    if (Array.isArray(next.value) && next.value.length > quoteLimits.members) return tooMany();
    for (const key of Object.keys(next.value)) {
      if (key === '__proto__') return 'No property is called “__proto__”.';
      members += 1;
      characters += key.length;
      if (members > quoteLimits.members) return tooMany();
    }
    for (const member of Object.values(next.value)) waiting.push({ value: member, depth: next.depth + 1 });
  }
  return undefined;
}

function tooMany(): string {
  return `There are more than ${quoteLimits.members} values in it.`;
}
