import { nameOf } from '../../core/tiles/names.ts';
import { partWords } from '../words/parts.ts';
import type { RackTile } from './rack/rack-tile.ts';
import { capital } from './rack/rack-words.ts';

/** One place of the tray: a tile, one that is handed on unseen, or nothing yet. */
export type Slot = { readonly holds: 'tile'; readonly tile: RackTile } | { readonly holds: 'blind' | 'nothing' };

/** The places of a tray: the tiles first, those handed on unseen last. */
export function slotsOf(tiles: readonly RackTile[], places: number, blind: number): readonly Slot[] {
  return Array.from({ length: places }, (_, at): Slot => {
    const tile = tiles[at];
    if (tile) return { holds: 'tile', tile };
    return { holds: at >= places - blind ? 'blind' : 'nothing' };
  });
}

/** What lies in one place. */
export function slotWords(slot: Slot): string {
  if (slot.holds === 'tile') return nameOf(slot.tile.kind);
  return slot.holds === 'blind' ? partWords.slots.unseen : partWords.slots.empty;
}

/** "Tiles to give: five bam, nine crak; 1 place free." */
export function slotsWords(label: string, slots: readonly Slot[]): string {
  const held = slots.filter(({ holds }) => holds !== 'nothing').map(slotWords);
  const free = slots.length - held.length;
  const rest = free === 0 ? partWords.slots.full : partWords.slots.free(free);
  return capital(`${label}: ${[held.join(', '), rest].filter(Boolean).join('; ')}.`);
}

/** The tile in whose place something happened, by its id. */
export function slotIdIn(event: Event): string | null {
  for (const node of event.composedPath()) {
    if (node instanceof HTMLElement && node.dataset['slot'] !== undefined) return node.dataset['slot'];
  }
  return null;
}
