import type { SingleEdit } from '../../../quote/edit.ts';
import { passEdit, takePassEdit } from '../../../quote/pass-stop.ts';
import type { QuoteSession } from '../../../session/quote-session.ts';
import type { SheetEvents } from '../sheet-events.ts';

/** The edit that somebody's decision on a stop asks for; undefined when the stop is open no more. */
export function decisionEdit(
  session: QuoteSession,
  { option, check, given }: SheetEvents['stop-decided']['detail'],
): SingleEdit | undefined {
  const results = session.results(option);
  if (results === undefined) return undefined;
  if (given === undefined) return takePassEdit(results, option, check);
  return passEdit(results, option, check, { ...given, at: new Date().toISOString() });
}
