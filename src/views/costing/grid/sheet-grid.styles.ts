import { css } from 'lit';

export const sheetGridStyles = css`
  :host {
    display: block;
  }

  .frame {
    overflow-x: auto;
    scroll-padding: 0 6.5rem 0 12rem;
    border-top: 1px solid var(--rule);
    border-bottom: 1px solid var(--rule);
  }

  table {
    border-collapse: collapse;
    min-width: 100%;
  }

  caption {
    text-align: left;
    font-weight: 600;
    padding: 0.25rem 0;
  }

  .title {
    position: sticky;
    left: 0;
  }

  th,
  td {
    position: relative;
    height: 2.25rem;
    padding: 0.125rem 0.3125rem;
    border-bottom: 1px solid var(--hairline);
    white-space: nowrap;
    text-align: right;
    vertical-align: middle;
  }

  tbody tr:last-child > * {
    border-bottom: 0;
  }

  thead th,
  thead td {
    height: auto;
  }

  thead th {
    font-size: var(--small);
    font-weight: 400;
    color: var(--ink-light);
    vertical-align: bottom;
    white-space: normal;
    min-width: 3.5rem;
  }

  .group {
    text-align: left;
    font-weight: 600;
    border-left: 1px solid var(--hairline);
  }

  tr > :first-child {
    position: sticky;
    left: 0;
    z-index: 1;
    background: var(--paper);
    text-align: left;
    min-width: 6.5rem;
    max-width: 12rem;
    white-space: normal;
  }

  tbody th {
    font-weight: 600;
  }

  .words {
    text-align: left;
  }

  /* Words go over two lines sooner than they push a number out of sight. */
  tbody .words {
    min-width: 6rem;
    max-width: 8.5rem;
    line-height: 1.2;
    white-space: normal;
  }

  tbody th,
  tbody td {
    cursor: default;
  }

  .entry {
    cursor: text;
  }

  .result {
    cursor: help;
  }

  tbody tr:hover > * {
    background: var(--resin-wash);
  }

  /* An entry stands on a ruled line, dotted while nobody has looked at it; a result has none. */
  .entry .value {
    display: inline-block;
    min-width: 3rem;
    border-bottom: 1px solid var(--rule);
  }

  .entry .unchecked {
    border-bottom-style: dotted;
  }

  .result .value {
    font-weight: 600;
  }

  .unit {
    color: var(--ink-light);
    font-size: var(--small);
    font-weight: 400;
    padding-left: 0.25rem;
  }

  .more {
    padding-left: 0.375rem;
    color: var(--ink-light);
  }

  s {
    color: var(--ink-light);
    font-weight: 400;
    padding-right: 0.25rem;
  }

  .mark {
    position: absolute;
    top: 0;
    right: 0.0625rem;
    color: var(--resin);
    font-size: 0.625rem;
  }

  [tabindex]:focus-visible,
  [tabindex='0']:focus {
    outline: var(--focus);
    outline-offset: -2px;
  }

  /* Wider than a narrow cell it grows to the left, so that a number stays where it stood. */
  .editor {
    position: absolute;
    inset: 1px 1px 1px auto;
    z-index: 2;
    width: calc(100% - 2px);
    min-width: 5rem;
    min-height: 0;
    padding: 0 0.5rem;
    border: 0;
    background: var(--paper);
    text-align: right;
    outline: var(--focus);
    outline-offset: -1px;
  }

  select.editor {
    inset: 1px auto 1px 1px;
    text-align: left;
  }

  .box {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    min-width: 2.25rem;
    min-height: 1.75rem;
    vertical-align: middle;
  }

  .box input {
    width: 1.5rem;
    height: 1.5rem;
    min-height: 0;
    margin: 0;
  }

  .failed {
    color: var(--stop);
  }

  .error {
    margin: 0.25rem 0;
    color: var(--stop);
    font-size: var(--small);
  }

  /* Room for three lines of a long label. */
  thead .long {
    min-width: 6rem;
  }

  thead .actions-head {
    width: 1%;
    min-width: 0;
  }

  /* What is done with a row stays in sight while its columns scroll under it. */
  .actions-head,
  .actions-cell {
    position: sticky;
    right: 0;
    z-index: 1;
    background: var(--paper);
  }

  .actions-cell {
    width: 1%;
    padding: 0 0.25rem;
  }

  .actions-cell button {
    min-width: 1.75rem;
    min-height: 1.75rem;
    border-radius: 4px;
    color: var(--ink-light);
  }

  .actions-cell button:hover {
    color: var(--ink);
    background: var(--concrete);
  }

  /* It stays where focus can walk over it. */
  .actions-cell [aria-disabled='true'] {
    opacity: 0.25;
    cursor: default;
  }

  .under {
    display: flex;
    align-items: flex-start;
    justify-content: space-between;
    gap: 1rem;
    padding-top: 0.25rem;
  }

  /* It keeps its height, so that nothing under it moves when a cell gets or loses focus. */
  .note {
    min-height: 3.5rem;
    color: var(--ink-light);
    font-size: var(--small);
  }

  .note p {
    display: inline;
  }

  .note strong {
    color: var(--ink);
    font-weight: 600;
  }

  .echo {
    color: var(--ink);
  }

  .quiet {
    min-width: 1.5rem;
    min-height: 1.75rem;
    margin-left: 0.75rem;
    color: var(--resin);
    text-decoration: underline;
    text-underline-offset: 3px;
  }

  @media (pointer: coarse) {
    tbody th,
    tbody td {
      height: 2.75rem;
    }

    .actions-cell button,
    .quiet,
    .box {
      min-width: 2.75rem;
      min-height: 2.75rem;
    }
  }
`;
