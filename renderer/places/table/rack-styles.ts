import { css } from 'lit';

/** The rack's shelf along the bottom. */
export const rackStyles = css`
  .rack {
    padding: var(--space-2) var(--space-4) var(--space-4);
    margin-inline: calc(-1 * var(--space-4));
    background: var(--well);
    border-top: 1px solid var(--hairline);
  }

  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-1) var(--space-4);
    min-height: var(--target-main);
    margin-bottom: var(--space-2);
  }

  .verdict {
    flex: 1 1 18rem;
    max-width: none;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }
`;
