import type { CompiledStack } from '../template/compiled-stack.ts';
import type { Layer } from '../template/sheet-schema.ts';
import type { PassedStop } from './quote-document.ts';

/** Why nobody may go ahead past a check, or not in this way; undefined when they may. */
export function passRefusal(stack: CompiledStack, layer: Layer, check: string, pass: PassedStop): string | undefined {
  const found = checkNamed(stack, layer, check);
  if (found === undefined) return `There is no check “${check}” in this sheet.`;
  if (found.severity !== 'stop') return 'Only a stop needs somebody to go ahead past it.';
  if (found.absolute === true) return 'There is no way round this stop.';
  if (pass.by.trim() === '') return 'Say who goes ahead.';
  if (pass.why.trim() === '') return 'Say why it is right to go ahead.';
  return undefined;
}

function checkNamed(
  { lines, tables }: CompiledStack,
  layer: Layer,
  check: string,
): { readonly severity: string; readonly absolute?: boolean | undefined } | undefined {
  const [name = '', , column] = check.split('.');
  const holder = column === undefined ? lines.get(name) : tables.get(name);
  const definition =
    column === undefined ? lines.get(name)?.definition : tables.get(name)?.columns.get(column)?.definition;
  return holder?.layer === layer && definition?.kind === 'check' ? definition : undefined;
}
