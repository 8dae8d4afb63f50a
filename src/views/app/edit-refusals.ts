import type { Edit } from '../../quote/edit.ts';
import type { DispatchResult, QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import { refusalWords } from '../parts/refusal-words.ts';
import { systemsPlace } from '../price/price-face.ts';

const none: ReadonlyMap<string, string> = new Map();

/**
 * Why the last edit was refused, at the place it was made at, or above the face where it has none. A refusal ends with the
 * next change of the quote, whoever makes it, and when what kept the quote from being changed is gone.
 */
export class EditRefusals {
  /** By the line, or `systemsPlace`. */
  atPlaces = none;
  above = '';
  private wasReadOnly = false;
  private readonly changed: () => void;

  constructor(changed: () => void) {
    this.changed = changed;
  }

  dispatch(session: QuoteSession, edit: Edit, measures: Measures): void {
    const result = session.dispatch(edit);
    if (result.kind === 'done') {
      this.end();
      return;
    }
    const results = session.results(session.quote.options[0]?.id ?? '');
    this.refuse(refusalWords(edit, result.reason, results, measures), placeOf(edit));
  }

  /** Undo and redo stand above every face. */
  take(result: DispatchResult): void {
    if (result.kind === 'refused') this.refuse(result.reason);
    else this.end();
  }

  refuse(reason: string, place?: string): void {
    this.atPlaces = place === undefined ? none : new Map([[place, reason]]);
    this.above = place === undefined ? reason : '';
    this.changed();
  }

  end(): void {
    this.atPlaces = none;
    this.above = '';
    this.changed();
  }

  /** To be told of every news of the session. */
  follow({ readOnly }: QuoteSession, numbers: boolean): void {
    const isFreed = this.wasReadOnly && readOnly === undefined;
    this.wasReadOnly = readOnly !== undefined;
    if (numbers || isFreed) this.end();
  }
}

function placeOf(edit: Edit): string | undefined {
  if (edit.kind === 'enterLine') return edit.line;
  return edit.kind === 'addOption' || edit.kind === 'removeOption' ? systemsPlace : undefined;
}
