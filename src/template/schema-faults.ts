import type * as z from 'zod/mini';
import { nearestName as nearest } from '../formula/nearest-name.ts';
import { didYouMean } from '../units/nearest-word.ts';
import type { FaultReporter } from './sheet-fault.ts';

type Issue = z.core.$ZodIssue;

/** Of one object; more would not be read. */
const mostIssues = 50;

/** Tells what a schema found wrong in plain words; `known` are the properties that may stand at `path`. */
export function reportIssues(
  path: string,
  issues: readonly Issue[],
  known: readonly string[],
  report: FaultReporter,
): void {
  for (const issue of issues.slice(0, mostIssues)) {
    const at = pathText(path, issue.path);
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys.slice(0, mostIssues)) {
        report(joined(at, key), unknownProperty(key, issue.path.length === 0 ? known : []));
      }
    } else report(at, reasonOf(issue));
  }
}

function unknownProperty(key: string, known: readonly string[]): string {
  if (known.length === 0) return `There is no property “${key}” here.`;
  const near = nearest(key, known);
  const hint = near === undefined ? `One of ${known.join(', ')} may stand here.` : `Did you mean “${near}”?`;
  return `There is no property “${key}” here. ${hint}`;
}

function reasonOf(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? `This is missing: ${articled(issue.expected)} is wanted.`
        : `${capital(articled(issue.expected))} is wanted here.`;
    case 'invalid_value':
      return `One of ${issue.values.map(String).join(', ')} is wanted here.${nearValue(issue)}`;
    case 'too_big':
      return `This is too large or too long: at most ${issue.maximum}.`;
    case 'too_small':
      return `This is too small or too short: at least ${issue.minimum}.`;
    case 'invalid_format':
      return formatReason(String(issue.pattern ?? issue.format));
    case 'invalid_union':
      return 'This is none of the things that may stand here.';
    case 'invalid_key':
      return 'A name is lower-case letters, digits and underscores, beginning with a letter.';
    case 'custom':
      return issue.message === '' ? 'This cannot stand here.' : issue.message;
    default:
      return 'This cannot stand here.';
  }
}

function nearValue(issue: Extract<Issue, { code: 'invalid_value' }>): string {
  if (typeof issue.input !== 'string') return '';
  const near = nearest(issue.input, issue.values.map(String));
  return didYouMean(near);
}

function formatReason(pattern: string): string {
  if (pattern.includes('a-z0-9-')) return 'An id is lower-case letters, digits and hyphens, beginning with a letter.';
  if (pattern.includes('\\.')) return 'A table and its column are wanted here, as in coats.product.';
  if (pattern.includes('\\d{4}')) return 'A date is wanted here, as in 2026-05-31.';
  return 'A name is lower-case letters, digits and underscores, beginning with a letter.';
}

function articled(expected: string): string {
  const words: Record<string, string> = {
    array: 'a list',
    record: 'an object',
    object: 'an object',
    boolean: 'true or false',
    int: 'a whole number',
  };
  return words[expected] ?? `a ${expected}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function pathText(base: string, path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, step) => (typeof step === 'number' ? `${text}[${step}]` : joined(text, String(step))),
    base,
  );
}

function joined(base: string, key: string): string {
  return base === '' ? key : `${base}.${key}`;
}
