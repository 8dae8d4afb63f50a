import { css } from 'lit';

export const compareFaceStyles = css`
  :host {
    display: block;
    max-width: 80rem;
    margin: 0 auto;
    padding: 0 1rem 6rem;
  }

  section {
    background: var(--paper);
    padding: 1rem 1.25rem;
    margin-bottom: 1rem;
  }

  h2 {
    margin: 0 0 0.5rem;
    font-size: var(--large);
  }

  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    padding-bottom: 1rem;
  }

  .tools button[aria-pressed='true'] {
    border-color: var(--resin);
    background: var(--resin-wash);
  }

  /* Whose column it is stays in view, wherever the table need not scroll by itself. */
  .options thead {
    position: sticky;
    top: 0;
    z-index: 1;
    background: var(--paper);
  }

  .options {
    --lead: 12rem;
    min-width: calc(9rem + var(--columns) * 10rem);
  }

  tr {
    border-bottom: 1px solid var(--hairline);
  }

  th,
  td {
    padding: 0.375rem 0.75rem 0.375rem 0;
    text-align: left;
  }

  thead th {
    align-self: end;
    font-size: var(--large);
  }

  th[scope='row'] {
    font-weight: 400;
    color: var(--ink-light);
  }

  tbody th[scope='rowgroup'] {
    padding-top: 1.25rem;
    font-weight: 600;
  }

  tr.price td {
    font-size: var(--larger);
    font-weight: 600;
    color: var(--resin);
    line-height: 1.1;
  }

  .difference {
    display: block;
    color: var(--ink-light);
    font-size: var(--small);
    font-weight: 400;
  }

  .walks {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(18rem, 1fr));
    gap: 1rem 2rem;
  }

  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }

  ol li {
    display: flex;
    justify-content: space-between;
    gap: 1rem;
    padding: 0.25rem 0;
    border-bottom: 1px solid var(--hairline);
  }

  ol li:first-child,
  ol li:last-child {
    font-weight: 600;
  }

  @media (min-width: 40.0625rem) and (max-width: 62rem) {
    .frame:has(.columns-3, .columns-4) {
      overflow-x: auto;
    }
  }

  @media (max-width: 40rem) {
    :host {
      padding: 0 0.5rem 6rem;
    }

    section {
      padding: 0.75rem;
    }

    thead th {
      font-size: 1rem;
    }

    .options {
      --lead: 6.5rem;
      min-width: 0;
    }
  }
`;
