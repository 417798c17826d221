import { css, html, svg, type TemplateResult } from 'lit';
import { type GroupTile, type OpenSuit, OPEN_SUITS, symbolOf } from '../../../core/card/pattern.ts';

/** A tile of a card's line that is not one tile yet: a number of an open suit, a wind or dragon that is open. */
export type OpenTile = Exclude<GroupTile, { is: 'flower' | 'wind' | 'dragon' | 'news' }>;

/** One shape for each open suit; none of them is on a tile. */
const SUIT_SHAPES: Readonly<Record<OpenSuit, string>> = {
  a: 'M30 49L43 71H17z',
  b: 'M19 50H41V71H19z',
  c: 'M30 46L43 60 30 74 17 60z',
};
/** A ring for "any one", two for "another one". */
const RING = 'M30 52a9 9 0 1 0 .01 0';
const TWO_RINGS = 'M20 53a7 7 0 1 0 .01 0M40 53a7 7 0 1 0 .01 0';

/** The open suit of a tile, undefined for one of a named suit or of none. */
function openSuitOf(tile: GroupTile): OpenSuit | undefined {
  return OPEN_SUITS.find((suit) => 'suit' in tile && tile.suit === suit);
}

/** An open tile's picture, of the size of `drawTile` and with its styles: what stands on it, and the mark of its suit. */
export function drawOpenTile(tile: OpenTile): TemplateResult {
  const suit = openSuitOf(tile);
  const letter = tile.is === 'open-wind' ? 'W' : symbolOf(tile);
  const shape =
    suit === undefined
      ? svg`<path class="open ring" d=${tile.is === 'open-wind' && tile.slot === 'x' ? TWO_RINGS : RING} />`
      : svg`<path class="open" d=${SUIT_SHAPES[suit]} />`;
  return html`<svg class="plate whole" viewBox="0 0 60 80" aria-hidden="true">
    ${svg`<text class="glyph" x="30" y="39">${letter}</text>`}${shape}
  </svg>`;
}

/** The look of `drawOpenTile`, beside that of `drawTile`. */
export const openTileStyles = css`
  .glyph {
    fill: var(--enamel-ink);
    font-family: var(--font);
    font-size: 38px;
    font-weight: 700;
    text-anchor: middle;
  }

  .open {
    fill: var(--enamel-ink);
  }

  .ring {
    fill: none;
    stroke: var(--enamel-ink);
    stroke-width: 3.4;
  }
`;
