import type { AuditAnswer, AuditorEars, AuditorLine } from './audit-messages.ts';
import workerAddress from './auditor-worker.ts?worker&url';

declare global {
  /** Of pages that may demand trusted addresses for scripts; not every browser has it. */
  var trustedTypes:
    | { createPolicy(name: string, rules: Rules): { createScriptURL(address: string): string } }
    | undefined;
}

interface Rules {
  readonly createScriptURL: (address: string) => string;
}

let trustedAddress: string | undefined;

/** Calls the auditor in a module worker. */
export function workerAuditor({ answered, lost }: AuditorEars): AuditorLine {
  trustedAddress ??= trusted(workerAddress);
  const worker = new Worker(trustedAddress, { type: 'module', name: 'auditor' });
  worker.addEventListener('message', ({ data }: MessageEvent<AuditAnswer>) => answered(data));
  worker.addEventListener('messageerror', lost);
  worker.addEventListener('error', (event) => {
    // Told to nobody: no number of the page hangs on it, and it is tried again.
    event.preventDefault();
    lost();
  });
  return { ask: (request) => worker.postMessage(request), close: () => worker.terminate() };
}

/** The address as a page takes it that demands trusted ones; no other gets past. */
function trusted(address: string): string {
  const createScriptURL = (asked: string): string => {
    if (asked !== workerAddress) throw new Error(`${asked} is no script of this program`);
    return asked;
  };
  return globalThis.trustedTypes?.createPolicy('spreadrate', { createScriptURL }).createScriptURL(address) ?? address;
}
