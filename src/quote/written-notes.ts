import type { OptionResults } from './option-results.ts';

/** Words that a person wrote, with the line or the row and column they stand in. */
export interface WrittenNote {
  readonly label: string;
  readonly words: string;
}

/** All that people have written in an option's sheets: lines, then tables row by row, each in sheet order. */
export function writtenNotes({ stack, option }: OptionResults): WrittenNote[] {
  const lines = [...option.written.lines].map(([name, words]) => ({
    label: stack.lines.get(name)?.definition.label ?? name,
    words,
  }));
  const cells = [...option.written.tables].flatMap(([name, columns]) => {
    const table = stack.tables.get(name);
    return (option.rows.get(name) ?? []).flatMap((row, at) =>
      [...columns].map(([column, words]) => ({
        label: `${table?.definition.title ?? name}, ${row.label}: ${table?.columns.get(column)?.definition.label ?? column}`,
        words: words[at] ?? '',
      })),
    );
  });
  return [...lines, ...cells].filter(({ words }) => words !== '');
}
