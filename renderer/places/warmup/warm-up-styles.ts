import { css } from 'lit';
import { pickStyles } from '../../tokens/boxes.ts';
import { layoutStyles } from '../../tokens/layout.ts';

/** What the parts of the Warm-up place share. */
export const warmUpStyles = [
  layoutStyles,
  pickStyles,
  css`
    /* Fields side by side: their labels stand on one line, buttons beside the boxes. */
    .fields {
      align-items: start;
    }

    .fields > wr-button {
      margin-top: calc(var(--line) * 1em + var(--space-1));
    }

    .panel {
      display: flex;
      flex-direction: column;
      gap: var(--space-4);
      padding: var(--space-4) min(var(--space-4), 3vw);
      background: var(--sheet);
      border: 1px solid var(--hairline);
      border-radius: var(--round-large);
    }

    .tiles {
      display: inline-flex;
      flex-wrap: wrap;
      gap: 4px;
      vertical-align: middle;
    }

    .small {
      --tile-width: 36px;
    }

    .labelled select {
      width: 100%;
      min-width: 0;
    }

    table {
      border-collapse: collapse;
      width: 100%;
    }

    caption {
      text-align: start;
      font-weight: 600;
    }

    th,
    td {
      padding: var(--space-1) var(--space-3) var(--space-1) 0;
      border-bottom: 1px solid var(--hairline);
      text-align: start;
      vertical-align: middle;
    }

    .number,
    .figure {
      text-align: end;
    }

    .figure {
      white-space: nowrap;
    }

    .scroll {
      overflow-x: auto;
    }

    /* A table of passes: where there is no room for its columns, each row is a block and names its figures. */
    .fold {
      container-type: inline-size;
    }

    .fold .tiles {
      flex-wrap: nowrap;
    }

    @container (max-width: 32rem) {
      .fold thead {
        position: absolute;
        width: 1px;
        height: 1px;
        overflow: hidden;
        clip-path: inset(50%);
      }

      .fold tr {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-4);
        padding-block: var(--space-2);
        border-bottom: 1px solid var(--hairline);
      }

      .fold td {
        padding: 0;
        border: 0;
        text-align: start;
      }

      .fold td:first-child {
        flex-basis: 100%;
      }

      .fold [data-name]::before {
        content: attr(data-name) ' ';
        color: var(--ink-soft);
      }
    }

    /* Rows of the reading, where there is room for one column only. */
    @container (max-width: 41.99rem) {
      .hands li {
        grid-template-columns: minmax(0, 1fr);
      }

      .number {
        flex-wrap: wrap;
      }
    }

    progress {
      width: min(100%, 20rem);
      height: 14px;
      accent-color: var(--accent);
    }
  `,
];
