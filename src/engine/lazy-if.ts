import { CellError, ErrorType, FunctionPlugin, type ImplementedFunctions } from 'hyperformula';
import type { CallNode, State, Value } from './plugin-types.ts';

/**
 * IF in place of HyperFormula's own, which works out both arms and throws one away. A look-up that only some rows of a
 * table need is then paid for by all of them.
 */
export class LazyIf extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = { IF: { method: 'takenArm' } };

  takenArm(call: CallNode, state: State): Value {
    const [condition, then, otherwise] = call.args;
    if (condition === undefined || then === undefined || otherwise === undefined) return new CellError(ErrorType.NA);
    const met = this.evaluateAst(condition, state);
    if (met instanceof CellError) return met;
    return this.evaluateAst(met === true ? then : otherwise, state);
  }
}
