import { CellError, ErrorType, FunctionPlugin, type ImplementedFunctions } from 'hyperformula';
import type { CallNode, State, Value } from './plugin-types.ts';

/**
 * IF and SWITCH in place of HyperFormula's own, which work out every arm and throw all but one away. A look-up that only
 * some rows of a table need is then paid for by all of them.
 */
export class TakenArms extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {
    IF: { method: 'byCondition' },
    SWITCH: { method: 'byCode' },
  };

  byCondition(call: CallNode, state: State): Value {
    const [condition, then, otherwise] = call.args;
    if (condition === undefined || then === undefined || otherwise === undefined) return new CellError(ErrorType.NA);
    const met = this.evaluateAst(condition, state);
    if (met instanceof CellError) return met;
    return this.evaluateAst(met === true ? then : otherwise, state);
  }

  byCode(call: CallNode, state: State): Value {
    const [choice, ...pairs] = call.args;
    if (choice === undefined) return new CellError(ErrorType.NA);
    const chosen = this.evaluateAst(choice, state);
    if (chosen instanceof CellError) return chosen;
    for (let place = 0; place + 1 < pairs.length; place += 2) {
      const [code, arm] = [pairs[place], pairs[place + 1]];
      if (code !== undefined && arm !== undefined && this.evaluateAst(code, state) === chosen)
        return this.evaluateAst(arm, state);
    }
    return new CellError(ErrorType.NA);
  }
}
