import { css } from 'lit';

export const cornerHandlesStyles = css`
  :host {
    position: absolute;
    inset: 0;
    pointer-events: none;
  }

  svg {
    display: block;
    width: 100%;
    height: 100%;
    overflow: visible;
  }

  g {
    pointer-events: all;
    cursor: grab;
  }

  /* A thumb on a corner moves it; anywhere else it scrolls the page. */
  g,
  circle {
    touch-action: none;
  }

  g.held {
    cursor: grabbing;
  }

  g:focus,
  g:focus-visible {
    outline: none;
  }

  .reach {
    fill: transparent;
  }

  .knob {
    fill: var(--paper);
    stroke: var(--resin);
    stroke-width: 3px;
  }

  g:hover .knob,
  g:focus .knob {
    fill: var(--resin);
  }

  g:focus-visible .ring {
    stroke: var(--resin);
  }

  .ring {
    fill: none;
    stroke: none;
    stroke-width: 2px;
  }
`;
