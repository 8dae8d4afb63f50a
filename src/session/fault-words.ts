import type { AuditFinding, DifferingCell } from '../engine/quote-audit.ts';
import { placeText } from '../formula/cell-name.ts';
import type { CellValue, PlannedCell } from '../formula/cells.ts';
import type { QuoteDocument } from '../quote/quote-document.ts';
import { formatQuantity } from '../units/format.ts';

/** Cells told by name: those where it begins. A fault early in the sheets reaches hundreds. */
const mostTold = 6;

/**
 * What the auditor found, a sentence a cell, in the units that are stored; none when both ways agree.
 * Example: `Full flake: price is $4,325.00 on this page and $4,350.00 when worked out again.`
 */
export function faultSentences(finding: AuditFinding, { options }: QuoteDocument): readonly string[] {
  switch (finding.kind) {
    case 'same':
      return [];
    case 'broken':
      return [`The quote could not be worked out again: ${finding.reason}.`];
    case 'differs': {
      const titles = new Map(options.map(({ id, title }) => [id, title]));
      const told = finding.cells.slice(0, mostTold).map((cell) => cellSentence(cell, titles.get(cell.option) ?? ''));
      const rest = finding.cells.length - told.length;
      return rest === 0 ? told : [...told, `So do ${rest} more that follow from them or differ by themselves.`];
    }
    default:
      return finding satisfies never;
  }
}

function cellSentence({ cell, page, auditor }: DifferingCell, title: string): string {
  const [here, again] = toldApart(page, auditor, cell);
  return `${title}: ${placeText(cell.place)} is ${here} on this page and ${again} when worked out again.`;
}

/** As people read them, or digit by digit where that shows no difference. */
function toldApart(page: CellValue, auditor: CellValue | undefined, cell: PlannedCell): readonly [string, string] {
  const [here, again] = [valueText(page, cell), valueText(auditor, cell)];
  return here === again ? [JSON.stringify(page), JSON.stringify(auditor)] : [here, again];
}

function valueText(value: CellValue | undefined, { type }: PlannedCell): string {
  if (typeof value === 'number') return type.kind === 'number' ? formatQuantity(value, type.unit) : String(value);
  if (typeof value === 'boolean') return value ? 'true' : 'false';
  return typeof value === 'string' ? value : 'no number';
}
