import { priceCommand } from './price-command.ts';
import { freshMeans } from './pricing-means.ts';
import { plain } from './text-layout.ts';

/** How a command line ends: what it prints where, and with which code. */
export interface CommandEnd {
  /** 0 done, 3 printed but not for sale, 2 something given is wrong, 1 a fault of the program. */
  readonly code: 0 | 1 | 2 | 3;
  readonly out: string;
  readonly errors: string;
}

export function commandEnd(words: readonly string[], today: string, means = freshMeans): CommandEnd {
  try {
    const result = priceCommand(words, today, means);
    if (result.kind === 'output')
      return { code: result.forSale ? 0 : 3, out: result.text, errors: inLines(result.notices) };
    return { code: 2, out: '', errors: inLines(result.faults) };
  } catch (error) {
    // A bug of ours: its message, for whoever mends it, in place of a page of places in files.
    const message = error instanceof Error ? error.message : String(error);
    return { code: 1, out: '', errors: `This is a fault of the program: ${plain(message)}\n` };
  }
}

function inLines(texts: readonly string[]): string {
  return texts.map((text) => `${plain(text)}\n`).join('');
}
