import type { StackEntries } from './entries.ts';
import { type FormerNames, noFormerNames } from './former-names.ts';

/** What a quote enters, under present names; where it has both, the present one holds. */
export function underPresentNames(entries: StackEntries, former: FormerNames): StackEntries {
  if (former === noFormerNames) return entries;
  const { lines, tables } = entries;
  const present = <V>(given: ReadonlyMap<string, V>, names: ReadonlyMap<string, string> | undefined) => {
    const renamed = [...given]
      .filter(([name]) => names?.has(name))
      .map(([name, value]) => [names?.get(name) ?? name, value] as const);
    return renamed.length === 0 ? given : new Map([...renamed, ...[...given].filter(([name]) => !names?.has(name))]);
  };
  return {
    lines: present(lines, former.lines),
    tables: new Map(
      [...tables].map(([name, table]) => {
        const columns = former.columns.get(name);
        const cells = new Map([...table.cells].map(([row, own]) => [row, present(own, columns)] as const));
        const added = new Map(
          [...table.added].map(([row, own]) => [
            row,
            Object.fromEntries(present(new Map(Object.entries(own)), columns)),
          ]),
        );
        return [name, { ...table, cells, added }] as const;
      }),
    ),
  };
}
