import { checkFormula } from '../formula/check.ts';
import type { Checked, ValueType } from '../formula/checked-tree.ts';
import { type ParseResult, parseFormula } from '../formula/parser.ts';
import type { Scope } from '../formula/scope.ts';
import type { Span } from '../formula/tree.ts';
import { fits, isLiteral, typeWords } from '../formula/value-type.ts';
import { one, parseUnit, sameUnit } from '../units/unit.ts';
import type { FaultReporter } from './sheet-fault.ts';
import { sheetLimits } from './sheet-limits.ts';

/** Formulas that were read, by their text: systems share most of theirs through parts. */
export type ReadFormulas = Map<string, ParseResult>;

/** Reads formulas and units of a sheet, telling each fault once with its path. */
export class FormulaReader {
  private readonly report: FaultReporter;
  private readonly known: ReadFormulas;
  private readonly told = new Set<string>();
  private readonly units = new Map<string, ReturnType<typeof parseUnit>>();

  constructor(report: FaultReporter, known: ReadFormulas = new Map()) {
    this.report = report;
    this.known = known;
  }

  /** The checked tree, or undefined after telling what is wrong. */
  read(text: string, scope: Scope, wanted: ValueType, path: string): Checked | undefined {
    const tree = this.readAny(text, scope, path);
    if (tree === undefined || gives(tree, wanted)) return tree;
    this.tell(path, `This gives ${typeWords(tree.type)}, and ${typeWords(wanted)} is declared.`);
    return undefined;
  }

  /** Any value at all: a hole in what a check says. */
  readAny(text: string, scope: Scope, path: string): Checked | undefined {
    if (this.told.size > sheetLimits.faultsTold) return undefined;
    const parsed = this.parsed(text);
    if (parsed.kind === 'fault') {
      this.tell(path, placed(text, parsed.fault.at, parsed.fault.reason));
      return undefined;
    }
    const { tree, faults } = checkFormula(parsed.tree, scope);
    for (const fault of faults) this.tell(path, placed(text, fault.at, fault.reason));
    return faults.length > 0 ? undefined : tree;
  }

  numberType(unit: string | undefined, path: string): ValueType {
    if (unit === undefined) {
      this.tell(path, 'The unit is missing; a plain number has the unit “1”.');
      return { kind: 'faulty' };
    }
    const read = this.units.get(unit) ?? parseUnit(unit);
    this.units.set(unit, read);
    if (read.kind === 'unit') return { kind: 'number', unit: read.unit };
    this.tell(path, read.reason);
    return { kind: 'faulty' };
  }

  private parsed(text: string): ParseResult {
    const read = this.known.get(text) ?? parseFormula(text);
    this.known.set(text, read);
    return read;
  }

  private tell(path: string, reason: string): void {
    const once = `${path}\n${reason}`;
    if (this.told.has(once)) return;
    this.told.add(once);
    this.report(path, reason);
  }
}

/** A formula of literals only takes the declared unit; 0 fits every unit but a point. */
function gives(tree: Checked, wanted: ValueType): boolean {
  if (tree.type.kind === 'faulty' || wanted.kind === 'faulty') return true;
  if (wanted.kind !== 'number') return tree.type.kind === wanted.kind;
  return tree.type.kind === 'number' && (isPlainLiteral(tree) || fits(tree, wanted.unit));
}

/** DATE of literals is a date and no plain number. */
function isPlainLiteral(tree: Checked): boolean {
  return isLiteral(tree) && tree.type.kind === 'number' && sameUnit(tree.type.unit, one);
}

function placed(text: string, at: Span, reason: string): string {
  const excerpt = text.slice(at.start, Math.min(at.end, at.start + 40));
  return `Character ${at.start + 1}${excerpt === '' ? '' : `, “${excerpt}”`}: ${reason}`;
}
