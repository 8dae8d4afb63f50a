import type { ToldCheck } from '../quote/told-checks.ts';

/** A system and its checks that do not hold. */
export interface CheckedSystem {
  readonly title: string;
  readonly checks: readonly ToldCheck[];
}

/** Checks that several systems say in the same words, told together. */
export interface ToldTogether {
  readonly titles: readonly string[];
  readonly checks: readonly ToldCheck[];
}

/** Cautions and notes that more than one system says word for word, by the systems that say them. A stop is told with its own system. */
export function toldTogether(systems: readonly CheckedSystem[]): ToldTogether[] {
  const groups = new Map<string, { readonly titles: readonly string[]; readonly checks: Map<string, ToldCheck> }>();
  for (const check of systems.flatMap(({ checks }) => checks)) {
    const sayers = systems.filter(({ checks }) => checks.some((other) => saysTheSame(check, other)));
    if (check.severity === 'stop' || sayers.length < 2) continue;
    const key = sayers.map((system) => systems.indexOf(system)).join(' ');
    const group = groups.get(key) ?? { titles: sayers.map(({ title }) => title), checks: new Map() };
    groups.set(key, group);
    group.checks.set(`${check.name} ${check.says}`, check);
  }
  return [...groups.values()].map(({ titles, checks }) => ({ titles, checks: [...checks.values()] }));
}

export function saysTheSame(one: ToldCheck, other: ToldCheck): boolean {
  return one.name === other.name && one.severity === other.severity && one.says === other.says;
}
