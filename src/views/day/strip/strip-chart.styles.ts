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

  /* Dotted, so that hours are not taken for the lines that lead to words. */
  .tick {
    stroke: var(--rule);
    stroke-width: 1px;
    stroke-dasharray: 1 3;
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

  text.name,
  text.start {
    text-anchor: start;
  }

  .piece {
    cursor: pointer;
  }

  .piece:focus-visible {
    outline: var(--focus);
    outline-offset: 3px;
  }

  /* What is pointed at, here or in the table: a heavy edge and heavy words, no tint that the sun would take. */
  rect.marked {
    stroke: var(--ink);
    stroke-width: 3px;
    stroke-dasharray: none;
  }

  text.marked {
    font-weight: 700;
  }

  text.coat {
    fill: var(--on-resin);
  }

  text.light {
    fill: var(--ink-light);
  }

  text.light.marked {
    fill: var(--ink);
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
