import { css } from 'lit';

/** What all charts share: the frame, patterns and lines. */
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

  @media print {
    svg,
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

/** What is folded away until somebody wants it; on paper it is open. */
export const foldStyles = css`
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

  @media print {
    summary {
      display: none;
    }

    details::details-content {
      content-visibility: visible;
      block-size: auto;
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
