import type * as z from 'zod/mini';
import { reportIssues } from '../template/schema-faults.ts';
import { sizeFault } from './plain-size.ts';

export type ReadValue<T> =
  | { readonly kind: 'value'; readonly value: T }
  | { readonly kind: 'fault'; readonly reason: string };

/** A copy of a value from outside that fits a schema, or the first thing that does not, with its place. */
export function readBySchema<T>(schema: z.ZodMiniType<T>, value: unknown): ReadValue<T> {
  const large = sizeFault(value);
  if (large !== undefined) return { kind: 'fault', reason: large };
  const read = schema.safeParse(value, { reportInput: true });
  if (read.success) return { kind: 'value', value: read.data };
  const reasons: string[] = [];
  const [first] = read.error.issues;
  if (first?.code === 'custom') reasons.push(`${first.path.map(String).join('.')}: ${first.message}`);
  else
    reportIssues('', read.error.issues.slice(0, 1), [], (path, reason) => {
      reasons.push(path === '' ? reason : `${path}: ${reason}`);
    });
  return { kind: 'fault', reason: reasons[0] ?? 'It has another form.' };
}
