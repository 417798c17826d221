import { css } from 'lit';
import { boxStyles } from '../../../tokens/boxes.ts';

/** The result: its form, its table of payments, and the evening's sheet. */
export const resultStyles = [
  boxStyles,
  css`
    .form {
      display: flex;
      flex-direction: column;
      gap: var(--space-4);
    }

    .awaited {
      visibility: hidden;
    }

    /* As high as the table with its first game. */
    .loading {
      min-height: 5.8rem;
    }

    table {
      border-collapse: collapse;
      width: 100%;
      max-width: 34rem;
    }

    caption {
      padding-block: var(--space-1);
      text-align: start;
      font-weight: 600;
    }

    th,
    td {
      padding: var(--space-1) var(--space-3) var(--space-1) 0;
      border-top: 1px solid var(--hairline);
      text-align: start;
      font-weight: 400;
      overflow-wrap: anywhere;
    }

    thead th {
      border-top: 0;
      color: var(--ink-soft);
      font-size: var(--text-small);
    }

    td.amount {
      font-weight: 700;
    }

    .amount {
      text-align: end;
      white-space: nowrap;
    }

    /* Five columns in the narrowest window: words may break, numbers hardly do. */
    @container (max-width: 22rem) {
      .sums {
        table-layout: fixed;
        font-size: var(--text-small);
      }

      .sums th,
      .sums td {
        padding-inline-end: 2px;
        white-space: normal;
      }
    }

    tfoot td,
    tfoot th {
      border-top: 2px solid var(--edge);
      font-weight: 700;
    }
  `,
];
