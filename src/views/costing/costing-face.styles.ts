import { css } from 'lit';

export const costingFaceStyles = css`
  :host {
    display: block;
    padding: 0 1rem 6rem;
    max-width: 100rem;
    margin: 0 auto;
  }

  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 1rem;
    padding: 1rem 0;
  }

  h1 {
    flex: 1 1 12rem;
    margin: 0;
    font-size: var(--larger);
    font-weight: 600;
    line-height: 1.1;
  }

  h1 small {
    display: block;
    font-size: var(--small);
    font-weight: 400;
    color: var(--ink-light);
  }

  .body {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 28rem;
    gap: 1.5rem;
    align-items: start;
  }

  .sheet,
  .results,
  .why {
    background: var(--paper);
    padding: 1rem 1.25rem;
    border-radius: 2px;
  }

  .side {
    display: grid;
    gap: 1rem;
    position: sticky;
    top: 1rem;
    max-height: calc(100vh - 2rem);
    overflow-y: auto;
  }

  .close {
    float: right;
  }

  .why:not(.asked) {
    display: none;
  }

  nav {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.25rem;
    border-bottom: 1px solid var(--hairline);
  }

  nav button {
    min-height: 2.75rem;
    color: var(--ink-light);
  }

  nav button[aria-current='page'] {
    color: var(--ink);
    font-weight: 600;
    box-shadow: inset 0 -3px var(--resin);
  }

  h2 {
    margin: 1rem 0 0;
    font-size: var(--large);
  }

  h4 {
    margin: 1rem 0 0.25rem;
  }

  .refused {
    margin: 0;
    color: var(--stop);
    flex-basis: 100%;
  }

  .bar {
    position: fixed;
    inset: auto 0 0;
    display: none;
    gap: 0 1.25rem;
    justify-content: space-between;
    padding: 0.5rem 1rem;
    background: var(--paper);
    border-top: 1px solid var(--rule);
  }

  .bar div {
    min-width: 0;
    font-size: var(--small);
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }

  .bar strong {
    display: block;
    font-size: var(--large);
    color: var(--resin);
  }

  @media (max-width: 64rem) {
    .body {
      grid-template-columns: minmax(0, 1fr);
    }

    .side {
      position: static;
      max-height: none;
    }

    .bar {
      display: flex;
    }

    /* The answer comes to where the question was asked. */
    .why.asked {
      position: fixed;
      inset: auto 0 0;
      z-index: 2;
      max-height: 70vh;
      overflow-y: auto;
      border-top: 3px solid var(--resin);
      box-shadow: 0 -0.5rem 1.5rem rgb(0 0 0 / 25%);
    }

  }

  @media (max-width: 40rem) {
    :host {
      padding: 0 0.5rem 6rem;
    }

    .sheet,
    .results,
    .why {
      padding: 0.75rem;
    }
  }
`;
