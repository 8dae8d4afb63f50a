/** What storage has to say, in plain words. */
export const messages = {
  noStorage: 'This browser keeps nothing for this page: it is in private browsing, or storage is turned off.',
  blocked: 'Another tab still uses an older version of this program. Close it and load this page again.',
  newer: 'What is stored here was written by a newer version of this program. Load this page again.',
  full: 'There is no room left in this browser’s storage.',
  failed: (name: string): string => `The browser could not reach its storage (${name}).`,
  known: 'A quote with this id is stored already.',
  gone: 'This quote is no longer stored here: it was removed in another tab.',
  changedElsewhere: 'This quote was changed in another tab. Load it again before changing it here.',
  absent: 'There is no such quote here.',
  sheetMissing: (hash: string): string => `A sheet this quote stands on (${short(hash)}) is not at hand.`,
  sheetDamaged: (hash: string): string => `A stored sheet (${short(hash)}) is damaged.`,
  sheetMixedUp: (hash: string): string => `The sheet given as ${short(hash)} is another one.`,
  headMixedUp: 'The stored quote and its title belong to different quotes.',
  historyLost: (reason: string): string => `The quote is whole, but its history is not: ${reason}`,
  historyShort: (found: number, wanted: number): string => `It has ${found} entries of ${wanted}.`,
  readElsewhere: 'This quote is open for changes in another tab.',
} as const;

function short(hash: string): string {
  return `${hash.slice(0, 12)}…`;
}

export interface StoreFault {
  readonly kind: 'fault';
  readonly reason: string;
}

export function fault(reason: string): StoreFault {
  return { kind: 'fault', reason };
}

/** The words for an error of IndexedDB. Anything that is none is a bug and is thrown again. */
export function faultOfError(error: unknown): StoreFault {
  if (!(error instanceof DOMException)) throw error;
  switch (error.name) {
    case 'QuotaExceededError':
      return fault(messages.full);
    case 'SecurityError':
    case 'NotAllowedError':
      return fault(messages.noStorage);
    case 'VersionError':
      return fault(messages.newer);
    default:
      return fault(messages.failed(error.name));
  }
}
