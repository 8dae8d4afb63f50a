import type { CellValue } from '../../formula/cells.ts';
import type { ValueType } from '../../formula/checked-tree.ts';
import type { StoredValue } from '../../quote/quote-document.ts';
import { givenValue } from '../../quote/stack-entries.ts';
import { isConstant } from '../../template/constant.ts';
import type { ColumnFile, LineFile } from '../../template/line-schema.ts';
import { wordsOfCode } from '../../template/table-rows.ts';
import { formatNumber, formatQuantity, isMoney, unitSuffix } from '../../units/format.ts';
import type { Measures } from '../../units/measures.ts';
import { labelIn } from '../../units/said-units.ts';
import { standingText } from '../../units/typed-measure.ts';
import { one, type Unit } from '../../units/unit.ts';

/** One value of a sheet as a screen shows it, of a line or of a table's cell. */
export interface ShownField {
  readonly kind: 'number' | 'yesNo' | 'choice' | 'words' | 'text' | 'result';
  readonly name: string;
  readonly label: string;
  /** Index of its cell in the option's plan; undefined for free text and for words. */
  readonly cell: number | undefined;
  /** The unit of the value; it is shown and typed in `measures`. */
  readonly unit: Unit;
  readonly measures: Measures;
  /** The value in words and numbers, without the unit behind it. */
  readonly shown: string;
  readonly suffix: string;
  /** The $ that leads an amount of money in its field. */
  readonly prefix: string;
  /** What stands in the field to be typed over. */
  readonly typed: string;
  readonly chosen: string;
  readonly options: readonly FieldOption[];
  /**
   * `changed`: not our standard. `unchecked`: our standard, which nobody has looked at; `checked` once somebody has.
   * `departed`: typed over a formula.
   */
  readonly standing: 'unchecked' | 'checked' | 'changed' | 'departed' | 'worked out' | 'constant';
  /** Our standard value, where what stands is another. */
  readonly standard: string;
  /**
   * How what is worked out may be overruled: a number as a departure; over a row's own formula a number as an entry, or
   * the other answer of yes and no.
   */
  readonly typeOver: 'never' | 'departure' | 'entry' | 'answer';
  /** What the formula gives, where a number was typed over it. */
  readonly worked: string;
  /** What is usual: “3 to 8 %, likely 5 %”. */
  readonly range: string;
  /** What may be entered: “0 to 2,000 ft”. */
  readonly limits: string;
  readonly source: string;
  readonly failed: boolean;
}

export interface FieldOption {
  readonly code: string;
  readonly label: string;
}

/** Every product by its code. */
export type ProductNames = ReadonlyMap<string, FieldOption & { readonly kind: string }>;

/** What a field is made from. */
export interface FieldParts {
  readonly definition: LineFile | ColumnFile;
  readonly type: ValueType;
  readonly value: CellValue | undefined;
  readonly cell: number | undefined;
  readonly stored: StoredValue | undefined;
  /** The template's own value, where it is a plain one. */
  readonly standard: number | string | undefined;
  /** Whether a row works the value out by a formula of its own, unless a number is entered. */
  readonly ownFormula: boolean;
  /** What the formula gives, where a number was typed over it. */
  readonly worked: CellValue | undefined;
  readonly productNames: ProductNames;
  readonly measures: Measures;
}

export function shownField(parts: FieldParts): ShownField {
  const { definition, type, value, cell, stored, measures } = parts;
  const unit = type.kind === 'number' ? type.unit : one;
  const options = optionsOf(definition, parts);
  const yesNo = definition.kind === 'entry' && definition.yesNo === true;
  const shown = shownText(yesNo && typeof value === 'number' ? value === 1 : value, unit, options, measures);
  const entered = typeof stored === 'object' && 'typed' in stored ? stored.typed : undefined;
  return {
    kind: kindOf(parts),
    name: definition.name,
    label: labelIn(definition.label, unit, measures),
    cell,
    unit,
    measures,
    shown,
    suffix: typeof value === 'number' && !yesNo ? unitSuffix(unit, shown, measures) : '',
    prefix: type.kind === 'number' && isMoney(unit) ? '$' : '',
    typed: typeof value === 'number' ? standingText(value, entered, unit, measures) : (entered ?? ''),
    chosen: typeof value === 'string' ? value : '',
    options,
    standing: standingOf(parts),
    standard: standardText(parts, unit, options),
    typeOver: typeOverOf(parts),
    worked: workedText(parts, unit),
    range: rangeText(definition, unit, measures),
    limits: limitsText(definition, unit, measures),
    source: definition.source ?? '',
    failed: typeof value === 'object',
  };
}

function kindOf({ definition, ownFormula, stored }: FieldParts): ShownField['kind'] {
  if (definition.kind === 'text' || definition.kind === 'words') return definition.kind;
  if (definition.kind === 'check' || definition.kind === 'key' || definition.kind === 'operated') return 'result';
  if (definition.kind === 'formula') return 'result';
  if (ownFormula && stored === undefined) return 'result';
  if (definition.kind === 'choice' || definition.kind === 'product') return 'choice';
  return definition.yesNo ? 'yesNo' : 'number';
}

function optionsOf(definition: LineFile | ColumnFile, { productNames }: FieldParts): readonly FieldOption[] {
  if (definition.kind === 'choice') return definition.options;
  if (definition.kind !== 'product') return [];
  return [...productNames.values()].filter((product) => definition.accepts.includes(product.kind));
}

function shownText(
  value: CellValue | undefined,
  unit: Unit,
  options: readonly FieldOption[],
  measures: Measures,
): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return formatNumber(value, unit, { measures });
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return options.find((option) => option.code === value)?.label ?? wordsOfCode(value);
  return 'incomplete';
}

function standingOf({ definition, stored, standard, ownFormula }: FieldParts): ShownField['standing'] {
  if (stored === undefined && isConstant(definition)) return 'constant';
  if (definition.kind === 'operated') return 'worked out';
  if (definition.kind === 'formula' || ownFormula) return stored === undefined ? 'worked out' : 'departed';
  if (stored === undefined) return 'unchecked';
  if (givenValue(stored).value !== standard) return 'changed';
  return typeof stored === 'object' && 'confirmed' in stored && stored.confirmed ? 'checked' : 'unchecked';
}

function typeOverOf({ definition, ownFormula }: FieldParts): ShownField['typeOver'] {
  if (definition.kind === 'formula') return definition.code === true || isConstant(definition) ? 'never' : 'departure';
  if (definition.kind !== 'entry' || !ownFormula) return 'never';
  return definition.yesNo === true ? 'answer' : 'entry';
}

function workedText({ definition, worked, measures }: FieldParts, unit: Unit): string {
  if (worked === undefined) return '';
  if (definition.kind === 'entry' && definition.yesNo === true) return worked === 1 ? 'yes' : 'no';
  return typeof worked === 'number' ? formatQuantity(worked, unit, { measures }) : 'nothing yet';
}

function standardText(parts: FieldParts, unit: Unit, options: readonly FieldOption[]): string {
  const { definition, stored, standard, measures } = parts;
  if (stored === undefined || standard === undefined) return '';
  if (definition.kind === 'entry' && definition.yesNo === true) return standard === 1 ? 'yes' : 'no';
  if (typeof standard === 'number') return formatQuantity(standard, unit, { measures });
  return options.find((option) => option.code === standard)?.label ?? standard;
}

function rangeText(definition: LineFile | ColumnFile, unit: Unit, measures: Measures): string {
  if (definition.kind !== 'entry' || definition.low === undefined || definition.high === undefined) return '';
  const shown = (value: number): string => formatQuantity(value, unit, { measures });
  const range = `${formatNumber(definition.low, unit, { measures })} to ${shown(definition.high)}`;
  return definition.likely === undefined ? range : `${range}, likely ${shown(definition.likely)}`;
}

function limitsText(definition: LineFile | ColumnFile, unit: Unit, measures: Measures): string {
  if (definition.kind !== 'entry' || definition.limits === undefined || definition.yesNo === true) return '';
  const [least, most] = definition.limits;
  return `${formatNumber(least, unit, { measures })} to ${formatQuantity(most, unit, { measures })}`;
}
