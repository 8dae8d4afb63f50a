/** The keys that lead back and forward through a row or a column of keys of which Tab stops at one. */
export const alongRow = { back: 'ArrowLeft', forward: 'ArrowRight' } as const;
export const alongColumn = { back: 'ArrowUp', forward: 'ArrowDown' } as const;

/** The place, counted from 0, that a key leads to from place `at` of `count`; undefined where it leads nowhere. */
export function placeAfter(
  key: string,
  at: number,
  count: number,
  { back, forward }: typeof alongRow | typeof alongColumn,
): number | undefined {
  switch (key) {
    case back:
      return Math.max(0, at - 1);
    case forward:
      return Math.min(count - 1, at + 1);
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return undefined;
  }
}
