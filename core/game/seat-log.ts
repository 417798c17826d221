import { type Seat, SEATS } from '../exchange/steps.ts';
import type { EndedEvent, GameEvent } from './events.ts';
import type { TableEvent } from '../table/trace.ts';
import { codeOf, JOKER } from '../tiles/kinds.ts';
import { formatTileList } from '../tiles/text.ts';

/**
 * A game of the simulated table as one seat, 0 to 3, would log it: its own tiles, and of the
 * others what lies face up. `lineOf` names the line of a way, if the log is to name the hand.
 */
export function seatEvents(events: readonly TableEvent[], own: number, lineOf?: (way: number) => string): GameEvent[] {
  return events.flatMap((event) => {
    if (event.type === 'won') return [wonEvent(event, events, lineOf)];
    return logOf(event, own) ?? [];
  });
}

function logOf(event: Exclude<TableEvent, { type: 'won' }>, own: number): GameEvent | undefined {
  switch (event.type) {
    case 'dealt':
      return event.seat === own ? { type: 'dealt', seat: seatOf(own), tiles: formatTileList(event.tiles) } : undefined;
    case 'gave':
      return event.seat === own ? gaveEvent(event) : undefined;
    case 'received':
      if (event.seat !== own || event.tiles.length === 0) return undefined;
      return { type: 'received', step: event.step, tiles: formatTileList(event.tiles) };
    case 'stopped':
      return { type: 'stopped', before: event.before, seat: seatOf(event.seat) };
    case 'drew':
      return event.seat === own ? { type: 'drew', tile: codeOf(event.tile) } : undefined;
    case 'swapped':
      return { type: 'swapped', seat: seatOf(event.seat), owner: seatOf(event.owner), tile: codeOf(event.tile) };
    case 'discarded':
      return { type: 'discarded', seat: seatOf(event.seat), tile: codeOf(event.tile) };
    case 'called': {
      const { seat, from, tile, group } = event;
      const called = { tile: codeOf(tile), group: formatTileList(group) };
      return { type: 'called', seat: seatOf(seat), from: seatOf(from), ...called };
    }
    case 'wallGame':
      return { type: 'ended', result: 'wall' };
  }
}

function gaveEvent({ step, blind, asked, offered, tiles }: TableEvent & { type: 'gave' }): GameEvent {
  const gave = { type: 'gave', step, tiles: formatTileList(tiles) } as const;
  return asked === undefined || offered === undefined ? { ...gave, blind } : { ...gave, asked, offered };
}

function wonEvent(
  { seat, from, tile, way }: TableEvent & { type: 'won' },
  events: readonly TableEvent[],
  lineOf: ((way: number) => string) | undefined,
): EndedEvent {
  return {
    type: 'ended',
    result: 'won',
    winner: seatOf(seat),
    ...(from === undefined ? { by: 'draw' } : { by: 'discard', from: seatOf(from) }),
    ...(tile === undefined ? {} : { tile: codeOf(tile) }),
    ...(lineOf === undefined ? {} : { lineId: lineOf(way), jokerless: jokersOf(events, seat) === 0 }),
  };
}

/** How many jokers a seat holds at the end, in the rack and in its exposures. */
function jokersOf(events: readonly TableEvent[], seat: number): number {
  return events.reduce((count, event) => count + jokerChange(event, seat), 0);
}

function jokerChange(event: TableEvent, seat: number): number {
  switch (event.type) {
    case 'dealt':
      return event.seat === seat ? event.tiles.filter((tile) => tile === JOKER).length : 0;
    case 'drew':
      return event.seat === seat && event.tile === JOKER ? 1 : 0;
    case 'discarded':
      return event.seat === seat && event.tile === JOKER ? -1 : 0;
    case 'swapped':
      return Number(event.seat === seat) - Number(event.owner === seat);
    default:
      return 0;
  }
}

function seatOf(seat: number): Seat {
  return SEATS[seat] as Seat;
}
