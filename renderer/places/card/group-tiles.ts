import { html } from 'lit';
import { type GroupTile, type PatternGroup } from '../../../core/card/pattern.ts';
import type { WayGroup } from '../../../core/card/way.ts';
import {
  dragonKind,
  FLOWER,
  type Kind,
  kindOf,
  numberKind,
  SUITS,
  windKind,
  WINDS,
} from '../../../core/tiles/kinds.ts';
import { drawOpenTile } from '../../parts/tile/open-tile.ts';
import '../../parts/tile/wr-tile.ts';

/** So many tiles face down. */
export function facesDown(count: number): readonly unknown[] {
  return Array.from({ length: count }, () => picture(null));
}

/** The tiles of a group of a way. */
export function wayTiles({ kind, size }: WayGroup): readonly unknown[] {
  return Array.from({ length: size }, () => picture(kind));
}

/** A group as it is printed: what is open in it (suit, wind, dragon) has a mark of its own. */
export function printedTiles({ tile, size }: PatternGroup): readonly unknown[] {
  if (tile.is === 'news') return WINDS.map((wind) => picture(windKind(wind)));
  return Array.from({ length: size }, () => printedTile(tile));
}

function printedTile(tile: Exclude<GroupTile, { is: 'news' }>): unknown {
  switch (tile.is) {
    case 'flower':
      return picture(FLOWER);
    case 'wind':
      return picture(windKind(tile.wind));
    case 'dragon':
      return picture(kindOf(tile.dragon));
    case 'open-wind':
    case 'open-dragon':
      return drawOpenTile(tile);
    case 'number':
    case 'suit-dragon': {
      const suit = SUITS.find((named) => named === tile.suit);
      if (suit === undefined) return drawOpenTile(tile);
      return picture(tile.is === 'number' ? numberKind(tile.number, suit) : dragonKind(suit));
    }
  }
}

function picture(kind: Kind | null): unknown {
  return html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`;
}
