import type { CellPlace, CellValue } from '../formula/cells.ts';
import type { PartEvaluator } from '../formula/evaluate-part.ts';
import { valueText } from '../formula/explain.ts';
import { caseOf, type SayPiece } from '../template/compiled-stack.ts';
import type { Layer } from '../template/sheet-schema.ts';
import type { Measures } from '../units/measures.ts';
import { evaluatorOf, type OptionResults } from './option-results.ts';
import { outlineChecks } from './outline-checks.ts';
import { filledText } from './said-texts.ts';

export type Severity = 'note' | 'caution' | 'stop';

/** A check and its verdict. */
export interface ToldCheck {
  /** A line's name, or `table.row.column`. */
  readonly name: string;
  readonly label: string;
  readonly layer: Layer;
  readonly severity: Severity;
  /** A stop with no way round. */
  readonly absolute: boolean;
  /** Its words may be read by a customer, as those of every check of the floor may. */
  readonly open: boolean;
  /** `unknown` when what it asks cannot be worked out: that is no pass. */
  readonly verdict: 'holds' | 'fails' | 'unknown';
  /** What it says when it does not hold. */
  readonly says: string;
  readonly source?: string;
  readonly cell: number;
}

/**
 * Every check of an option with its verdict: lines, columns, then outlines by corners, each in sheet order; numbers in
 * what it says are in `measures`.
 */
export function toldChecks(results: OptionResults, measures: Measures = 'us'): ToldCheck[] {
  let evaluator: PartEvaluator | undefined;
  const speak = (say: readonly SayPiece[] | undefined, place: CellPlace): string => {
    evaluator ??= evaluatorOf(results);
    const evaluate = evaluator;
    return filledText(say ?? [], measures, ({ tree }) => valueText(evaluate(tree, place), tree.type, measures));
  };
  return checksOf(results, speak);
}

function checksOf(results: OptionResults, speak: Speak): ToldCheck[] {
  return [...lineChecks(results, speak), ...columnChecks(results, speak), ...outlineChecks(results)];
}

/** Checks that do not hold, or of which nobody can tell. */
export function openChecks(results: OptionResults, measures: Measures = 'us'): ToldCheck[] {
  return toldChecks(results, measures).filter((check) => check.verdict !== 'holds');
}

/** Whether any stop is open, so that the price may not be given. */
export function isHeldBack(results: OptionResults): boolean {
  const silent = (): string => '';
  return checksOf(results, silent).some(({ severity, verdict }) => severity === 'stop' && verdict !== 'holds');
}

type Speak = (say: readonly SayPiece[] | undefined, place: CellPlace) => string;

function lineChecks(results: OptionResults, speak: Speak): ToldCheck[] {
  return [...results.stack.lines.values()].flatMap(({ definition, layer, say }): ToldCheck[] => {
    const cell = results.option.plan.lines.get(definition.name);
    if (definition.kind !== 'check' || cell === undefined) return [];
    const verdict = verdictOf(results.read(cell));
    const says = saying(verdict, definition.label, () => speak(say, { kind: 'line', name: definition.name }));
    return [{ ...described(definition), name: definition.name, layer, verdict, says, cell }];
  });
}

function columnChecks(results: OptionResults, speak: Speak): ToldCheck[] {
  return [...results.stack.tables.values()].flatMap((table) =>
    [...table.columns.values()].flatMap((column): ToldCheck[] => {
      const { definition } = column;
      if (definition.kind !== 'check') return [];
      const name = table.definition.name;
      const cells = results.option.plan.tables.get(name)?.columns.get(definition.name) ?? [];
      const rows = results.option.rows.get(name) ?? [];
      return cells.map((cell, row) => {
        const verdict = verdictOf(results.read(cell));
        const { id = '', label = '', unitCase = '' } = rows[row] ?? {};
        const say = caseOf(column, unitCase)?.say;
        const place: CellPlace = { kind: 'cell', table: name, column: definition.name, row };
        const says = saying(verdict, `${label}: ${definition.label}`, () => `${label}: ${speak(say, place)}`);
        return {
          ...described(definition),
          name: `${name}.${id}.${definition.name}`,
          layer: table.layer,
          verdict,
          says,
          cell,
        };
      });
    }),
  );
}

/** What fails in words; what nobody can tell is not said to fail. */
function saying(verdict: ToldCheck['verdict'], label: string, speak: () => string): string {
  if (verdict === 'holds') return '';
  return verdict === 'fails' ? speak() : `${label}: this cannot be told, since a number it asks for is missing.`;
}

interface CheckDefinition {
  readonly label: string;
  readonly severity: Severity;
  readonly absolute?: boolean | undefined;
  readonly open?: boolean | undefined;
  readonly source?: string | undefined;
}

function described({
  label,
  severity,
  absolute,
  open,
  source,
}: CheckDefinition): Pick<ToldCheck, 'label' | 'severity' | 'absolute' | 'open' | 'source'> {
  return { label, severity, absolute: absolute === true, open: open === true, ...(source !== undefined && { source }) };
}

function verdictOf(value: CellValue): ToldCheck['verdict'] {
  if (typeof value !== 'boolean') return 'unknown';
  return value ? 'holds' : 'fails';
}
