import { css } from 'lit';

export const gridOrCardsStyles = css`
  :host {
    display: block;
    contain: layout style;
    margin: 0.5rem 0 1rem;
  }

  h4 {
    margin: 0.75rem 0 0.25rem;
    font-size: 1rem;
    font-weight: 600;
  }

  ul {
    list-style: none;
    margin: 0;
    padding: 0;
    border-top: 1px solid var(--rule);
  }

  .error {
    margin: 0.25rem 0;
    color: var(--stop);
    font-size: var(--small);
  }

  .actions {
    display: flex;
    flex-wrap: wrap;
    flex: none;
    gap: 0.5rem;
    padding: 0.25rem 0;
  }

  .actions button {
    min-height: 2.25rem;
    font-size: var(--small);
  }

  @media (pointer: coarse) {
    .actions button {
      min-height: 2.75rem;
    }
  }
`;
