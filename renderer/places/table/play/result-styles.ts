import { css } from 'lit';

/** The result: its form, its table of payments, and the evening's sheet. */
export const resultStyles = css`
  .form {
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
  }

  label {
    display: block;
    font-weight: 600;
  }

  select {
    display: block;
    width: 100%;
    min-height: var(--target-main);
    margin-top: var(--space-1);
    padding: 0.4em 0.7em;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    color: var(--ink);
    line-height: var(--line);
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
`;
