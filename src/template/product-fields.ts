import { productKey, productTable } from '../formula/cells.ts';
import { parseUnit } from '../units/unit.ts';
import type { ProductField, ProductFields } from './compiled-stack.ts';
import type { ComposedSheet } from './composed-sheet.ts';
import type { ColumnFile } from './line-schema.ts';
import type { FaultReporter } from './sheet-fault.ts';

/** Reads the kinds of products and their fields from the price-list sheet. */
export function productFieldsOf(sheet: ComposedSheet | undefined, report: FaultReporter): ProductFields {
  const kinds = new Map((sheet?.kinds ?? []).map(({ kind, label, soldBy }) => [kind, { label, soldBy }]));
  const fields = new Map<string, ProductField>();
  for (const section of sheet?.sections ?? []) {
    for (const { table, path } of section.tables) {
      if (table.name !== productTable) report(path, `A price list has one table, called “${productTable}”.`);
      if (table.columns[0]?.kind !== 'key' || table.columns[0].name !== productKey) {
        report(path, `The first column of products is the key “${productKey}”.`);
      }
      for (const [place, column] of table.columns.entries()) {
        const at = `${path}.columns[${place}]`;
        for (const kind of column.kinds ?? []) {
          if (!kinds.has(kind)) report(`${at}.kinds`, `There is no kind of product “${kind}”.`);
        }
        const field = fieldOf(column, at, report);
        if (field !== undefined) fields.set(field.name, field);
      }
    }
  }
  return { kinds, fields };
}

function fieldOf(column: ColumnFile, path: string, report: FaultReporter): ProductField | undefined {
  const common = { name: column.name, label: column.label, ...(column.kinds && { kinds: column.kinds }) };
  if (column.kind === 'key') return undefined;
  if (column.kind === 'choice') {
    const codes = column.options.map((option) => option.code);
    return { ...common, codes, type: { kind: 'code', codes } };
  }
  if (column.kind !== 'entry') {
    report(path, 'A field of a product is an entry or a choice.');
    return undefined;
  }
  const unit = parseUnit(column.unit ?? '');
  // A field that is yes or no is 1 or 0.
  const limits = column.yesNo ? ([0, 1] as const) : column.limits;
  if (unit.kind === 'unit')
    return { ...common, unit: unit.unit, type: { kind: 'number', unit: unit.unit }, ...(limits && { limits }) };
  report(`${path}.unit`, unit.reason);
  return { ...common, type: { kind: 'faulty' } };
}
