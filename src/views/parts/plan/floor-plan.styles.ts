import { css } from 'lit';

export const floorPlanStyles = css`
  :host {
    display: block;
  }

  figure {
    margin: 0.5rem 0;
  }

  .sheet {
    position: relative;
  }

  svg.drawing {
    display: block;
    width: 100%;
  }

  .outline {
    fill: var(--resin-wash);
    stroke: var(--ink);
    stroke-width: var(--stroke);
    stroke-linejoin: round;
  }

  .outline.untrue {
    stroke-dasharray: 6 4;
  }

  .faulty {
    stroke: var(--stop);
    stroke-width: 4px;
    stroke-linecap: round;
  }

  .bar {
    fill: none;
    stroke: var(--ink);
    stroke-width: var(--stroke);
  }

  text {
    fill: var(--ink);
    font-size: 13px;
    text-anchor: middle;
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 3px;
  }

  text.in {
    stroke: none;
  }

  text.name {
    font-size: 14px;
    font-weight: 600;
  }

  text.start {
    text-anchor: start;
  }

  .told {
    margin: 0.25rem 0;
    font-size: var(--small);
  }

  .told.refused {
    color: var(--stop);
    font-weight: 600;
  }

  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem;
  }

  .tools [aria-pressed='true'] {
    border-color: var(--resin);
    box-shadow: inset 0 -3px var(--resin);
    font-weight: 600;
  }

  summary {
    min-height: 2.25rem;
    padding-top: 0.375rem;
    cursor: pointer;
    color: var(--ink-light);
    font-size: var(--small);
  }

  ul {
    margin: 0 0 0.5rem;
    padding-left: 1.25rem;
    font-size: var(--small);
  }

  table {
    margin-bottom: 0.75rem;
    border-collapse: collapse;
    font-size: var(--small);
  }

  .wide {
    overflow-x: auto;
  }

  caption {
    text-align: left;
    font-weight: 600;
  }

  th,
  td {
    padding: 0.125rem 0.75rem 0.125rem 0;
    border-bottom: 1px solid var(--hairline);
    text-align: right;
    font-weight: 400;
    white-space: nowrap;
  }

  thead th {
    color: var(--ink-light);
  }

  td button {
    min-width: 2.75rem;
    min-height: 2.75rem;
  }

  td.keys {
    padding-right: 0;
  }

  @media (max-width: 26rem) {
    th,
    td {
      padding-right: 0.375rem;
    }

    td button {
      min-width: 2.25rem;
    }
  }
`;
