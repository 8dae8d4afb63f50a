import { css } from 'lit';

export const chooserStyles = css`
  :host {
    display: block;
  }

  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1.5rem;
    margin-bottom: 0.75rem;
  }

  label {
    display: grid;
    gap: 0.125rem;
    min-width: 0;
    color: var(--ink-light);
    font-size: var(--small);
  }

  select {
    min-height: 2.75rem;
    max-width: min(100%, 20rem);
    color: var(--ink);
    font-size: 1rem;
  }

  ul {
    margin: 0 0 0.75rem;
    padding-left: 1.25rem;
    max-width: 44rem;
  }

  .entry {
    width: 9rem;
    font-size: var(--small);
    color: var(--ink-light);
  }

  number-field {
    font-size: 1rem;
    color: var(--ink);
  }
`;
