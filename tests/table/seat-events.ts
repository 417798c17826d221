import { SEATS, type Seat } from '../../core/exchange/steps.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import { formatTileList } from '../../core/tiles/text.ts';

/** The game as one seat would log it: its own tiles, and of the others what lies face up. */
export function seatEvents(events: readonly TableEvent[], seat: number): GameEvent[] {
  return events.flatMap((event) => logOf(event, seat) ?? []);
}

function logOf(event: TableEvent, own: number): GameEvent | undefined {
  switch (event.type) {
    case 'dealt':
      return event.seat === own ? { type: 'dealt', seat: nameOf(own), tiles: formatTileList(event.tiles) } : undefined;
    case 'gave': {
      if (event.seat !== own) return undefined;
      const { step, blind, asked, offered } = event;
      const tiles = formatTileList(event.tiles);
      return asked === undefined || offered === undefined
        ? { type: 'gave', step, tiles, blind }
        : { type: 'gave', step, tiles, asked, offered };
    }
    case 'received':
      if (event.seat !== own || event.tiles.length === 0) return undefined;
      return { type: 'received', step: event.step, tiles: formatTileList(event.tiles) };
    case 'stopped':
      return { type: 'stopped', before: event.before };
    case 'drew':
      return event.seat === own ? { type: 'drew', tile: codeOf(event.tile) } : undefined;
    case 'swapped':
      return { type: 'swapped', seat: nameOf(event.seat), owner: nameOf(event.owner), tile: codeOf(event.tile) };
    case 'discarded':
      return { type: 'discarded', seat: nameOf(event.seat), tile: codeOf(event.tile) };
    case 'called': {
      const { seat, from, tile, group } = event;
      return {
        type: 'called',
        seat: nameOf(seat),
        from: nameOf(from),
        tile: codeOf(tile),
        group: formatTileList(group),
      };
    }
    case 'won':
      return event.from === undefined
        ? { type: 'ended', result: 'won', winner: nameOf(event.seat), by: 'draw' }
        : { type: 'ended', result: 'won', winner: nameOf(event.seat), by: 'discard', from: nameOf(event.from) };
    case 'wallGame':
      return { type: 'ended', result: 'wall' };
  }
}

function nameOf(seat: number): Seat {
  return SEATS[seat] as Seat;
}
