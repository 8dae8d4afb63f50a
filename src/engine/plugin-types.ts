import type { FunctionPlugin } from 'hyperformula';

// HyperFormula exports its plugin class but not the types that the class's methods speak.
type Evaluate = FunctionPlugin['evaluateAst'];

export type State = Parameters<Evaluate>[1];
export type Value = ReturnType<Evaluate>;
export type CallNode = Extract<Parameters<Evaluate>[0], { procedureName: string }>;
