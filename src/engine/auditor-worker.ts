import type { AuditRequest } from './audit-messages.ts';
import { Auditor } from './auditor.ts';

// Runs in a worker of its own, so that nobody waits for HyperFormula: neither for its download nor for its work.
const auditor = new Auditor();

addEventListener('message', ({ data }: MessageEvent<AuditRequest>) => postMessage(auditor.audit(data)));
