import { css } from 'lit';

export const sheetSectionStyles = css`
  :host {
    display: block;
  }

  h3 {
    margin: 2rem 0 0.5rem;
    font-size: var(--large);
    font-weight: 600;
  }

  .note {
    max-width: 46rem;
    margin: 0 0 0.75rem;
    color: var(--ink-light);
    font-size: var(--small);
  }

  .line {
    display: grid;
    grid-template-columns: minmax(10rem, 1fr) 12.5rem minmax(9rem, 1fr);
    gap: 0 1rem;
    align-items: baseline;
    padding: 0.25rem 0;
    border-bottom: 1px solid var(--hairline);
  }

  .name {
    text-align: left;
    min-height: 1.75rem;
  }

  .name:hover {
    color: var(--resin);
  }

  .result {
    display: flex;
    justify-content: flex-end;
    align-items: baseline;
    gap: 0.375rem;
    min-height: 2rem;
    font-weight: 600;
  }

  .result .unit {
    min-width: 3.25rem;
    color: var(--ink-light);
    font-size: var(--small);
    font-weight: 400;
    text-align: left;
  }

  .result .word {
    text-align: left;
    flex: 1;
    font-weight: 400;
  }

  .failed {
    color: var(--stop);
  }

  .from {
    color: var(--ink-light);
    font-size: var(--small);
  }

  .changed {
    color: var(--resin);
  }

  .back {
    min-height: 1.75rem;
    padding: 0 0.25rem;
    text-decoration: underline;
    color: inherit;
  }

  select {
    width: 100%;
  }

  .words {
    grid-column: 2 / -1;
  }

  @media (max-width: 40rem) {
    .line {
      grid-template-columns: 1fr 10.5rem;
    }

    .from {
      grid-column: 1 / -1;
    }
  }
`;
