import { fingerprint } from '../base/fingerprint.ts';
import { failure, type Result, success } from '../base/result.ts';
import { mayBePassed, type PassStep, type Seat } from '../exchange/steps.ts';
import { type Known, knownTiles } from '../reading/known.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type DealName, formatDealCode, parseDealCode, rackOf } from './deal-code.ts';

/**
 * One problem to practise: a rack before a pass. Tiles are in their text form, so that an item is
 * plain data for files and workers.
 */
export interface WarmUpItem {
  readonly rack: string;
  /** Tiles given away in earlier passes; empty at the first one. */
  readonly gone: string;
  readonly step: PassStep;
  readonly seat: Seat;
  /** The code of the deal, when it is one that a seed dealt. */
  readonly code?: string;
}

/** The item of a practice deal: the first pass of East with 14 tiles, of South with 13. */
export function itemOfDeal(deal: DealName): WarmUpItem {
  const seat = deal.tiles === 14 ? 'East' : 'South';
  return { rack: formatTiles(rackOf(deal)), gone: '', step: 'right', seat, code: formatDealCode(deal) };
}

/** What an item's player knows; refused with a sentence when the tiles are not possible. */
export function knownOfItem({ rack, gone, seat }: WarmUpItem): Result<Known> {
  const held = parseTiles(rack);
  if (!held.ok) return held;
  const away = parseTiles(gone);
  if (!away.ok) return away;
  if (!away.value.distinct().every(mayBePassed)) {
    return failure('item-jokers', 'A joker is never passed: take it off the tiles given.');
  }
  const due = seat === 'East' ? 14 : 13;
  if (held.value.size !== due) {
    return failure('item-tiles', `${seat} has ${due} tiles, but these are ${held.value.size}.`);
  }
  return knownTiles(held.value, withoutReturned(held.value, away.value));
}

/** Tiles given away less those that must have come back: the set holds no more of them. */
export function withoutReturned(held: Tiles, gone: Tiles): Tiles {
  return gone.minus(held.plus(gone).minus(Tiles.fullSet));
}

/** An item of tiles as typed, canonical, if they can be. */
export function makeItem(item: WarmUpItem): Result<WarmUpItem> {
  const known = knownOfItem(item);
  if (!known.ok) return known;
  return success({ ...item, rack: formatTiles(known.value.rack), gone: formatTiles(known.value.gone) });
}

/** The seed of the other three racks: the deal's own, or one that follows from the tiles. */
export function seedOfItem({ rack, code }: WarmUpItem): number {
  const deal = code === undefined ? null : parseDealCode(code);
  return deal?.ok === true ? deal.value.seed : Number.parseInt(fingerprint(rack).slice(0, 8), 16);
}
