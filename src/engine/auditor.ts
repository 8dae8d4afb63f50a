import { type PlainPlan, sameValue } from '../formula/cells.ts';
import type { AuditAnswer, AuditedOption, AuditRequest, CellDifference } from './audit-messages.ts';
import type { Workbook } from './option-workbook.ts';
import { openWorkbook } from './workbook.ts';

/** Works a quote out by HyperFormula and compares every cell with what the page shows. It changes nothing there. */
export class Auditor {
  private readonly open: (plan: PlainPlan) => Workbook;
  private readonly workbooks = new Map<number, Workbook>();

  constructor(open: (plan: PlainPlan) => Workbook = openWorkbook) {
    this.open = open;
  }

  audit({ revision, options }: AuditRequest): AuditAnswer {
    const wanted = new Set(options.map(({ workbook }) => workbook));
    for (const [key, workbook] of this.workbooks) {
      if (wanted.has(key)) continue;
      workbook.close();
      this.workbooks.delete(key);
    }
    try {
      return { kind: 'compared', revision, differences: options.flatMap((option) => this.compared(option)) };
    } catch (error) {
      // The page must hear of a bug here as of one there; the numbers it shows do not hang on it.
      return { kind: 'broken', revision, reason: error instanceof Error ? error.message : String(error) };
    }
  }

  private compared(option: AuditedOption): CellDifference[] {
    const { workbook, entered, values } = option;
    const standing = this.workbookOf(option);
    if (entered.size > 0) standing.setValues(entered);
    const worked = standing.values();
    if (worked.length !== values.length) throw new Error('The page has another number of cells');
    return values.flatMap((page, cell) =>
      sameValue(page, worked[cell]) ? [] : [{ workbook, cell, page, auditor: worked[cell] }],
    );
  }

  private workbookOf({ workbook, plan }: AuditedOption): Workbook {
    const known = this.workbooks.get(workbook);
    if (known !== undefined) return known;
    if (plan === undefined) throw new Error(`The auditor has no workbook ${workbook} and no plan of it`);
    const opened = this.open(plan);
    this.workbooks.set(workbook, opened);
    return opened;
  }
}
