import { css } from 'lit';

/** What the parts of a look-back share. */
export const lookbackStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: var(--space-5);
    min-width: 0;
  }

  section {
    align-items: stretch;
    min-width: 0;
  }

  .tiles {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 4px;
    vertical-align: middle;
    --tile-width: clamp(36px, 2rem, 48px);
  }

  .rack {
    display: flex;
    flex-wrap: wrap;
    gap: 12px 4px;
    padding-top: 12px;
    --tile-width: clamp(34px, 2.2rem, 56px);
  }

  .rack .raised {
    outline: 3px solid var(--accent);
    outline-offset: 1px;
    border-radius: 8px;
    transform: translateY(-9px);
  }

  .rack .offered {
    margin-inline-start: var(--space-3);
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-3);
  }

  .head {
    display: flex;
    flex-direction: column;
    gap: var(--space-1);
  }

  .head h2 {
    font-size: var(--text-title);
  }

  .head p {
    max-width: none;
  }

  dl {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    align-items: center;
    gap: var(--space-2) var(--space-4);
    margin: 0;
  }

  dt {
    color: var(--ink-soft);
  }

  dd {
    margin: 0;
    overflow-wrap: anywhere;
    --explain-wrap: normal;
  }

  /* In line with the words above and below. */
  dd > wr-explain:first-child,
  [data-ahead] > wr-explain {
    margin-inline-start: -0.5em;
  }

  /* As high while it is awaited: four lines, and the tiles of the best. */
  .end {
    min-height: calc(5.8em + 61px);
  }

  h3 {
    margin: 0;
    font-size: var(--text-body);
  }

  .verdict {
    display: inline-block;
    padding: 0.1em 0.7em;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    font-weight: 700;
  }

  .verdict.best,
  .verdict.equal {
    border-color: var(--good);
    background: var(--good-wash);
    color: var(--good);
  }

  .verdict.slip {
    border-color: var(--warn);
    background: var(--warn-wash);
    color: var(--warn);
  }

  .verdict.costly {
    border-color: var(--bad);
    background: var(--bad-wash);
    color: var(--bad);
  }

  .scroll {
    overflow-x: auto;
  }

  details[open] > * + * {
    margin-top: var(--space-4);
  }

  table {
    border-collapse: collapse;
  }

  th,
  td {
    padding: 0.35em 1.2em 0.35em 0;
    border-top: 1px solid var(--hairline);
    text-align: start;
  }

  thead th {
    border-top: 0;
  }

  .number {
    text-align: end;
  }

  summary {
    width: max-content;
    max-width: 100%;
    min-height: var(--target);
    padding: 0.5em 0;
    color: var(--accent);
    font-weight: 600;
    cursor: pointer;
  }

  progress {
    width: 14rem;
    max-width: 100%;
    height: 1rem;
    accent-color: var(--accent);
  }

  a.plain {
    display: inline-grid;
    align-items: center;
    min-height: var(--target);
    min-width: var(--target);
    width: max-content;
    color: var(--accent);
    font-weight: 600;
  }

  @container (width < 30rem) {
    dl {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
    }

    dd {
      margin-bottom: var(--space-2);
    }
  }

  div.screen {
    display: flex;
    flex-direction: column;
    align-items: stretch;
    gap: var(--space-4);
    min-width: 0;
  }

  div.row.screen {
    flex-direction: row;
    align-items: center;
  }

  /* As high with its button as without it. */
  .still {
    min-height: var(--target);
  }

  .paper {
    display: none;
  }

  @media print {
    .screen,
    a.screen,
    div.screen,
    div.row.screen {
      display: none;
    }

    .paper {
      display: revert;
    }

    table {
      font-size: var(--text-small);
    }

    th,
    td {
      padding-block: 1pt;
    }

    dl {
      grid-template-columns: repeat(6, max-content);
      gap: 2pt 10pt;
    }

    section {
      padding: 0;
      border: 0;
      background: none;
    }

    tr {
      break-inside: avoid;
    }

    .tiles,
    .rack {
      --tile-width: 17px;

      gap: 2px;
    }

    .rack {
      padding-top: 4px;
    }

    .rack .raised {
      outline-width: 1px;
      transform: translateY(-4px);
    }
  }
`;
