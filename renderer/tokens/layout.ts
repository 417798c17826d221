import { css } from 'lit';

/** How text, lists, rows and stacks lie in the panels of every place. */
export const layoutStyles = css`
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
    max-width: 65ch;
  }

  ul,
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }

  .stack {
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-3);
  }

  .close {
    gap: var(--space-2);
  }

  .spread {
    justify-content: space-between;
  }

  .soft {
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .bad {
    color: var(--bad);
    font-weight: 600;
  }
`;

/** An element whose parts stand below each other. */
export const columnStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: var(--space-3);
  }
`;

/** A choice with what it means below it, in paragraphs and a list. */
export const explainedStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--space-2);
    width: 100%;
  }

  p,
  ul {
    margin: 0;
    max-width: min(65ch, 100%);
  }

  ul {
    padding-inline-start: var(--space-5);
  }
`;
