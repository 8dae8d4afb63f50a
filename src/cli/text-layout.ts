/** Columns a terminal is taken to have. */
export const pageWidth = 100;

export interface TextColumn {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

const gap = '  ';
const indent = '  ';

/** Names and sentences come from files: whatever would steer a terminal becomes a space. */
export function plain(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, ' ');
}

/** Rows under their headings. The widest left-aligned column gives way when the page is too narrow. */
export function layTable(columns: readonly TextColumn[], rows: readonly (readonly string[])[]): string[] {
  const all = [columns.map((column) => column.heading), ...rows];
  const widths = columns.map((_, at) => Math.max(...all.map((row) => lengthOf(row[at] ?? ''))));
  const room = pageWidth - indent.length - gap.length * (columns.length - 1);
  const widest = columns.reduce(
    (best, column, at) => (column.align === 'left' && (widths[at] ?? 0) > (widths[best] ?? 0) ? at : best),
    columns.findIndex((column) => column.align === 'left'),
  );
  const excess = widths.reduce((sum, width) => sum + width, 0) - room;
  if (excess > 0 && widest >= 0) widths[widest] = Math.max(8, (widths[widest] ?? 0) - excess);
  const body = all.map((row) => layRow(columns, widths, row));
  const headed = columns.some((column) => column.heading !== '');
  return headed ? body : body.slice(1);
}

function layRow(columns: readonly TextColumn[], widths: readonly number[], row: readonly string[]): string {
  const cells = columns.map((column, at) => {
    const text = clip(row[at] ?? '', widths[at] ?? 0);
    const blank = ' '.repeat(Math.max(0, (widths[at] ?? 0) - lengthOf(text)));
    return column.align === 'left' ? text + blank : blank + text;
  });
  return (indent + cells.join(gap)).trimEnd();
}

/** Text in lines no wider than the page: the first behind `head`, the others under where it ended. */
export function wrap(text: string, head: string): string[] {
  const room = pageWidth - lengthOf(head);
  const lines: string[] = [];
  let line = '';
  for (const word of plain(text)
    .split(/ +/)
    .flatMap((long) => pieces(long, room))) {
    if (line !== '' && lengthOf(line) + 1 + lengthOf(word) > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((each, at) => ((at === 0 ? head : ' '.repeat(lengthOf(head))) + each).trimEnd());
}

/** A word that is wider than the page is cut. */
function pieces(word: string, room: number): string[] {
  const letters = [...word];
  if (letters.length <= room) return [word];
  return Array.from({ length: Math.ceil(letters.length / room) }, (_, at) =>
    letters.slice(at * room, (at + 1) * room).join(''),
  );
}

export function clip(text: string, width: number): string {
  const letters = [...plain(text)];
  return letters.length <= width ? letters.join('') : `${letters.slice(0, Math.max(0, width - 1)).join('')}…`;
}

function lengthOf(text: string): number {
  return [...plain(text)].length;
}
