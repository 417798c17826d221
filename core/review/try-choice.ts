import { expectValue } from '../base/result.ts';
import { silent, type Steps } from '../base/steps.ts';
import type { DiscardedEvent, GaveEvent } from '../game/events.ts';
import { handSize, handView } from '../game/hand-view.ts';
import { applyEvent } from '../game/state.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { choiceOf } from './choices.ts';
import type { PlayChoice, PlayMeasure } from './play-choices.ts';
import { playedOut } from './play-games.ts';
import type { PlayedGame } from './played-game.ts';
import { worthOf } from './yardstick.ts';

/** What another choice would have led to; see `Decision` for the one that was made. */
export interface TriedChoice {
  /** For a pass the mean worth after it, exact over all that may come in; for a discard the chance to win after it. */
  readonly average: number;
  /** What it would have gained against the choice made; a discard by what the list of the Table says. */
  readonly gain: number;
  /** The worth with the tiles that really came in; null when none did, or when they could not have. */
  readonly same: number | null;
}

/** Tries other tiles for the pass or discard at `place`; null when they could not be given there. */
export function* tryChoice(
  game: PlayedGame,
  measure: PlayMeasure,
  place: number,
  tiles: Tiles,
): Steps<undefined, TriedChoice | null> {
  const event = game.events[place];
  if (event?.type === 'discarded') {
    const before = game.before(place);
    return event.seat === before.seat ? yield* triedDiscard(game, measure, place, event, tiles) : null;
  }
  if (event?.type !== 'gave') return null;
  const choices = yield* game.passesDue(place);
  const choice = choiceOf(choices, tiles);
  const made = choiceOf(choices, expectValue(parseTiles(event.tiles)));
  if (choice === undefined || made === undefined) return null;
  return { average: choice.worth, same: sameIncoming(game, place, tiles), gain: choice.worth - made.worth };
}

function* triedDiscard(
  game: PlayedGame,
  measure: PlayMeasure,
  place: number,
  event: DiscardedEvent,
  tiles: Tiles,
): Steps<undefined, TriedChoice | null> {
  const before = game.before(place);
  // A tile that was drawn and thrown at once, without being entered, left no choice to try.
  if (handSize(before) !== 14) return null;
  const thrown = expectValue(parseTiles(event.tile));
  const isDiscardOf = ({ action, tiles: given }: PlayChoice, wanted: Tiles): boolean =>
    action === 'discard' && given.equals(wanted);
  const asked = (each: PlayChoice): boolean => isDiscardOf(each, tiles) || isDiscardOf(each, thrown);
  const { choices } = yield* silent(playedOut(measure, before, game.events, { asked }));
  const choice = choices.find((each) => isDiscardOf(each, tiles));
  const made = choices.find((each) => isDiscardOf(each, thrown));
  if (choice === undefined || made === undefined) return null;
  return { average: choice.chance, same: null, gain: made.cost - choice.cost };
}

/**
 * The worth of the hand after a pass if these tiles had been given at event `place` instead, and
 * the same tiles had come in; null when that is impossible: not so many tiles, not in the rack, or
 * the pass was never finished.
 */
export function sameIncoming(game: PlayedGame, place: number, tiles: Tiles): number | null {
  const gave = game.events[place];
  if (gave?.type !== 'gave') return null;
  const instead: GaveEvent = { ...gave, tiles: formatTiles(tiles) };
  const incoming = game.events
    .slice(place + 1)
    .filter((event) => event.type === 'received' && event.step === gave.step);
  let state = game.before(place);
  for (const event of [instead, ...incoming]) {
    const next = applyEvent(state, event);
    if (!next.ok) return null;
    state = next.value;
  }
  if (state.exchange?.phase === 'receiving') return null;
  return worthOf(game.yardstick.at(game.before(place)), handView(state)).value;
}
