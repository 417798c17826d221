import { type Result, success } from '../../../../core/base/result.ts';
import type { Seat } from '../../../../core/exchange/steps.ts';
import type { DiscardedEvent, DrewEvent, GameEvent } from '../../../../core/game/events.ts';
import type { GameState } from '../../../../core/game/game-state.ts';
import { handSize } from '../../../../core/game/hand-view.ts';
import { likelySeat } from '../../../../core/game/stage.ts';
import { applyEvent } from '../../../../core/game/state.ts';
import { codeOf, JOKER, type Kind } from '../../../../core/tiles/kinds.ts';
import { formatTileList } from '../../../../core/tiles/text.ts';
import { legalEvents } from '../../../../core/game/legal.ts';
import type { GameSession } from '../../../session/game-session.ts';

/** True when the next tile of a seat is the user's own draw. */
export function isOwnDraw(state: GameState, seat: Seat): boolean {
  return seat === state.seat && handSize(state) < 14;
}

type TileEvent = DrewEvent | DiscardedEvent;

/** A typed tile of play, and what it stands for. */
interface TypedTile {
  readonly kind: Kind;
  readonly event: TileEvent;
}

/** One tile of a seat as an event: the user's own draw, or a discard. */
function tileEvent(state: GameState, seat: Seat, kind: Kind): TileEvent {
  const tile = codeOf(kind);
  return isOwnDraw(state, seat) ? { type: 'drew', tile } : { type: 'discarded', seat, tile };
}

/** Tiles of play in the order typed, the first of a seat and those after it of whoever is likely next; refused whole if one is. */
export function tileEvents(
  { state, events }: Pick<GameSession, 'state' | 'events'>,
  seat: Seat,
  kinds: readonly Kind[],
): Result<readonly TypedTile[]> {
  const typed: TypedTile[] = [];
  let now = state;
  for (const kind of kinds) {
    const event = tileEvent(
      now,
      typed.length === 0 ? seat : likelySeat(now, [...events, ...typed.map((tile) => tile.event)]),
      kind,
    );
    const next = applyEvent(now, event);
    if (!next.ok) return next;
    typed.push({ kind, event });
    now = next.value;
  }
  return success(typed);
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

/** True when the user's next move is a discard: 14 tiles in hand, no pass due, no result. */
export function isDiscardDue({ state, giveDue }: Pick<GameSession, 'state' | 'giveDue'>): boolean {
  const { discard, receive } = legalEvents(state);
  return discard.length > 0 && giveDue === null && receive === null && handSize(state) === 14;
}

/** True once the Table shows play instead of the exchange. */
export function isPlayShown({ playing, result, exchange }: GameState): boolean {
  return playing || result !== null || exchange?.phase === 'over';
}
