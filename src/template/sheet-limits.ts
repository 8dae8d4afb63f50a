/** Limits of a sheet file; size and depth are checked on its text before anything walks it. */
export const sheetLimits = {
  bytes: 1_000_000,
  depth: 12,
  sections: 200,
  lines: 2000,
  /** Of all its tables together. */
  columns: 2000,
  rowsPerTable: 500,
  text: 2000,
  formulas: 5000,
  /** Cells that all formulas of a quote read together, each column counted row by row. */
  cellsRead: 2_000_000,
  needs: 500,
  kinds: 100,
  /** Choices that units may follow. */
  unitCases: 20,
  faultsTold: 200,
} as const;

export type JsonText =
  | { readonly kind: 'json'; readonly value: unknown }
  | { readonly kind: 'fault'; readonly reason: string };

/** Reads JSON that may come from anyone: refuses what is too large or too deep before it is parsed. */
export function readJson(text: string): JsonText {
  if (text.length > sheetLimits.bytes || new TextEncoder().encode(text).length > sheetLimits.bytes) {
    return { kind: 'fault', reason: `The file is larger than ${sheetLimits.bytes / 1_000_000} MB.` };
  }
  if (depthOf(text) > sheetLimits.depth) {
    return { kind: 'fault', reason: `The file is nested deeper than ${sheetLimits.depth} levels.` };
  }
  try {
    return withoutPrototypeKey(text);
  } catch (error) {
    const why = error instanceof SyntaxError ? ` ${error.message}.` : '';
    return { kind: 'fault', reason: `The file is not JSON.${why}` };
  }
}

/** Refuses JSON in which an object has a property `__proto__`: readers of objects drop it without a word. */
function withoutPrototypeKey(text: string): JsonText {
  let found = false;
  const json: unknown = JSON.parse(text, (key, value: unknown) => {
    if (key === '__proto__') found = true;
    return value;
  });
  return found
    ? { kind: 'fault', reason: 'No property of a sheet is called “__proto__”.' }
    : { kind: 'json', value: json };
}

/** How deep brackets are nested outside texts, without parsing. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (inText) {
      if (character === '\\') at += 1;
      else if (character === '"') inText = false;
    } else if (character === '"') inText = true;
    else if (character === '{' || character === '[') deepest = Math.max(deepest, ++depth);
    else if (character === '}' || character === ']') depth -= 1;
  }
  return deepest;
}
