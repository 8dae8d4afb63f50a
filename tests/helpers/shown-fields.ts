import { parseUnit, type Unit } from '../../src/units/unit.ts';
import type { ShownColumn } from '../../src/views/costing/sheet/shown-columns.ts';
import type { ShownTable } from '../../src/views/costing/sheet/shown-table.ts';
import type { ShownField } from '../../src/views/parts/shown-field.ts';

export function unit(text: string): Unit {
  const read = parseUnit(text);
  if (read.kind === 'fault') throw new Error(read.reason);
  return read.unit;
}

/** What differs from a number of 0 that nobody has checked. */
export type FieldParts = Partial<ShownField> & Pick<ShownField, 'name' | 'label'>;

export function numberView(parts: FieldParts): ShownField {
  return {
    kind: 'number',
    cell: 1,
    unit: unit('1'),
    measures: 'us',
    shown: '0',
    suffix: '',
    prefix: '',
    typed: '0',
    chosen: '',
    options: [],
    standing: 'unchecked',
    standard: '',
    typeOver: 'never',
    worked: '',
    range: '',
    limits: '',
    source: '',
    failed: false,
    ...parts,
  };
}

/** A number that a formula gives. */
function resultView(parts: FieldParts): ShownField {
  return numberView({ kind: 'result', standing: 'worked out', typeOver: 'departure', ...parts });
}

export function coverageView(parts: Partial<ShownField> = {}): ShownField {
  return numberView({
    name: 'coverage',
    label: 'Coverage',
    unit: unit('ft2/gal'),
    shown: '134',
    suffix: 'ft²/gal',
    typed: '134',
    range: '100 to 160 ft²/gal, likely 134 ft²/gal',
    limits: '1 to 2,000 ft²/gal',
    source: 'common practice, no source',
    ...parts,
  });
}

export function needView(parts: Partial<ShownField> = {}): ShownField {
  return resultView({
    name: 'need',
    label: 'Need',
    unit: unit('gal'),
    shown: '4.5',
    suffix: 'gal',
    typed: '4.5',
    cell: 7,
    ...parts,
  });
}

const products = [
  { code: 'slate', label: 'Invented base, slate' },
  { code: 'gloss', label: 'Invented clear, gloss' },
];

function coatFields(label: string, changes: CoatChanges): readonly ShownField[] {
  return [
    resultView({ name: 'coat', label: 'Coat', shown: label, typeOver: 'never', typed: '' }),
    numberView({
      kind: 'choice',
      name: 'product',
      label: 'Product',
      options: products,
      chosen: 'slate',
      shown: 'Invented base, slate',
    }),
    numberView({ kind: 'yesNo', name: 'include', label: 'Included', shown: 'yes', typed: '1' }),
    coverageView(changes.coverage),
    needView(changes.need),
  ];
}

interface CoatChanges {
  readonly coverage?: Partial<ShownField>;
  readonly need?: Partial<ShownField>;
}

function column(name: string, label: string, group: string, words: boolean): ShownColumn {
  return { name, label, group, detail: false, words };
}

/** A table of coats: name, product, included, coverage, need. `changes` are those of every row. */
export function coatTable(
  coats: readonly string[] = ['base', 'clear', 'second'],
  changes: CoatChanges = {},
): ShownTable {
  return {
    name: 'coats',
    title: 'Coats',
    free: true,
    columns: [
      column('coat', 'Coat', '', true),
      column('product', 'Product', '', true),
      column('include', 'Included', '', false),
      column('coverage', 'Coverage', 'set', false),
      column('need', 'Need', 'film', false),
    ],
    rows: coats.map((id) => ({ id, label: `The ${id}`, fields: coatFields(`The ${id}`, changes) })),
    note: '',
    telling: ['coverage', 'need'],
  };
}
