import { readArguments } from './arguments.ts';
import { explainOutput } from './explain-output.ts';
import { help } from './help.ts';
import { jsonOutput } from './json-output.ts';
import { entryList, systemList } from './list-output.ts';
import { findSystems, loadTemplates, readTextFile } from './load-templates.ts';
import { messages } from './messages.ts';
import { priceSystems } from './price-systems.ts';
import { tableOutput } from './table-output.ts';

export type CommandResult =
  | { readonly kind: 'output'; readonly text: string }
  /** Something given is wrong: all that is, nothing else. */
  | { readonly kind: 'faults'; readonly faults: readonly string[] };

/** Carries out one command line. */
export function priceCommand(words: readonly string[]): CommandResult {
  const { arguments: wanted, faults: wrongWords } = readArguments(words);
  const { show } = wanted;
  if (show.kind === 'help') return { kind: 'output', text: help };
  const templates = loadTemplates();
  const faults = [...wrongWords, ...templates.faults];
  const systems = findSystems(wanted.systems, templates.library, faults);
  const text = wanted.priceList === undefined ? undefined : readTextFile(wanted.priceList, faults);
  const onlySystems = show.kind === 'list' && wanted.systems.length === 0;
  if (wanted.systems.length === 0 && !onlySystems)
    faults.push(messages.noSystem([...templates.library.systems.keys()]));
  if (faults.length > wrongWords.length || (onlySystems && faults.length > 0)) return { kind: 'faults', faults };
  if (onlySystems) return { kind: 'output', text: systemList(templates.library.systems.values()) };
  const products = wanted.priceList === undefined ? templates.products : { name: wanted.priceList, text: text ?? '' };
  const priced = priceSystems({ library: templates.library, systems, products, given: wanted.given });
  if (priced.kind === 'faults') return { kind: 'faults', faults: [...faults, ...priced.faults] };
  if (faults.length > 0) return { kind: 'faults', faults };
  switch (show.kind) {
    case 'tables':
      return { kind: 'output', text: tableOutput(priced.systems) };
    case 'json':
      return { kind: 'output', text: jsonOutput(priced.systems) };
    case 'list':
      return { kind: 'output', text: entryList(priced.systems) };
    case 'explain': {
      const explained = explainOutput(priced.systems, show.name);
      return explained.kind === 'faults' ? explained : { kind: 'output', text: explained.text };
    }
    default:
      return show.kind satisfies never;
  }
}
