import type { Edit, SingleEdit } from './edit.ts';

/**
 * An inverse without the steps that a later step overwrites: a table or line that several edits changed is put back once,
 * as it was before the first of them. Without this, a table pasted cell by cell would be in the log once a cell.
 */
export function mergedInverse(inverse: Edit): Edit {
  if (inverse.kind !== 'several') return inverse;
  const targets = inverse.edits.map(targetOf);
  const edits = inverse.edits.filter((_, at) => {
    const target = targets[at];
    return target === undefined || targets.lastIndexOf(target) === at || !restoresOnly(inverse.edits.slice(at));
  });
  const products = inverse.edits.filter(restores).findLast((edit) => edit.products !== undefined)?.products;
  const last = edits.at(-1);
  // The products of before go with the last step, whichever step brought another.
  if (products !== undefined && last !== undefined && restores(last)) edits.splice(-1, 1, { ...last, products });
  return { ...inverse, edits };
}

type Restoring = Extract<SingleEdit, { kind: 'restoreTable' | 'restoreLine' }>;

function restores(edit: SingleEdit): edit is Restoring {
  return edit.kind === 'restoreTable' || edit.kind === 'restoreLine';
}

/** What a restoring edit overwrites as a whole. */
function targetOf(edit: SingleEdit): string | undefined {
  switch (edit.kind) {
    case 'restoreTable':
      return JSON.stringify([edit.sheet, 'table', edit.table]);
    case 'restoreLine':
      return JSON.stringify([edit.sheet, 'line', edit.line]);
    default:
      return undefined;
  }
}

/** Restoring edits depend on nothing that others before them did; an option that comes or goes between them matters. */
function restoresOnly(edits: readonly SingleEdit[]): boolean {
  return edits.every((edit) => targetOf(edit) !== undefined);
}
