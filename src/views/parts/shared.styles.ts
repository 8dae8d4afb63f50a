import { css } from 'lit';

/** What every element of a sheet shares: focus, fields on a ruled line, quiet buttons. */
export const sharedStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }

  :focus-visible {
    outline: var(--focus);
    outline-offset: 2px;
  }

  button {
    font: inherit;
    color: inherit;
    background: none;
    border: 0;
    padding: 0;
    cursor: pointer;
  }

  button.plain {
    min-height: 2.75rem;
    padding: 0 0.75rem;
    border: 1px solid var(--rule);
    border-radius: 4px;
    background: var(--paper);
  }

  button.plain:disabled,
  button.plain[aria-disabled='true'] {
    color: var(--ink-light);
    border-color: var(--hairline);
    border-style: dotted;
    cursor: default;
  }

  input,
  select {
    font: inherit;
    color: inherit;
    background: transparent;
    border: 0;
    border-bottom: 1px solid var(--rule);
    border-radius: 0;
    padding: 0.25rem 0.125rem;
    min-height: 2rem;
  }

  select {
    background: var(--paper);
  }

  input[aria-invalid='true'] {
    border-bottom: 2px solid var(--stop);
  }

  .unchecked input,
  .unchecked select {
    border-bottom-style: dotted;
  }

  .light {
    color: var(--ink-light);
  }

  .hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
