import { css } from 'lit';
import { layoutStyles } from '../../tokens/layout.ts';

/** What the parts of the Card place share. */
export const cardStyles = [
  layoutStyles,
  css`
    .close {
      gap: var(--space-2);
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
  `,
];
