import { css } from 'lit';
import { PATIENCE } from '../../session/ask.ts';
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

    /* How far some work has come. Its room is there from the beginning; a quick answer comes before it is seen. */
    progress {
      display: block;
      width: min(100%, 24rem);
      height: 0.9em;
      margin: 0;
      accent-color: var(--accent);
      visibility: hidden;
      animation: late 0s ${PATIENCE}ms forwards;
    }

    @keyframes late {
      to {
        visibility: visible;
      }
    }

    .refusal {
      color: var(--bad);
      font-weight: 600;
    }
  `,
];
