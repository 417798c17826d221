import { css } from 'lit';
import { layoutStyles } from '../../tokens/layout.ts';

/** What the Table's panels share. */
export const panelStyles = [
  layoutStyles,
  css`
    p {
      max-width: 60ch;
    }

    .stack {
      gap: var(--space-3);
    }

    .refusal {
      color: var(--bad);
      font-weight: 600;
    }
  `,
];
