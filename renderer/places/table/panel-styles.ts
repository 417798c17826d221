import { css } from 'lit';

/** What the Table's panels share. */
export const panelStyles = css`
  :host {
    display: block;
  }

  h2,
  h3 {
    margin: 0;
    font-size: var(--text-lead);
    line-height: 1.25;
  }

  h3 {
    font-size: var(--text-body);
  }

  p {
    margin: 0;
    max-width: 60ch;
  }

  .soft {
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .stack {
    display: flex;
    flex-direction: column;
    gap: var(--space-3);
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-3);
  }

  .spread {
    justify-content: space-between;
  }

  .refusal {
    color: var(--bad);
    font-weight: 600;
  }

  ul,
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
`;
