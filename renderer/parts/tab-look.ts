import { css } from 'lit';

/** A row of tabs: `.tabs` around each `.tab`, the open one also `.current`. Worn by tabs and by links between views. */
export const tabLook = css`
  .tabs {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1);
    border-bottom: var(--stroke) solid var(--edge);
  }

  .tab {
    display: grid;
    place-items: center;
    min-height: var(--target);
    min-width: var(--target);
    padding: 0.35em 1em;
    border: var(--stroke) solid transparent;
    border-bottom: 0;
    border-radius: var(--round) var(--round) 0 0;
    background: transparent;
    color: var(--ink);
    font-weight: 600;
    text-decoration: none;
    cursor: pointer;
  }

  .tab:hover {
    background: var(--accent-wash);
  }

  .tab.current {
    position: relative;
    margin-bottom: calc(-1 * var(--stroke));
    border-color: var(--edge);
    background: var(--sheet);
    color: var(--accent);
  }

  .tab.current::before {
    position: absolute;
    inset: -1.5px -1.5px auto;
    height: 5px;
    border-radius: var(--round) var(--round) 0 0;
    background: var(--accent);
    content: '';
  }

  @media (forced-colors: active) {
    .tab.current::before {
      forced-color-adjust: none;
      background: Highlight;
    }
  }
`;
