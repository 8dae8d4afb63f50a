/** A text as it stands in Markdown: nothing in it is taken for markup, and it fits a cell of a table. */
export function words(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[\\`*[\]<>|]/g, '\\$&')
    .replace(/(?<![A-Za-z0-9])_|_(?![A-Za-z0-9])/g, '\\_');
}

/** A formula, a name or a code. A bar is escaped as a cell of a table wants it. */
export function code(text: string): string {
  const plain = text.replace(/\s+/g, ' ').trim().replaceAll('|', '\\|');
  return plain.includes('`') ? `\`\` ${plain} \`\`` : `\`${plain}\``;
}

/** Rows under their headings; a column that no row fills is left out. Empty without rows. */
export function markdownTable(headings: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const filled = headings.map((_, at) => rows.some((row) => (row[at] ?? '') !== ''));
  const laid = (row: readonly string[]): string =>
    `| ${headings.flatMap((_, at) => (filled[at] === true ? [row[at] ?? ''] : [])).join(' | ')} |`;
  if (rows.length === 0) return [];
  return [laid(headings), laid(headings.map(() => '---')), ...rows.map(laid)];
}

/** Where a heading is found on the page: `Part: Coats` → `part-coats`. */
export function anchor(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .replaceAll(' ', '-');
}
