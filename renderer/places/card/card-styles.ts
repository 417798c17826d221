import { css } from 'lit';

/** What the parts of the Card place share. */
export const cardStyles = css`
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

  .close {
    gap: var(--space-2);
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

  .soft {
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .bad {
    color: var(--bad);
    font-weight: 600;
  }

  .sheet {
    display: flex;
    flex-direction: column;
    align-items: stretch;
    gap: var(--space-4);
    padding: var(--space-4);
    background: var(--sheet);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
  }

  summary {
    min-height: var(--target);
    align-content: center;
    font-weight: 600;
    cursor: pointer;
  }

  .code {
    font-family: var(--font-code);
    overflow-wrap: anywhere;
  }

  select {
    min-height: var(--target-main);
    max-width: 100%;
    padding: 0.3em 0.6em;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  .labelled {
    display: flex;
    flex-direction: column;
    min-width: 0;
    max-width: 100%;
    gap: var(--space-1);
    font-weight: 600;
  }

  .labelled label {
    max-width: 100%;
  }

  .labelled select {
    align-self: flex-start;
    font-weight: 400;
  }
`;
