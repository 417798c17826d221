import { css } from 'lit';

/** What all charts share: the frame, patterns, lines and the table twin. */
export const chartStyles = css`
  :host {
    display: block;
    width: 100%;
    container-type: inline-size;
  }

  figure {
    margin: 0;
  }

  svg {
    display: block;
    width: 100%;
    overflow: visible;
  }

  pattern path {
    fill: none;
    stroke: var(--chart);
    stroke-width: 2.4;
    stroke-linecap: square;
  }

  pattern .dot {
    fill: var(--chart);
    stroke: none;
  }

  .solid {
    fill: var(--chart);
  }

  .outline {
    fill: var(--sheet);
  }

  .bar {
    stroke: var(--chart);
    stroke-width: 1.5;
  }

  .whisker {
    stroke: var(--ink);
    stroke-width: 2;
  }

  .zero {
    stroke: var(--edge);
    stroke-width: 1.5;
  }

  .grid {
    stroke: var(--hairline);
    stroke-width: 1;
  }

  text {
    fill: var(--ink-soft);
    font-size: var(--text-small);
  }

  details {
    margin-top: var(--space-1);
  }

  summary {
    width: max-content;
    max-width: 100%;
    min-height: var(--target);
    padding: 0.5em 0;
    color: var(--accent);
    font-size: var(--text-small);
    cursor: pointer;
  }

  .scroll {
    overflow-x: auto;
  }

  table {
    border-collapse: collapse;
  }

  th,
  td {
    padding: 0.25em 1.2em 0.25em 0;
    border-top: 1px solid var(--hairline);
    text-align: start;
    vertical-align: top;
  }

  thead th {
    border-top: 0;
    font-weight: 600;
    vertical-align: bottom;
  }

  tbody th {
    font-weight: 400;
  }

  td {
    text-align: end;
  }

  @media print {
    summary {
      display: none;
    }

    details::details-content {
      content-visibility: visible;
      block-size: auto;
    }

    svg,
    tr,
    .rows {
      break-inside: avoid;
    }
  }

  @media (forced-colors: active) {
    .solid {
      fill: CanvasText;
    }
  }
`;

/** Sizes for paper: measured in points, and closer together. */
export const paperStyles = css`
  @media print {
    :host {
      font-size: 11pt;
      --text-body: 11pt;
      --text-small: 10pt;
      --text-lead: 12.5pt;
      --text-title: 15pt;
      --space-1: 2pt;
      --space-2: 4pt;
      --space-3: 6pt;
      --space-4: 8pt;
      --space-5: 10pt;
    }
  }
`;
