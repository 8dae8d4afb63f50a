import { answersOf, asksOf, standingAnswer } from '../../quote/asks.ts';
import { KeptByCells } from '../../quote/kept-by-cells.ts';
import type { OptionResults } from '../../quote/option-results.ts';
import type { SheetEntries } from '../../quote/quote-document.ts';
import type { Ask, Layer } from '../../template/sheet-schema.ts';
import type { Measures } from '../../units/measures.ts';
import { amountsIn } from '../../units/said-units.ts';
import { type ShownField, shownField } from '../parts/shown-field.ts';
import { type AnswerText, sizeIn } from './size-answers.ts';

/** A question with its answers and the one in force. */
export interface AskAnswers {
  readonly ask: Ask;
  readonly answers: readonly AnswerText[];
  readonly standing: number | undefined;
  /** Of a question for numbers. */
  readonly fields: readonly ShownField[];
}

const keptLists = new KeptByCells<readonly AskAnswers[]>();
const keptAnswers = new KeptByCells<AskAnswers>();

/** The questions of a sheet: those for the sizes of rows, or all others. */
export function answersIn(
  results: OptionResults,
  layer: Layer,
  about: 'sizes' | 'others',
  entries: SheetEntries,
  measures: Measures,
): readonly AskAnswers[] {
  return keptLists.of(results, `${layer} ${about}`, [entries, measures], () =>
    asksOf(results, layer)
      .filter(({ kind }) => (kind === 'sizes') === (about === 'sizes'))
      .map((ask) =>
        keptAnswers.of(results, `${layer} ${ask.id}`, [entries, measures], () =>
          answered(ask, results, entries, measures),
        ),
      ),
  );
}

function answered(ask: Ask, results: OptionResults, entries: SheetEntries, measures: Measures): AskAnswers {
  return {
    ask,
    answers: answersOf(ask).map((answer, at) =>
      ask.kind === 'sizes'
        ? sizeIn(answer, ask.choices[at]?.rows ?? [], measures)
        : { words: amountsIn(answer, measures), unit: '' },
    ),
    standing: standingAnswer(ask, results),
    fields: ask.kind === 'fields' ? ask.lines.flatMap((name) => fieldOf(name, results, entries, measures) ?? []) : [],
  };
}

function fieldOf(
  name: string,
  results: OptionResults,
  entries: SheetEntries,
  measures: Measures,
): ShownField | undefined {
  const line = results.stack.lines.get(name);
  const cell = results.option.plan.lines.get(name);
  if (line === undefined || cell === undefined || line.definition.kind !== 'entry') return undefined;
  const standard = typeof line.definition.value === 'number' ? line.definition.value : undefined;
  return shownField({
    definition: line.definition,
    type: line.type,
    value: results.read(cell),
    cell,
    stored: entries.lines[name],
    standard,
    ownFormula: false,
    worked: undefined,
    productNames: new Map(),
    measures,
  });
}
