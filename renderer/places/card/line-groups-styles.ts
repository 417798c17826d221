import { css } from 'lit';

/** How the groups of a line look, as tiles in a row. */
export const lineGroupsStyles = css`
  :host {
    display: block;
    --tile-width: clamp(34px, 1.9rem, 48px);
  }

  .groups {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    align-items: stretch;
  }

  .group {
    display: flex;
    flex-direction: column;
    gap: 2px;
    min-width: 48px;
    min-height: 64px;
    padding: 6px;
    border: var(--stroke) solid transparent;
    border-radius: var(--round);
  }

  [role='option'] {
    border-color: var(--hairline);
    cursor: pointer;
  }

  [role='option']:hover {
    border-color: var(--accent);
  }

  [aria-selected='true'] {
    border-color: var(--accent);
    background: var(--accent-wash);
    box-shadow: inset 0 -4px 0 var(--accent);
  }

  .tiles {
    display: flex;
    flex-wrap: wrap;
    gap: 2px;
  }

  .caption {
    font-size: var(--text-small);
    font-family: var(--font-code);
  }

  .joker {
    color: var(--ink-soft);
    font-size: var(--text-small);
    line-height: 1.2;
  }

  .unread {
    color: var(--bad);
    font-weight: 700;
  }

  .plus {
    place-content: center;
    align-items: center;
    border-style: dashed;
    border-color: var(--edge);
    font-weight: 600;
  }
`;
