import { css } from 'lit';

export const sheetSectionStyles = css`
  :host {
    display: flow-root;
    /* A section out of sight is neither laid out nor painted; half a screen stands in for its height until it is seen. */
    content-visibility: auto;
    contain-intrinsic-size: auto 30rem;
  }

  /* What opens under a field may reach over the end of its section. */
  :host(:focus-within) {
    content-visibility: visible;
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
`;
