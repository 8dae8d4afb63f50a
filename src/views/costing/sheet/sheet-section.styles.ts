import { css } from 'lit';

export const sheetSectionStyles = css`
  :host {
    display: flow-root;
    /* A section is laid out and painted by itself: a change in one leaves the others as they were. */
    contain: layout style;
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
