import type { ValueType } from '../formula/checked-tree.ts';
import { parseUnit } from '../units/unit.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import type { FaultReporter } from './sheet-fault.ts';
import type { Need } from './sheet-schema.ts';

/** The type a part was promised for a name it needs. */
export function typeOfNeed(need: Need): ValueType {
  if (need.kind === 'words') return { kind: 'truth' };
  if (need.kind === 'product') return { kind: 'code', products: need.accepts ?? [] };
  if (need.codes !== undefined) return need.codes.length === 0 ? { kind: 'code' } : { kind: 'code', codes: need.codes };
  const unit = parseUnit(need.unit ?? '1');
  return unit.kind === 'unit' ? { kind: 'number', unit: unit.unit } : { kind: 'faulty' };
}

/** Tells needs that stand twice or do not say what they are. */
export function tellFaultyNeeds(sheet: ComposedSheet, kinds: ReadonlySet<string>, report: FaultReporter): void {
  const names = new Set<string>();
  sheet.needs.forEach((need, at) => {
    const path = `${sheet.layer} ${sheet.id}: needs[${at}]`;
    if (names.has(need.name)) report(path, `“${need.name}” is needed twice.`);
    names.add(need.name);
    const told = [need.unit, need.codes, need.kind].filter((way) => way !== undefined).length;
    if (told !== 1) report(path, `“${need.name}” needs one of “unit”, “codes” and “kind”.`);
    const unit = need.unit === undefined ? undefined : parseUnit(need.unit);
    if (unit?.kind === 'fault') report(`${path}.unit`, unit.reason);
    for (const kind of need.accepts ?? []) {
      if (!kinds.has(kind)) report(`${path}.accepts`, `There is no kind of product “${kind}”.`);
    }
  });
}
