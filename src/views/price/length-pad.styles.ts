import { css } from 'lit';

export const lengthPadStyles = css`
  dialog {
    width: min(100vw, 24rem);
    max-width: none;
    margin: auto auto 0;
    padding: 1rem;
    border: 0;
    border-top: 3px solid var(--resin);
    color: var(--ink);
    background: var(--paper);
    box-shadow: 0 -0.5rem 1.5rem rgb(0 0 0 / 25%);
  }

  dialog::backdrop {
    background: rgb(0 0 0 / 35%);
  }

  h2 {
    margin: 0 0 0.5rem;
    font-size: var(--large);
  }

  .sides {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0.5rem;
  }

  .side {
    min-height: 3.5rem;
    padding: 0.25rem 0.5rem;
    text-align: left;
    border: 1px solid var(--hairline);
    border-bottom: 3px solid var(--rule);
    font-size: var(--large);
    font-weight: 600;
  }

  .side[aria-pressed='true'] {
    border-bottom-color: var(--resin);
    background: var(--resin-wash);
  }

  .side small {
    display: block;
    color: var(--ink-light);
    font-size: var(--small);
    font-weight: 400;
  }

  .keys {
    display: grid;
    grid-template-columns: repeat(4, 1fr);
    gap: 0.375rem;
    margin-top: 0.75rem;
  }

  .keys button {
    min-height: 3.25rem;
    border: 1px solid var(--hairline);
    border-radius: 4px;
    font-size: var(--large);
  }

  .keys.metres {
    grid-template-columns: repeat(3, 1fr);
  }

  .keys .wide {
    grid-column: span 2;
  }

  .keys .done {
    grid-column: span 2;
    background: var(--resin);
    color: var(--on-resin);
    font-weight: 600;
  }

  .metres .wide,
  .metres .done {
    grid-column: span 3;
  }

  .error {
    margin: 0.5rem 0 0;
    color: var(--stop);
  }
`;
