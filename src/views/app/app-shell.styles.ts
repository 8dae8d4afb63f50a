import { css } from 'lit';

export const appShellStyles = css`
  :host {
    display: block;
    min-height: 100vh;
  }

  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 1rem;
    max-width: 100rem;
    margin: 0 auto;
    padding: 0.75rem 1rem;
  }

  .home {
    color: var(--resin);
    font-weight: 700;
    letter-spacing: 0.01em;
    text-decoration: none;
    min-height: 2.75rem;
    display: inline-flex;
    align-items: center;
  }

  nav {
    display: flex;
    gap: 0 1rem;
    flex-wrap: wrap;
    padding: 0 1rem;
    max-width: 100rem;
    margin: 0 auto 1rem;
    border-bottom: 1px solid var(--hairline);
  }

  nav a {
    display: inline-flex;
    align-items: center;
    min-height: 2.75rem;
    color: var(--ink-light);
    text-decoration: none;
  }

  nav a[aria-current='page'] {
    color: var(--ink);
    font-weight: 600;
    box-shadow: inset 0 -3px var(--resin);
  }

  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.5rem;
    max-width: 100rem;
    margin: 0 auto;
    padding: 1rem 1rem 5rem;
    color: var(--ink-light);
    font-size: var(--small);
  }

  .owner {
    margin-left: auto;
  }

  .trouble {
    max-width: 100rem;
    margin: 0 auto 1rem;
    padding: 0.5rem 1rem;
    border-left: 4px solid var(--stop);
    background: var(--stop-wash);
  }

  /* Why nothing that is touched here changes anything: in view wherever that is. */
  .elsewhere {
    position: sticky;
    top: 0;
    z-index: 2;
  }

  @media (max-width: 52rem) {
    /* Room for the prices that stay below. */
    .choices {
      padding-bottom: 8.5rem;
    }
  }

  @media (max-width: 40rem) {
    header {
      flex-wrap: nowrap;
      padding: 0 0.5rem;
      gap: 0.25rem;
    }

    /* Within a quote the way to all of them is a sign; its name stays for those who listen. */
    .back {
      flex: none;
      justify-content: center;
      min-width: 2rem;
      margin-left: -0.375rem;
      font-size: 2rem;
      line-height: 1;
    }

    .back::before {
      content: '‹' / '';
    }

    .back span {
      position: absolute;
      clip-path: inset(50%);
    }

    nav {
      gap: 0 0.625rem;
      padding: 0 0.5rem;
      margin-bottom: 0.25rem;
    }

    nav a {
      min-width: 1.5rem;
    }

    /* In two lines it leaves room for every face in one row. */
    nav .leave {
      max-width: 5rem;
      min-height: 2.5rem;
      padding: 0 0.25rem;
      font-size: var(--small);
      line-height: 1.1;
    }
  }

  @media (max-width: 22rem) {
    nav {
      gap: 0 0.375rem;
    }

    nav a {
      font-size: 0.8125rem;
    }
  }
`;
