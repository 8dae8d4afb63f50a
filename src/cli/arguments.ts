import type { Measures } from '../units/measures.ts';
import { nearestWord } from '../units/nearest-word.ts';
import type { Given } from './given-entries.ts';
import { messages } from './messages.ts';

/** What a command line asks for. */
export interface Arguments {
  /** Ids or paths, as given. */
  readonly systems: readonly string[];
  readonly given: Given;
  readonly priceList: string | undefined;
  /** What tables and explanations are told in. */
  readonly measures: Measures;
  readonly show:
    | { readonly kind: 'tables' | 'brief' | 'json' | 'list' | 'help' }
    | { readonly kind: 'explain'; readonly name: string };
}

export interface ReadArguments {
  readonly arguments: Arguments;
  readonly faults: readonly string[];
}

/** The form of the value an option takes; undefined: it takes none. */
const optionForms: Readonly<Record<string, string | undefined>> = {
  '--system': 'ID',
  '--set': 'NAME=VALUE',
  '--rows': 'TABLE=JSON',
  '--pricelist': 'FILE.csv',
  '--explain': 'NAME',
  '--metric': undefined,
  '--json': undefined,
  '--brief': undefined,
  '--list': undefined,
  '--help': undefined,
};
const repeatable = ['--system', '--set', '--rows'];

/** Reads the words of a command line, option and value apart or joined by `=`. Every fault is told. */
export function readArguments(words: readonly string[]): ReadArguments {
  const faults: string[] = [];
  const options = optionsIn(words, faults);
  const all = (name: string): string[] => options.flatMap((option) => (option.name === name ? [option.value] : []));
  const rows = new Map(
    [...pairs('--rows', all('--rows'), faults)].map(([table, json]) => [table, readRows(table, json, faults)]),
  );
  const given = { rows, sets: pairs('--set', all('--set'), faults) };
  const show = shown(options, faults);
  const measures = options.some(({ name }) => name === '--metric') ? 'metric' : 'us';
  return { arguments: { systems: all('--system'), given, priceList: all('--pricelist')[0], measures, show }, faults };
}

interface Option {
  readonly name: string;
  readonly value: string;
}

function optionsIn(words: readonly string[], faults: string[]): Option[] {
  const options: Option[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const [name, joined] = splitAtEquals(words[at] ?? '');
    const next = words[at + 1];
    const nextIsValue = joined === undefined && next !== undefined && !next.startsWith('--');
    if (!name.startsWith('--')) faults.push(messages.stray(words[at] ?? ''));
    else if (!Object.hasOwn(optionForms, name)) {
      faults.push(messages.unknownOption(name, nearestWord(name, Object.keys(optionForms))));
      if (nextIsValue) at += 1;
    } else {
      const form = optionForms[name];
      const value = form !== undefined && nextIsValue ? next : joined;
      if (form !== undefined && nextIsValue) at += 1;
      if (form !== undefined && (value ?? '') === '') faults.push(messages.valueMissing(name, form));
      else if (form === undefined && value !== undefined) faults.push(messages.noValueWanted(name));
      else if (!repeatable.includes(name) && options.some((option) => option.name === name))
        faults.push(messages.optionTwice(name));
      else options.push({ name, value: value ?? '' });
    }
  }
  return options;
}

/** NAME=VALUE, told apart at the first `=`. */
function pairs(option: string, texts: readonly string[], faults: string[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const text of texts) {
    const [name, value] = splitAtEquals(text);
    const key = name.trim();
    if (key === '' || value === undefined) faults.push(messages.equalsMissing(option, optionForms[option] ?? '', text));
    else if (found.has(key)) faults.push(messages.givenTwice(option, key));
    else found.set(key, value);
  }
  return found;
}

function splitAtEquals(text: string): readonly [string, string | undefined] {
  const at = text.indexOf('=');
  return at < 0 ? [text, undefined] : [text.slice(0, at), text.slice(at + 1)];
}

/** Undefined, and a fault, for what is not JSON. */
function readRows(table: string, json: string, faults: string[]): unknown {
  try {
    return JSON.parse(json);
  } catch (error) {
    // Anything but a syntax error is a bug of ours.
    if (!(error instanceof SyntaxError)) throw error;
    faults.push(messages.notJson(table, error.message));
    return undefined;
  }
}

function shown(options: readonly Option[], faults: string[]): Arguments['show'] {
  const names = new Set(options.map((option) => option.name));
  if (names.has('--help')) return { kind: 'help' };
  const ways = ['--json', '--brief', '--explain', '--list'].filter((name) => names.has(name));
  if (ways.length > 1) faults.push(messages.chooseOne(ways));
  const explained = options.find((option) => option.name === '--explain')?.value;
  if (explained !== undefined) return { kind: 'explain', name: explained };
  if (names.has('--json')) return { kind: 'json' };
  if (names.has('--brief')) return { kind: 'brief' };
  return { kind: names.has('--list') ? 'list' : 'tables' };
}
