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
`;
