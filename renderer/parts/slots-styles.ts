import { css } from 'lit';

/** How the tray of a pass looks: its places, and the tile that follows the pointer. */
export const slotsStyles = css`
  :host {
    display: inline-block;
  }

  .slots {
    display: flex;
    flex-wrap: wrap;
    gap: var(--tile-gap);
    width: max-content;
    max-width: 100%;
    padding: 12px;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round-large);
    background: var(--sheet);
  }

  .slot {
    position: relative;
    width: var(--tile-width);
    aspect-ratio: 3 / 4;
    border-radius: calc(var(--tile-width) * 0.15);
    background: var(--well);
  }

  .nothing {
    border: var(--stroke) dashed var(--edge);
    color: var(--ink-soft);
    display: grid;
    place-items: center;
  }

  wr-tile {
    display: block;
  }

  /* Offered, and not given yet: its tile lies beyond a dashed frame. */
  .offer {
    background: var(--accent-wash);
    outline: 2px dashed var(--accent);
    outline-offset: 1px;
  }

  .offer wr-tile {
    opacity: 0.75;
  }

  .tile {
    cursor: pointer;
    touch-action: none;
    user-select: none;
  }

  .tile:hover {
    box-shadow: 0 0 0 3px var(--accent);
  }

  .dragging wr-tile {
    visibility: hidden;
  }

  /* What follows the pointer lies over the whole window, so that no panel cuts it off. */
  .moving {
    position: fixed;
    inset: var(--drag-top, 0) auto auto var(--drag-left, 0);
    overflow: visible;
    margin: 0;
    padding: 0;
    border: 0;
    background: transparent;
    transform: translate(var(--drag-x, 0), var(--drag-y, 0));
    pointer-events: none;
  }
`;
