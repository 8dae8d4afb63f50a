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

  .unchecked {
    display: flex;
    align-items: center;
    gap: 0.5rem;
    margin: -0.25rem 0 0.5rem;
    color: var(--ink-light);
    font-size: var(--small);
  }

  .unchecked::before {
    content: '';
    width: 1.5rem;
    border-bottom: 1px dotted var(--ink);
  }

  .quiet {
    min-width: 1.5rem;
    min-height: 1.75rem;
    padding: 0 0.25rem;
    color: var(--resin);
    text-decoration: underline;
    text-underline-offset: 3px;
  }

  @media (pointer: coarse) {
    .quiet {
      min-height: 2.75rem;
    }
  }

  .note {
    max-width: 46rem;
    margin: 0 0 0.75rem;
    color: var(--ink-light);
    font-size: var(--small);
  }
`;
