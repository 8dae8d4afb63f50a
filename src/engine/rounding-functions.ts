import { FunctionArgumentType, FunctionPlugin, type ImplementedFunctions } from 'hyperformula';
import { roundDownTo, roundTo, roundUpTo, wholePart } from '../units/decimal-rounding.ts';
import type { CallNode, State, Value } from './plugin-types.ts';

const number = { argumentType: FunctionArgumentType.NUMBER };

/**
 * ROUND, ROUNDUP, ROUNDDOWN and INT over the project's one rounding file, in place of HyperFormula's own, which round
 * the binary value: there ROUND(1.005, 2) is 1 and INT(-1.5) is -1.
 */
export class RoundingFunctions extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {
    ROUND: { method: 'round', parameters: [number, number] },
    ROUNDUP: { method: 'roundUp', parameters: [number, number] },
    ROUNDDOWN: { method: 'roundDown', parameters: [number, number] },
    INT: { method: 'int', parameters: [number] },
  };

  round(call: CallNode, state: State): Value {
    return this.runFunction(call.args, state, this.metadata('ROUND'), roundTo);
  }

  roundUp(call: CallNode, state: State): Value {
    return this.runFunction(call.args, state, this.metadata('ROUNDUP'), roundUpTo);
  }

  roundDown(call: CallNode, state: State): Value {
    return this.runFunction(call.args, state, this.metadata('ROUNDDOWN'), roundDownTo);
  }

  int(call: CallNode, state: State): Value {
    return this.runFunction(call.args, state, this.metadata('INT'), wholePart);
  }
}
