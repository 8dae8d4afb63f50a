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

  @media (max-width: 40rem) {
    header {
      padding: 0.5rem;
      gap: 0.25rem 0.5rem;
    }

    nav {
      padding: 0 0.5rem;
      margin-bottom: 0.5rem;
    }
  }
`;
