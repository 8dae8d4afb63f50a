import { type CellValue, type PlannedCell, plainPlan } from '../formula/cells.ts';
import type { OptionPlan } from '../template/plan.ts';
import type { AuditAnswer, AuditorLine, AuditRequest, CallAuditor, CellDifference } from './audit-messages.ts';
import { closureWorkbook } from './closure-workbook.ts';
import type { OpenWorkbook, Workbook } from './option-workbook.ts';

/** What looking again at a quote came to. */
export type AuditFinding =
  | { readonly kind: 'same' }
  /** In the order they are worked out, so that the first is where it begins. */
  | { readonly kind: 'differs'; readonly cells: readonly DifferingCell[] }
  | { readonly kind: 'broken'; readonly reason: string };

export interface DifferingCell {
  readonly option: string;
  readonly cell: PlannedCell;
  readonly page: CellValue;
  readonly auditor: CellValue | undefined;
}

export interface AuditParts {
  readonly call: CallAuditor;
  /** Does work when the page rests. */
  readonly rest: (work: () => void) => void;
}

interface Audited {
  readonly option: string;
  readonly planned: OptionPlan;
  readonly workbook: Workbook;
  readonly entered: Map<number, number | string>;
  /** Whether the auditor has its plan. */
  isSent: boolean;
}

/** Milliseconds until an auditor that was lost is called again, unless the next edit comes first. */
const again = 60_000;

/**
 * The auditor of one quote on the page. Its workbooks have the closures' values; whenever the page rests after a change, all
 * of them are worked out again by HyperFormula in a worker and compared. One question is under way at a time, and an answer
 * to an earlier state of the quote is dropped: the state of now is asked about next.
 */
export class QuoteAudit {
  private readonly parts: AuditParts;
  private readonly open = new Map<number, Audited>();
  private opened = 0;
  /** Counts the changes. */
  private revision = 0;
  private hears: ((finding: AuditFinding) => void) | undefined;
  private line: AuditorLine | undefined;
  private isWaiting = false;
  private isAsking = false;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(parts: AuditParts) {
    this.parts = parts;
  }

  /** Opens a workbook that is audited until it is closed. */
  readonly openWorkbook: OpenWorkbook = (planned, option) => {
    const workbook = closureWorkbook(planned);
    const entered = new Map<number, number | string>();
    this.opened += 1;
    const key = this.opened;
    this.open.set(key, { option, planned, workbook, entered, isSent: false });
    this.changed();
    const setValues = (entries: ReadonlyMap<number, number | string>): readonly number[] => {
      for (const [cell, value] of entries) entered.set(cell, value);
      this.changed();
      return workbook.setValues(entries);
    };
    return {
      ...workbook,
      setValue: (cell, value) => setValues(new Map([[cell, value]])),
      setValues,
      close: () => {
        this.open.delete(key);
        this.changed();
        workbook.close();
      },
    };
  };

  /** Begins to look, now and after every change, and tells what it finds. */
  start(hears: (finding: AuditFinding) => void): void {
    this.hears = hears;
    this.askWhenResting();
  }

  stop(): void {
    this.hears = undefined;
    this.hangUp();
  }

  private changed(): void {
    this.revision += 1;
    this.askWhenResting();
  }

  private askWhenResting(): void {
    if (this.hears === undefined || this.isWaiting || this.isAsking) return;
    this.isWaiting = true;
    clearTimeout(this.timer);
    this.parts.rest(() => {
      this.isWaiting = false;
      if (this.hears !== undefined && !this.isAsking) this.ask();
    });
  }

  private ask(): void {
    this.line ??= this.parts.call({ answered: (answer) => this.answered(answer), lost: () => this.lost() });
    this.isAsking = true;
    this.line.ask(this.request());
    for (const audited of this.open.values()) audited.isSent = true;
  }

  private request(): AuditRequest {
    const options = [...this.open].map(([workbook, { planned, entered, isSent, ...audited }]) => ({
      workbook,
      ...(!isSent && { plan: plainPlan(planned.plan) }),
      entered,
      values: audited.workbook.values(),
    }));
    return { revision: this.revision, options };
  }

  private answered(answer: AuditAnswer): void {
    this.isAsking = false;
    if (answer.revision === this.revision) this.hears?.(this.findingOf(answer));
    else this.askWhenResting();
  }

  /** Nothing is lost with it: the next one is told everything anew. */
  private lost(): void {
    this.hangUp();
    this.timer = setTimeout(() => this.askWhenResting(), again);
  }

  private hangUp(): void {
    clearTimeout(this.timer);
    this.line?.close();
    this.line = undefined;
    this.isAsking = false;
    for (const audited of this.open.values()) audited.isSent = false;
  }

  private findingOf(answer: AuditAnswer): AuditFinding {
    if (answer.kind === 'broken') return { kind: 'broken', reason: answer.reason };
    const cells = [...this.open].flatMap(([workbook, audited]) =>
      inOrder(
        audited,
        answer.differences.filter((difference) => difference.workbook === workbook),
      ),
    );
    return cells.length === 0 ? { kind: 'same' } : { kind: 'differs', cells };
  }
}

function inOrder(
  { option, planned: { plan, graph } }: Audited,
  differences: readonly CellDifference[],
): readonly DifferingCell[] {
  if (differences.length === 0) return [];
  const steps = new Map(graph.kind === 'graph' ? graph.order.map((cell, step) => [cell, step]) : []);
  const stepOf = ({ cell }: CellDifference): number => steps.get(cell) ?? -1;
  return differences
    .toSorted((one, other) => stepOf(one) - stepOf(other))
    .flatMap(({ cell, page, auditor }) => {
      const planned = plan.cells[cell];
      return planned === undefined ? [] : [{ option, cell: planned, page, auditor }];
    });
}
