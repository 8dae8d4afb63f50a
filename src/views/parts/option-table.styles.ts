import { type CSSResultGroup, css } from 'lit';
import { whileInView } from './while-in-view.ts';

/**
 * A table with an option in each column after the first. Each group of its rows is laid out by itself, in columns that do
 * not depend on what stands in them: a group out of sight is not laid out at all, once its height is known. For a host
 * with `Settled`; `--lead` is the width of the first column.
 */
export const optionTableStyles: CSSResultGroup = [
  css`
  .options,
  .options thead,
  .options tbody {
    display: block;
  }

  .options tr {
    display: grid;
    grid-template-columns: var(--lead) repeat(var(--columns), minmax(0, 1fr));
  }

  .options [scope='rowgroup'] {
    grid-column: 1 / -1;
  }

  .columns-1 {
    --columns: 1;
  }

  .columns-2 {
    --columns: 2;
  }

  .columns-3 {
    --columns: 3;
  }

  .columns-4 {
    --columns: 4;
  }
`,
  whileInView('.options tbody'),
];
