import { css } from 'lit';

export const valueLineStyles = css`
  :host {
    display: block;
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
    min-width: 1.5rem;
    min-height: 1.75rem;
  }

  button.name:hover,
  .number:hover {
    color: var(--resin);
  }

  .result,
  .number {
    display: flex;
    justify-content: flex-end;
    align-items: baseline;
    gap: 0.375rem;
    width: 100%;
    min-height: 2rem;
  }

  .number {
    font-weight: 600;
  }

  .unit {
    min-width: 3.25rem;
    color: var(--ink-light);
    font-size: var(--small);
    font-weight: 400;
    text-align: left;
  }

  .number .word {
    text-align: left;
    flex: 1;
    font-weight: 400;
  }

  select.unchecked {
    border-bottom-style: dotted;
  }

  label.unchecked .unit {
    border-bottom: 1px dotted var(--ink);
  }

  .yes-no,
  label.result {
    align-items: center;
  }

  s {
    color: var(--ink-light);
    font-weight: 400;
  }

  .failed {
    color: var(--stop);
  }

  .error {
    grid-column: 2 / -1;
    margin: 0;
    color: var(--stop);
    font-size: var(--small);
  }

  .from {
    color: var(--ink-light);
    font-size: var(--small);
  }

  .changed {
    color: var(--resin);
  }

  .quiet {
    min-width: 1.5rem;
    min-height: 1.75rem;
    padding: 0 0.25rem;
    text-decoration: underline;
    text-underline-offset: 3px;
    color: var(--resin);
  }

  /* Typing over a formula is a deliberate act: its button shows itself only where one is already looking. */
  .type-over {
    visibility: hidden;
  }

  .line:hover .type-over,
  .line:focus-within .type-over {
    visibility: visible;
  }

  select {
    width: 100%;
  }

  input[type='checkbox'] {
    width: 1.5rem;
    height: 1.5rem;
    min-height: 0;
    margin: 0;
  }

  .words {
    grid-column: 2 / -1;
  }

  @media (max-width: 40rem) {
    .line {
      grid-template-columns: minmax(0, 1fr) 10rem;
    }

    .from {
      grid-column: 1 / -1;
    }

    .error {
      grid-column: 1 / -1;
    }

    .type-over {
      display: none;
    }

    .line:hover .type-over,
    .line:focus-within .type-over {
      display: inline;
    }
  }

  @media (pointer: coarse) {
    .name,
    .number,
    .result,
    .quiet,
    select {
      min-height: 2.75rem;
    }

    label.result {
      min-width: 2.75rem;
    }
  }
`;
