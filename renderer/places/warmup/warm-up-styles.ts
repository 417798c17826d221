import { css } from 'lit';
import { pickStyles } from '../../tokens/boxes.ts';
import { foldStyles } from '../../tokens/fold.ts';
import { layoutStyles } from '../../tokens/layout.ts';

/** What the parts of the Warm-up place share. */
export const warmUpStyles = [
  layoutStyles,
  pickStyles,
  foldStyles,
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

    .tiles:not(.large) {
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
      white-space: nowrap;
    }

    .scroll {
      overflow-x: auto;
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
