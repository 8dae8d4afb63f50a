import type { Workbook } from '../../src/engine/option-workbook.ts';
import { openWorkbook } from '../../src/engine/workbook.ts';
import type { PlainPlan } from '../../src/formula/cells.ts';
import type { Checked } from '../../src/formula/checked-tree.ts';

/** An evaluator with a bug: what it rounds up to a multiple comes out one step too high. Everything after it follows. */
export function openFaulty(plan: PlainPlan): Workbook {
  const cells = plan.cells.map((cell) =>
    cell.content.kind === 'formula' ? { ...cell, content: { ...cell.content, tree: faulty(cell.content.tree) } } : cell,
  );
  return openWorkbook({ ...plan, cells });
}

function faulty(tree: Checked): Checked {
  switch (tree.kind) {
    case 'unary':
      return { ...tree, operand: faulty(tree.operand) };
    case 'binary':
      return { ...tree, left: faulty(tree.left), right: faulty(tree.right) };
    case 'call': {
      const call = { ...tree, args: tree.args.map(faulty) };
      const { type, span } = call;
      if (call.name !== 'ROUNDUP') return call;
      return { kind: 'binary', operator: '+', left: call, right: { kind: 'number', value: 1, type, span }, type, span };
    }
    default:
      return tree;
  }
}
