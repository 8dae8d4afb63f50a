import { css } from 'lit';

export const stripChartStyles = css`
  :host {
    display: block;
    overflow: hidden;
  }

  figure {
    margin: 0 0 1rem;
  }

  figcaption {
    font-weight: 600;
  }

  svg {
    display: block;
  }

  .patterns {
    position: absolute;
  }

  rect {
    stroke: var(--ink);
    stroke-width: 1px;
  }

  rect.work {
    fill: var(--concrete-deep);
  }

  rect.coat {
    fill: var(--resin);
  }

  rect.wait {
    fill: url('#hatch');
  }

  rect.light {
    fill: none;
    stroke: var(--rule);
    stroke-dasharray: 3 3;
  }

  .hatch {
    stroke: var(--rule);
    stroke-width: 2px;
  }

  .tick {
    stroke: var(--hairline);
    stroke-width: 1px;
  }

  .leader {
    fill: none;
    stroke: var(--rule);
    stroke-width: 1px;
  }

  text {
    fill: var(--ink);
    font-size: 13px;
    text-anchor: middle;
  }

  text.hour,
  text.name {
    fill: var(--ink-light);
  }

  text.name {
    text-anchor: start;
  }

  text.coat {
    fill: var(--on-resin);
  }

  text.light {
    fill: var(--ink-light);
  }

  /* Where nothing filled lies under words, they bring their paper: hours are ruled through the whole strip. */
  text.name,
  text.mark,
  text.light,
  text.wait {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 4px;
  }
`;
