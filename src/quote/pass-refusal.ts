import { parseCellName } from '../formula/cell-name.ts';
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
  const named = parseCellName(check);
  const table = named?.kind === 'cell' ? tables.get(named.table) : undefined;
  const line = named?.kind === 'line' ? lines.get(named.line) : undefined;
  const definition = named?.kind === 'cell' ? table?.columns.get(named.column)?.definition : line?.definition;
  return (table ?? line)?.layer === layer && definition?.kind === 'check' ? definition : undefined;
}
