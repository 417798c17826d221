import { type Result, success } from '../base/result.ts';
import type { ExposedGroup } from '../card/way.ts';
import { notInRack } from '../exchange/moves.ts';
import { STEP_NAMES, tileCount } from '../exchange/words.ts';
import { JOKER, type Kind } from '../tiles/kinds.ts';
import { nameOf } from '../tiles/names.ts';
import { Tiles } from '../tiles/tiles.ts';
import { withoutTiles } from './apply-exchange.ts';
import type { CalledEvent, DiscardedEvent, DrewEvent, SwappedEvent } from './events.ts';
import { beyondSupply, type GameProblem, groupField, type Refusal, refuse, tileField } from './tile-fields.ts';
import { exposedGroups, goneTiles, handSize } from './hand-view.ts';
import type { Discard, Exposure, GameState } from './game-state.ts';

/** A whole hand. */
const HAND_SIZE = 14;

type Applied = Result<GameState, GameProblem>;

/** Own draw. */
export function applyDrew(state: GameState, event: DrewEvent): Applied {
  const kind = playTile(state, event.tile);
  if (!kind.ok) return kind;
  if (handSize(state) !== 13) return refuse('wrong-count', 'You hold 14 tiles: discard one before you draw.');
  return settled(addToRack({ ...state, caller: null, lastDiscard: null }, kind.value));
}

/** A discard, own or another's; another's only thins what is unseen. */
export function applyDiscarded(state: GameState, event: DiscardedEvent): Applied {
  const kind = playTile(state, event.tile);
  if (!kind.ok) return kind;
  const thrown: Discard = { seat: event.seat, kind: kind.value };
  if (event.seat !== state.seat) return settled(withDiscard(state, thrown));
  const drawnAndThrown = handSize(state) === 13 && state.rack.count(kind.value) === 0;
  if (drawnAndThrown) return settled(withDiscard(state, thrown));
  if (handSize(state) === 13) {
    return refuse(
      'wrong-count',
      `You hold 13 tiles: enter the tile you drew before you discard the ${nameOf(kind.value)}.`,
    );
  }
  const kept = takeFromRack(state, Tiles.of([kind.value]));
  return kept.ok ? settled(withDiscard(kept.value, thrown)) : kept;
}

/** A call that lays a group open. */
export function applyCalled(state: GameState, event: CalledEvent): Applied {
  const kind = playTile(state, event.tile);
  if (!kind.ok) return kind;
  const group = groupField(event.group, kind.value);
  if (!group.ok) return group;
  const refused = callerRefused(state, event, group.value);
  if (refused) return refused;
  const cleared = withoutCalled(state, event, kind.value);
  const paid = event.seat === state.seat ? takeFromRack(cleared, fromRack(group.value)) : success(cleared);
  if (!paid.ok) return paid;
  const exposure: Exposure = { ...group.value, seat: event.seat };
  return settled({ ...paid.value, caller: event.seat, exposures: [...paid.value.exposures, exposure] });
}

/** A tile put into an exposure for its joker, after a draw or a call (LG-2); a rule of the house may differ (house-rules.ts). */
export function applySwapped(state: GameState, event: SwappedEvent): Applied {
  const kind = playTile(state, event.tile);
  if (!kind.ok) return kind;
  const place = state.exposures.findIndex(
    (each) => each.seat === event.owner && each.kind === kind.value && each.jokers > 0,
  );
  if (place < 0) {
    return refuse(
      'no-exposure',
      `${event.owner} shows no ${nameOf(kind.value)} group with a joker: enter that group first.`,
    );
  }
  const freed = { ...state, lastDiscard: null, exposures: withoutJoker(state.exposures, place) };
  if (event.seat !== state.seat) return settled({ ...freed, jokersTaken: freed.jokersTaken + 1 });
  const paid = takeFromRack(freed, Tiles.of([kind.value]));
  return paid.ok ? settled(addToRack(paid.value, JOKER)) : paid;
}

/** The tile of a play event, once play is possible at all. */
function playTile(state: GameState, text: string): Result<Kind, GameProblem> {
  const { exchange } = state;
  if (exchange === null) return refuse('not-dealt', 'No deal is logged yet: enter the tiles dealt first.');
  if (exchange.phase === 'receiving' && exchange.step !== null) {
    const words = `${tileCount(exchange.toCome)} of the ${STEP_NAMES[exchange.step]}`;
    return refuse('still-to-come', `Your rack still waits for ${words}: enter what you received first.`);
  }
  return tileField(text);
}

/** The state with play begun, unless it shows more of a tile than the set has. */
function settled(state: GameState): Applied {
  return beyondSupply(state.rack.plus(goneTiles(state))) ?? success({ ...state, playing: true });
}

function withDiscard(state: GameState, thrown: Discard): GameState {
  return { ...state, caller: null, discards: [...state.discards, thrown], lastDiscard: thrown };
}

function addToRack(state: GameState, kind: Kind): GameState {
  return { ...state, rack: state.rack.with(kind), arrival: [...state.arrival, kind] };
}

function takeFromRack(state: GameState, tiles: Tiles): Applied {
  const absent = tiles.distinct().find((kind) => tiles.count(kind) > state.rack.count(kind));
  if (absent !== undefined) {
    return refuse('not-in-rack', notInRack(absent, tiles.count(absent), state.rack.count(absent)));
  }
  return success({ ...state, rack: state.rack.minus(tiles), arrival: withoutTiles(state.arrival, tiles) });
}

function fromRack(group: ExposedGroup): Tiles {
  const naturals = group.size - group.jokers - 1;
  return Tiles.of([...Array<Kind>(naturals).fill(group.kind), ...Array<Kind>(group.jokers).fill(JOKER)]);
}

function callerRefused(state: GameState, { seat, from }: CalledEvent, group: ExposedGroup): Refusal | undefined {
  const discarder = from ?? calledDiscard(state, group.kind)?.seat;
  if (discarder === seat)
    return refuse('own-discard', `${seat} can't call ${seat}'s own discard: name another caller.`);
  if (seat === state.seat && handSize(state) !== 13) {
    return refuse('wrong-count', 'You hold 14 tiles: discard one before you call.');
  }
  const shown = exposedGroups(state, seat).reduce((sum, each) => sum + each.size, group.size);
  if (shown <= HAND_SIZE) return undefined;
  return refuse(
    'bad-group',
    `${seat} would then show ${shown} tiles, but a hand has 14: check the seat and the group.`,
  );
}

/** The discard just thrown, if it is of that kind. */
function calledDiscard(state: GameState, kind: Kind): Discard | null {
  return state.lastDiscard?.kind === kind ? state.lastDiscard : null;
}

function withoutCalled(state: GameState, { from }: CalledEvent, kind: Kind): GameState {
  const taken = calledDiscard(state, kind);
  const logged = taken !== null && (from === undefined || from === taken.seat);
  return { ...state, lastDiscard: null, discards: logged ? state.discards.slice(0, -1) : state.discards };
}

function withoutJoker(exposures: readonly Exposure[], place: number): Exposure[] {
  return exposures.map((each, index) => (index === place ? { ...each, jokers: each.jokers - 1 } : each));
}
