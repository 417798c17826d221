import { css } from 'lit';

/** One problem at hand: what is asked above, the rack below. */
export const runStyles = css`
  .run {
    display: flex;
    flex-direction: column;
    gap: var(--space-3);
  }

  .stages {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-3);
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .stages li {
    padding-bottom: 2px;
    border-bottom: 3px solid var(--hairline);
  }

  .stages .past {
    border-bottom-color: var(--edge);
  }

  .stages .past::before {
    content: '✓ ';
  }

  .stages [aria-current='step'] {
    border-bottom-color: var(--accent);
    color: var(--ink);
    font-weight: 700;
  }

  .ask {
    gap: var(--space-3);
  }

  .ask .bad:empty {
    display: none;
  }

  .asked:focus {
    outline: none;
  }

  .rack {
    padding: var(--space-3);
    background: var(--well);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
  }

  .code,
  .clock {
    font-family: var(--font-code);
    font-size: var(--text-small);
  }
`;
