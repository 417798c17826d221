import { css } from 'lit';

/** The rack: a strip of paper with a ledge, on which wedges show where a chosen tile can go. */
export const rackStyles = css`
  :host {
    display: block;
    --ledge: 30px;
  }

  .rack {
    position: relative;
    padding: 12px var(--rack-side, clamp(8px, 1.5vw, 16px)) 2px;
    border-radius: var(--round-large);
    background: var(--well);
    cursor: default;
  }

  .rack:focus-visible {
    outline-offset: -4px;
  }

  .tier {
    display: flex;
    flex-wrap: wrap;
    min-height: calc(var(--tile-width) * 4 / 3 + var(--ledge));
    row-gap: var(--space-2);
    /* The first tile begins, and the last one ends, where the rack does. */
    margin-inline: calc(var(--tile-gap) / -2);
  }

  .tier + .tier {
    margin-top: 6px;
    padding-top: 14px;
    border-top: var(--stroke) solid var(--hairline);
  }

  .cell {
    position: relative;
    padding: 0 calc(var(--tile-gap) / 2) var(--ledge);
  }

  .cell.gap {
    margin-inline-start: calc(var(--group-gap) - var(--tile-gap));
  }

  wr-tile {
    display: block;
    touch-action: none;
    user-select: none;
    cursor: grab;
    border-radius: var(--round);
    transition: transform var(--quick);
  }

  wr-tile[selected] {
    transform: translateY(-8px);
  }

  wr-tile.dragging {
    z-index: 2;
    transform: translate(var(--drag-x, 0), var(--drag-y, 0));
    transition: none;
    cursor: grabbing;
    pointer-events: none;
  }

  /* Just came in: a bar along its upper edge. */
  .new {
    position: absolute;
    inset: -7px calc(var(--tile-gap) / 2 + 3px) auto;
    height: 5px;
    border-radius: 3px;
    background: var(--accent);
  }

  .hole {
    position: absolute;
    inset: 0 calc(var(--tile-gap) / 2) var(--ledge);
    border: var(--stroke) dashed var(--edge);
    border-radius: var(--round);
  }

  /* Wedges: one before each tile and one after the last of a group. */
  .cell::before,
  .cell.last::after {
    position: absolute;
    bottom: 6px;
    left: -9px;
    width: 18px;
    height: 13px;
    background: var(--edge);
    clip-path: polygon(50% 0, 100% 100%, 0 100%);
    content: '';
    opacity: 0;
  }

  .cell.last::after {
    /* Never beyond the edge of a rack that fills the window. */
    right: calc(-1 * min(9px, var(--rack-side, 13px) - 4px));
    left: auto;
  }

  /* Where no mouse shows the place that is meant, all places are marked. */
  @media (hover: none) {
    .picking .cell::before,
    .picking .cell.last::after {
      opacity: 1;
    }
  }

  /* The one that is meant: a bar between the tiles, down to the ledge. */
  .cell.before::before,
  .cell.last.after::after,
  .cell.beyond::after {
    z-index: 1;
    top: -6px;
    bottom: 4px;
    width: 18px;
    height: auto;
    background: var(--accent);
    clip-path: polygon(7px 0, 11px 0, 11px calc(100% - 16px), 100% 100%, 0 100%, 7px calc(100% - 16px));
    opacity: 1;
  }

  .cell.last.beyond::after {
    right: calc(-9px - var(--tile-width) * 0.9);
  }

  .picking {
    cursor: pointer;
  }

  .bare {
    flex: 1;
    display: grid;
    place-items: center;
    border: var(--stroke) dashed var(--edge);
    border-radius: var(--round);
    color: var(--ink-soft);
    text-align: center;
  }

  .bare.meant {
    border-color: var(--accent);
    background: var(--accent-wash);
  }

  /* Where the tiles take several rows, these lie closer. */
  @media (max-width: 40rem) {
    .tier {
      row-gap: 0;
    }
  }

  @media (forced-colors: active) {
    .rack {
      border: var(--stroke) solid CanvasText;
    }

    .cell::before,
    .cell.last::after {
      forced-color-adjust: none;
      background: CanvasText;
    }

    .cell.before::before,
    .cell.last.after::after {
      background: Highlight;
    }
  }
`;
