import { css } from 'lit';

export const sheetTableStyles = css`
  :host {
    display: block;
    margin: 0.5rem 0 1rem;
  }

  .frame {
    overflow-x: auto;
    background:
      linear-gradient(to right, var(--paper), transparent) left / 1rem 100% no-repeat local,
      var(--paper);
    border-top: 1px solid var(--rule);
    border-bottom: 1px solid var(--rule);
  }

  table {
    border-collapse: collapse;
    min-width: 100%;
  }

  caption {
    text-align: left;
    font-weight: 600;
    padding: 0.25rem 0;
  }

  th,
  td {
    padding: 0.125rem 0.5rem;
    border-bottom: 1px solid var(--hairline);
    white-space: nowrap;
    text-align: right;
  }

  thead th {
    font-size: var(--small);
    font-weight: 400;
    color: var(--ink-light);
    vertical-align: bottom;
    white-space: normal;
    min-width: 4.5rem;
  }

  .group {
    text-align: left;
    font-weight: 600;
    border-left: 1px solid var(--hairline);
  }

  th:first-child,
  td:first-child {
    position: sticky;
    left: 0;
    z-index: 1;
    background: var(--paper);
    text-align: left;
    font-weight: 600;
    min-width: 8rem;
    max-width: 12rem;
    white-space: normal;
  }

  .words {
    text-align: left;
  }

  .caption {
    display: none;
  }

  .unit {
    color: var(--ink-light);
    font-size: var(--small);
    padding-left: 0.25rem;
  }

  .value {
    min-height: 2rem;
    text-align: inherit;
  }

  .value:hover {
    color: var(--resin);
  }

  td input[type='text'] {
    width: 4.5rem;
    text-align: right;
  }

  td select {
    max-width: 12rem;
  }

  .changed {
    border-bottom: 2px solid var(--resin);
  }

  .failed {
    color: var(--stop);
  }

  .error {
    margin: 0.25rem 0;
    color: var(--stop);
    font-size: var(--small);
  }

  .actions {
    display: flex;
    gap: 0.5rem;
    padding: 0.5rem 0;
  }

  .actions button {
    min-height: 2.25rem;
    font-size: var(--small);
  }

  .take-away {
    min-width: 2rem;
    min-height: 2rem;
    color: var(--ink-light);
  }

  /* On a phone each row is a card: its name, then a line for each column. */
  @media (max-width: 40rem) {
    .frame {
      overflow-x: visible;
    }

    thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }

    table,
    tbody,
    caption {
      display: block;
    }

    tr {
      display: block;
      position: relative;
      padding: 0.5rem 0;
      border-bottom: 1px solid var(--rule);
    }

    tr:last-child {
      border-bottom: 0;
    }

    th:first-child {
      display: block;
      position: static;
      max-width: none;
      border: 0;
      padding: 0 2.5rem 0.25rem 0;
    }

    td,
    td.words {
      display: flex;
      justify-content: space-between;
      align-items: baseline;
      gap: 1rem;
      padding: 0.125rem 0;
      text-align: right;
    }

    .caption {
      display: inline;
      color: var(--ink-light);
      text-align: left;
      white-space: normal;
    }

    td.away {
      position: absolute;
      top: 0.25rem;
      right: 0;
      border: 0;
    }
  }
`;
