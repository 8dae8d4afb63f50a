import type { Ask, SetValue } from './sheet-schema.ts';

/** What each answer to a question sets, in the order of its answers; of a toggle no stands before yes. */
export function answerSets(ask: Ask): readonly Readonly<Record<string, SetValue>>[] {
  switch (ask.kind) {
    case 'sizes':
      return ask.choices.map((choice) => choice.set ?? {});
    case 'oneOf':
      return ask.choices.map((choice) => choice.set);
    case 'toggle':
      return [ask.off, ask.on];
    case 'fields':
      return [];
    default:
      return ask satisfies never;
  }
}
