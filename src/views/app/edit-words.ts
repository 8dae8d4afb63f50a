import type { Edit } from '../../quote/edit.ts';
import type { OptionResults } from '../../quote/option-results.ts';
import type { Measures } from '../../units/measures.ts';
import { lineLabel } from '../parts/line-words.ts';

/** What undo or redo would do, in a few words: “Waste”, “a row of Areas”. */
export function editWords(edit: Edit | undefined, results: OptionResults | undefined, measures: Measures): string {
  if (edit === undefined || results === undefined) return '';
  const line = (name: string): string => lineLabel(results, name, measures);
  const table = (name: string): string => results.stack.tables.get(name)?.definition.title ?? name;
  switch (edit.kind) {
    case 'enterLine':
    case 'restoreLine':
      return line(edit.line);
    case 'enterCell':
      return results.stack.tables.get(edit.table)?.columns.get(edit.column)?.definition.label ?? edit.column;
    case 'addRow':
      return `a new row of ${table(edit.table)}`;
    case 'removeRow':
      return `a row taken from ${table(edit.table)}`;
    case 'moveRow':
    case 'replaceRows':
    case 'restoreTable':
      return `rows of ${table(edit.table)}`;
    case 'addOption':
    case 'removeOption':
      return 'an option';
    case 'several':
      return edit.words;
    case 'passStop':
      return 'going ahead past a stop';
    case 'retitle':
      return 'the title';
    default:
      return edit satisfies never;
  }
}
