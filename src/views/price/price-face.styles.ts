import { css } from 'lit';

export const priceFaceStyles = css`
  :host {
    display: block;
    max-width: 72rem;
    margin: 0 auto;
    padding: 0 1rem 2rem;
  }

  .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(20rem, 26rem);
    gap: 1.5rem;
    align-items: start;
  }

  section {
    background: var(--paper);
    padding: 1rem 1.25rem;
    margin-bottom: 1rem;
    border-radius: 2px;
  }

  h2 {
    margin: 0 0 0.5rem;
    font-size: var(--large);
  }

  .areas {
    list-style: none;
    margin: 0 0 0.75rem;
    padding: 0;
  }

  .areas li {
    display: flex;
    align-items: center;
    gap: 0.5rem;
    border-bottom: 1px solid var(--hairline);
  }

  .area {
    flex: 1;
    display: flex;
    justify-content: space-between;
    gap: 1rem;
    min-height: 2.75rem;
    text-align: left;
    align-items: center;
  }

  .area:hover {
    color: var(--resin);
  }

  .sides {
    font-weight: 600;
  }

  .away {
    min-width: 2.75rem;
    min-height: 2.75rem;
    color: var(--ink-light);
  }

  .prices {
    position: sticky;
    top: 1rem;
  }

  .price {
    font-size: var(--price);
    font-weight: 600;
    line-height: 1.05;
    color: var(--resin);
    margin: 0;
  }

  .price.not-yet {
    color: var(--ink-light);
  }

  .days {
    margin: 0.25rem 0 0.5rem;
  }

  .included {
    margin: 0.5rem 0;
    padding: 0;
    list-style: none;
    font-size: var(--small);
  }

  .included li {
    padding: 0.125rem 0;
  }

  .error {
    margin: 0.5rem 0 0;
    color: var(--stop);
    font-size: var(--small);
  }

  .held {
    margin: 0.5rem 0;
    padding: 0.5rem 0.75rem;
    border-left: 4px solid var(--caution);
    background: var(--caution-wash);
  }

  .owner {
    margin: 0.5rem 0 0;
    padding: 0.5rem 0.75rem;
    border: 1px dashed var(--rule);
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 0.125rem 1rem;
    font-size: var(--small);
  }

  .owner dd {
    margin: 0;
    text-align: right;
    font-weight: 600;
  }

  .systems {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem;
  }

  .systems button {
    min-height: 2.75rem;
    padding: 0 0.75rem;
    border: 1px solid var(--rule);
    border-radius: 4px;
  }

  .systems button[aria-pressed='true'] {
    border-color: var(--resin);
    background: var(--resin-wash);
    font-weight: 600;
  }

  details summary {
    min-height: 2.25rem;
    cursor: pointer;
    color: var(--ink-light);
  }

  @media (max-width: 52rem) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }

    .prices {
      position: static;
    }

    section {
      padding: 0.75rem;
    }

    :host {
      padding: 0 0.5rem 2rem;
    }
  }
`;
