import { css } from 'lit';

export const costingFaceStyles = css`
  :host {
    display: block;
    padding: 0 1rem 2rem;
    max-width: 108rem;
    margin: 0 auto;
  }

  .body {
    display: grid;
    grid-template-columns: 10rem minmax(0, 1fr) 25rem;
    gap: 1rem;
    align-items: start;
  }

  .sheet,
  .results,
  .why {
    background: var(--paper);
    padding: 1rem 1.25rem;
    border-radius: 2px;
  }

  .side,
  nav {
    position: sticky;
    top: 1rem;
    max-height: calc(100vh - 6rem);
    overflow-y: auto;
    z-index: 1;
  }

  .sheet {
    isolation: isolate;
  }

  .side {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 1rem;
  }

  .results {
    overflow-x: auto;
  }

  .close {
    float: right;
  }

  nav {
    display: grid;
  }

  nav button {
    min-height: 2.5rem;
    padding-left: 0.75rem;
    text-align: left;
    color: var(--ink-light);
  }

  nav > button[aria-current='page'] {
    color: var(--ink);
    font-weight: 600;
    box-shadow: inset 3px 0 var(--resin);
  }

  .sections {
    display: grid;
    margin-bottom: 0.5rem;
  }

  .sections button {
    min-height: 1.75rem;
    padding-left: 1.5rem;
    font-size: var(--small);
  }

  nav button:hover {
    color: var(--resin);
  }

  sheet-section {
    scroll-margin-top: 1rem;
  }

  h2 {
    margin: 0;
    font-size: var(--large);
    scroll-margin-top: 1rem;
  }

  h4 {
    margin: 1rem 0 0.25rem;
  }

  @media (max-width: 80rem) {
    .body {
      grid-template-columns: minmax(0, 1fr) 25rem;
    }

    nav {
      position: static;
      grid-column: 1 / -1;
      display: flex;
      flex-wrap: wrap;
      gap: 0 1.25rem;
      max-height: none;
      border-bottom: 1px solid var(--hairline);
    }

    nav > button {
      min-height: 2.75rem;
      padding: 0;
    }

    nav > button[aria-current='page'] {
      box-shadow: inset 0 -3px var(--resin);
    }

    .sections {
      display: none;
    }
  }

  @media (max-width: 64rem) {
    .body {
      grid-template-columns: minmax(0, 1fr);
    }

    .side > * {
      min-width: 0;
    }

    /* No layer of its own, or the bar below would cover the end of the answer. */
    .side {
      position: static;
      z-index: auto;
      max-height: none;
      overflow: visible;
    }

    /* The answer comes to where the question was asked. */
    .why {
      position: fixed;
      inset: auto 0 0;
      z-index: 3;
      max-height: 70vh;
      overflow-y: auto;
      border-top: 3px solid var(--resin);
      box-shadow: 0 -0.5rem 1.5rem rgb(0 0 0 / 25%);
    }
  }

  @media (max-width: 40rem) {
    :host {
      padding: 0 0.5rem 2rem;
    }

    .sheet,
    .results,
    .why {
      padding: 0.75rem;
    }
  }
`;
