import { type PassStep, SEATS } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import { nameOf } from '../tiles/names.ts';
import { formatTileList } from '../tiles/text.ts';

/**
 * What happens at the simulated table, as all four seats together would write it down. Seats are
 * 0 to 3 for East, South, West, North.
 */
export type TableEvent =
  | { readonly type: 'dealt'; readonly seat: number; readonly tiles: readonly Kind[] }
  /** `tiles` come from the rack, `blind` more are handed on unseen. */
  | {
      readonly type: 'gave';
      readonly seat: number;
      readonly step: PassStep;
      readonly tiles: readonly Kind[];
      readonly blind: number;
      /** What this seat and the one across offered, in the courtesy. */
      readonly asked?: number;
      readonly offered?: number;
    }
  /** What a seat keeps of a step: tiles handed on unseen are not among them. */
  | { readonly type: 'received'; readonly seat: number; readonly step: PassStep; readonly tiles: readonly Kind[] }
  | { readonly type: 'stopped'; readonly seat: number; readonly before: 'left2' }
  | { readonly type: 'drew'; readonly seat: number; readonly tile: Kind }
  /** The seat gave `tile` for a joker in an exposure of `owner`. */
  | { readonly type: 'swapped'; readonly seat: number; readonly owner: number; readonly tile: Kind }
  | { readonly type: 'discarded'; readonly seat: number; readonly tile: Kind }
  /** `group` is what then lies there, the called tile first. */
  | {
      readonly type: 'called';
      readonly seat: number;
      readonly from: number;
      readonly tile: Kind;
      readonly group: readonly Kind[];
    }
  /** `from` is there when the last tile was a discard, `way` is the way's number on the compiled card. */
  | { readonly type: 'won'; readonly seat: number; readonly from?: number; readonly tile?: Kind; readonly way: number }
  | { readonly type: 'wallGame' };

const STEP_WORDS: Readonly<Record<PassStep, string>> = {
  right: 'to the right',
  across: 'across',
  left: 'to the left',
  left2: 'to the left, second round',
  across2: 'across, second round',
  right2: 'to the right, second round',
  courtesy: 'across as a courtesy',
};

/** The events of a game for people, a line each. `lineOf` names the line of a way, for the winner. */
export function formatTrace(events: readonly TableEvent[], lineOf: (way: number) => string): string {
  return events.map((event) => sentenceOf(event, lineOf)).join('\n');
}

function sentenceOf(event: TableEvent, lineOf: (way: number) => string): string {
  switch (event.type) {
    case 'dealt':
      return `${seatName(event.seat)} is dealt ${formatTileList([...event.tiles].sort((one, other) => one - other))}.`;
    case 'gave':
      return `${seatName(event.seat)} gives ${given(event.tiles, event.blind)} ${STEP_WORDS[event.step]}.`;
    case 'received':
      return `${seatName(event.seat)} receives ${event.tiles.length === 0 ? 'nothing' : formatTileList(event.tiles)}.`;
    case 'stopped':
      return `${seatName(event.seat)} stops the exchange before the second round.`;
    case 'drew':
      return `${seatName(event.seat)} draws ${nameOf(event.tile)}.`;
    case 'swapped':
      return `${seatName(event.seat)} puts ${nameOf(event.tile)} into an exposure of ${seatName(event.owner)} and takes the joker.`;
    case 'discarded':
      return `${seatName(event.seat)} discards ${nameOf(event.tile)}.`;
    case 'called':
      return `${seatName(event.seat)} calls ${nameOf(event.tile)} and exposes ${formatTileList(event.group)}.`;
    case 'won':
      return `${seatName(event.seat)} wins ${lineOf(event.way)} ${lastTile(event.from, event.tile)}.`;
    case 'wallGame':
      return 'The wall has run out: nobody wins.';
  }
}

function seatName(seat: number): string {
  return SEATS[seat] as string;
}

function given(tiles: readonly Kind[], blind: number): string {
  const unseen = `${blind} unseen`;
  if (tiles.length === 0) return blind === 0 ? 'nothing' : unseen;
  return blind === 0 ? formatTileList(tiles) : `${formatTileList(tiles)} and ${unseen}`;
}

function lastTile(from: number | undefined, tile: Kind | undefined): string {
  return from === undefined || tile === undefined ? 'by own draw' : `on ${nameOf(tile)} from ${seatName(from)}`;
}
