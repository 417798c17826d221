import { css } from 'lit';
import { pickStyles } from '../../tokens/boxes.ts';
import { layoutStyles } from '../../tokens/layout.ts';

/** What the parts of the Card place share. */
export const cardStyles = [
  layoutStyles,
  pickStyles,
  css`
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

    .labelled label {
      max-width: 100%;
    }

    .labelled select {
      align-self: flex-start;
    }
  `,
];
