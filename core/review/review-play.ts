import { expectValue } from '../base/result.ts';
import type { CalledEvent, DiscardedEvent, GameEvent, SwappedEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handView } from '../game/hand-view.ts';
import { handSize } from '../game/seen.ts';
import { tileField } from '../game/tile-fields.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { callChoices, type Choice, choiceOf, discardChoices, ranked } from './choices.ts';
import { type Decision, judge } from './decision.ts';
import { whyCalled, whyParted } from './why.ts';
import { type Engine, worthOf } from './worth.ts';

/** Judges an own discard from a hand of 14. */
export function judgeDiscard(engine: Engine, before: GameState, event: DiscardedEvent, place: number): Decision {
  const choices = discardChoices(engine, before);
  const tiles = expectValue(parseTiles(event.tile));
  const chosen = choiceOf(choices, tiles) as Choice;
  const target = worthOf(engine, handView(before)).way;
  const why = (taken: Choice, best: Choice, verdict: Decision['verdict']): string[] =>
    whyParted(engine.compiled, taken, best, verdict, target);
  return judge({ place, kind: 'discard', step: null, rack: before.rack, why }, choices, chosen);
}

/** Judges an own call; not calling was the other choice. */
export function judgeCall(engine: Engine, before: GameState, event: CalledEvent, place: number): Decision {
  const choices = callChoices(engine, before, tileOf(event.tile));
  const group = expectValue(parseTiles(event.group));
  const known = choiceOf(choices, group);
  // A group that no hand wants is not among the choices: it leaves nothing.
  const chosen = known ?? { tiles: group, worth: 0 };
  const all = known === undefined ? ranked([...choices, chosen]) : choices;
  return judge({ place, kind: 'call', step: null, rack: before.rack, why: whyCalled }, all, chosen);
}

/**
 * Judges letting another's discard go; null when there was nothing to call, or when somebody
 * else's call or win may have come first.
 */
export function judgeLetGo(
  engine: Engine,
  after: GameState,
  event: DiscardedEvent,
  next: GameEvent | undefined,
  place: number,
): Decision | null {
  if (event.seat === after.seat || handSize(after) !== 13 || next?.type === 'called' || next?.type === 'ended')
    return null;
  const choices = callChoices(engine, after, tileOf(event.tile));
  if (choices.length < 2) return null;
  const chosen = choiceOf(choices, Tiles.none) as Choice;
  return judge({ place, kind: 'let-go', step: null, rack: after.rack, why: whyCalled }, choices, chosen);
}

/** Judges an own joker swap; leaving the joker was the other choice. */
export function judgeSwap(
  engine: Engine,
  before: GameState,
  after: GameState,
  event: SwappedEvent,
  place: number,
): Decision {
  const chosen = { tiles: Tiles.of([tileOf(event.tile)]), worth: worthOf(engine, handView(after)).value };
  const left = { tiles: Tiles.none, worth: worthOf(engine, handView(before)).value };
  const why = (_: Choice, best: Choice): string[] =>
    best.tiles.size > 0
      ? ['A joker serves more hands than the tile.']
      : ['The tile was worth more in the hand than the joker.'];
  return judge({ place, kind: 'swap', step: null, rack: before.rack, why }, ranked([chosen, left]), chosen);
}

function tileOf(text: string): Kind {
  return expectValue(tileField(text));
}
