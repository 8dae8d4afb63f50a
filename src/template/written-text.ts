/** How many characters a person may write in one place: a name and a few words. */
export const mostWritten = 80;

/** What is told of words that nobody has written, where the sheet says nothing else. */
export const notSaid = 'not said';

/** Control characters, ends of lines, halves of characters, and marks that turn the direction of what follows. */
const notPlain = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/u;

/** What somebody typed as it is kept: letters composed, no spaces at its ends. Example: ' Dana R. ' → 'Dana R.' */
export function asWritten(typed: string): string {
  return typed.normalize('NFC').trim();
}

/** Why a text may not stand where people write words, or undefined when it may. */
export function writtenRefusal(text: string): string | undefined {
  if (notPlain.test(text)) return 'Only plain text in one line may stand here.';
  const length = [...text].length;
  return length > mostWritten ? `At most ${mostWritten} characters may stand here; these are ${length}.` : undefined;
}
