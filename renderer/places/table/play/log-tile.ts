import type { Seat } from '../../../../core/exchange/steps.ts';
import type { GameEvent } from '../../../../core/game/events.ts';
import type { GameState } from '../../../../core/game/game-state.ts';
import { handSize } from '../../../../core/game/seen.ts';
import { codeOf, JOKER, type Kind } from '../../../../core/tiles/kinds.ts';
import { formatTileList } from '../../../../core/tiles/text.ts';

/** True when the next tile of a seat is the user's own draw. */
export function isOwnDraw(state: GameState, seat: Seat): boolean {
  return seat === state.seat && handSize(state) < 14;
}

/** One tile of a seat as an event: the user's own draw, or a discard. */
export function tileEvent(state: GameState, seat: Seat, kind: Kind): GameEvent {
  const tile = codeOf(kind);
  return isOwnDraw(state, seat) ? { type: 'drew', tile } : { type: 'discarded', seat, tile };
}

/** A group as an event; the tile called is the group's kind. Null while it holds no tile but jokers. */
export function groupEvent(seat: Seat, group: readonly Kind[]): GameEvent | null {
  const kind = group.find((each) => each !== JOKER);
  return kind === undefined ? null : { type: 'called', seat, tile: codeOf(kind), group: formatTileList(group) };
}

/** The group that a call of a seat begins with: the discard on the table, if that seat may take it. */
export function calledTile({ lastDiscard }: GameState, seat: Seat): readonly Kind[] {
  const callable = lastDiscard !== null && lastDiscard.seat !== seat && lastDiscard.kind !== JOKER;
  return callable ? [lastDiscard.kind] : [];
}
