import { css } from 'lit';

export const numberFieldStyles = css`
  :host {
    display: block;
    position: relative;
  }

  .row {
    display: flex;
    align-items: baseline;
    gap: 0.375rem;
  }

  input {
    width: 100%;
    min-width: 3.5rem;
    text-align: right;
  }

  .unit {
    flex: none;
    min-width: 3.25rem;
    color: var(--ink-light);
    font-size: var(--small);
  }

  .error {
    margin: 0.125rem 0 0;
    color: var(--stop);
    font-size: var(--small);
  }

  /* It floats, so that nothing moves from under a finger when the field gets or loses focus. */
  .said {
    position: absolute;
    top: 100%;
    right: 0;
    z-index: 3;
    width: max-content;
    max-width: min(20rem, 85vw);
    padding: 0.375rem 0.5rem;
    background: var(--paper);
    border: 1px solid var(--rule);
    border-radius: 4px;
    box-shadow: 0 0.25rem 1rem rgb(0 0 0 / 20%);
    color: var(--ink-light);
    font-size: var(--small);
    pointer-events: none;
  }

  .said.from-start {
    right: auto;
    left: 0;
  }

  .said p {
    margin: 0;
  }

  .said .echo {
    color: var(--ink);
  }

  .signs {
    margin-top: 0.25rem;
    pointer-events: auto;
  }

  .keys-only {
    display: none;
  }

  @media (pointer: coarse) {
    .keys-only {
      display: block;
    }

    input {
      min-height: 2.75rem;
    }
  }
`;
