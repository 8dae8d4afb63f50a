import type { AuditAnswer, AuditorLine, AuditRequest, CallAuditor } from '../../src/engine/audit-messages.ts';
import { Auditor } from '../../src/engine/auditor.ts';
import { type AuditFinding, QuoteAudit } from '../../src/engine/quote-audit.ts';

/** An audit whose auditor works beside the test and not in a worker. What goes between them is copied as a worker's is. */
export interface AuditBeside {
  readonly audit: QuoteAudit;
  readonly findings: AuditFinding[];
  readonly requests: AuditRequest[];
  /** Cuts the line, as when the worker cannot be loaded. */
  readonly lose: () => void;
  /** The page rests: what waits is done, and the answers come. */
  readonly rest: () => void;
  /** The page rests, and the answers are kept back until they are let through. */
  readonly restWithoutAnswer: () => () => void;
}

export function auditBeside(newAuditor: () => Auditor = () => new Auditor()): AuditBeside {
  const findings: AuditFinding[] = [];
  const requests: AuditRequest[] = [];
  const waiting: (() => void)[] = [];
  let answers: (() => void)[] = [];
  let lose = (): void => undefined;
  const call: CallAuditor = ({ answered, lost }): AuditorLine => {
    const auditor = newAuditor();
    lose = lost;
    return {
      ask: (request) => {
        requests.push(request);
        const answer: AuditAnswer = structuredClone(auditor.audit(structuredClone(request)));
        answers.push(() => answered(answer));
      },
      close: () => {
        answers = [];
      },
    };
  };
  const doWaiting = (): void => {
    for (const work of waiting.splice(0)) work();
  };
  const letThrough = (): void => {
    for (const answer of answers.splice(0)) answer();
  };
  const audit = new QuoteAudit({ call, rest: (work) => waiting.push(work) });
  return {
    audit,
    findings,
    requests,
    lose: () => lose(),
    rest: () => {
      while (waiting.length > 0 || answers.length > 0) {
        doWaiting();
        letThrough();
      }
    },
    restWithoutAnswer: () => {
      doWaiting();
      return letThrough;
    },
  };
}
