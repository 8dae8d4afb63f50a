import { css } from 'lit';

/** Tables of the day: words to the left, numbers to the right, quiet rows for what is no task. */
export const dayTableStyles = css`
  section {
    background: var(--paper);
    padding: 1rem 1.25rem;
    margin-bottom: 1rem;
  }

  h2 {
    margin: 0 0 0.25rem;
    font-size: var(--large);
  }

  h3 {
    margin: 1rem 0 0.25rem;
    font-size: 1rem;
  }

  p {
    margin: 0 0 0.75rem;
    max-width: 44rem;
  }

  .frame {
    overflow-x: auto;
  }

  table {
    border-collapse: collapse;
    width: 100%;
    max-width: 48rem;
    margin-bottom: 1rem;
  }

  th,
  td {
    padding: 0.25rem 0.5rem 0.25rem 0;
    border-bottom: 1px solid var(--hairline);
    text-align: right;
    vertical-align: top;
  }

  td {
    white-space: nowrap;
  }

  thead th {
    font-size: var(--small);
    font-weight: 400;
    color: var(--ink-light);
  }

  th.words,
  td.words {
    text-align: left;
    font-weight: 400;
    white-space: normal;
  }

  th[scope='rowgroup'] {
    text-align: left;
    font-weight: 600;
  }

  .quiet th,
  .quiet td {
    color: var(--ink-light);
  }

  @media (max-width: 40rem) {
    section {
      padding: 0.75rem;
    }

    th,
    td {
      padding-right: 0.375rem;
    }

    /* Two times with am and pm leave room for words, and nothing runs out of the frame. */
    td {
      font-size: var(--small);
      line-height: 1.5rem;
    }
  }
`;

export const dayFaceStyles = [
  dayTableStyles,
  css`
    :host {
      display: block;
      max-width: 90rem;
      margin: 0 auto;
      padding: 0 1rem 2rem;
    }

    .promise {
      color: var(--ink-light);
    }

    @media (max-width: 40rem) {
      :host {
        padding: 0 0.5rem 2rem;
      }
    }
  `,
];

/** One option's picture beside its table. */
export const optionDayStyles = [
  dayTableStyles,
  css`
    :host {
      display: block;
    }

    tr.marked > * {
      background: var(--resin-wash);
      font-weight: 600;
      border-bottom-color: var(--ink);
    }

    tr.marked > :first-child {
      box-shadow: inset 4px 0 var(--resin);
    }

    .words.visit {
      white-space: nowrap;
    }

    /* Its number stands before the words, also where these go over two lines. */
    .numbered {
      width: 100%;
      min-height: 1.5rem;
      padding-left: 2.25rem;
      text-align: left;
      text-indent: -1.75rem;
    }

    .why {
      display: block;
      padding-left: 2.25rem;
      color: var(--ink-light);
      font-weight: normal;
    }

    .number {
      display: inline-block;
      min-width: 1.75rem;
      color: var(--ink-light);
      text-indent: 0;
    }

    @media (max-width: 40rem) {
      .why {
        padding-left: 1.5rem;
      }

      .numbered {
        padding-left: 1.5rem;
        text-indent: -1.5rem;
      }

      .number {
        min-width: 1.5rem;
      }
    }

    @media (pointer: coarse) {
      .numbered {
        min-height: 2.5rem;
      }
    }

    .pair {
      display: grid;
      grid-template-columns: minmax(0, 1.4fr) minmax(20rem, 1fr);
      gap: 1rem 2rem;
      align-items: start;
    }

    .part {
      min-width: 0;
    }

    dl {
      display: flex;
      flex-wrap: wrap;
      gap: 0.25rem 1.5rem;
      margin: 0;
    }

    dt {
      font-size: var(--small);
      color: var(--ink-light);
    }

    dd {
      margin: 0;
    }

    @media (max-width: 64rem) {
      .pair {
        grid-template-columns: minmax(0, 1fr);
      }
    }
  `,
];
