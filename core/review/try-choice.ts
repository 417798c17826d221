import { expectValue } from '../base/result.ts';
import { silent, type Steps } from '../base/steps.ts';
import type { DiscardedEvent, GameEvent, GaveEvent } from '../game/events.ts';
import { handSize } from '../game/hand-view.ts';
import { applyEvent } from '../game/state.ts';
import { type RaceRule, USUAL_RULE } from '../plan/race.ts';
import { raceSteps } from '../plan/race-run.ts';
import type { IncomingWeights } from '../table/incoming-rates.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import type { Tiles } from '../tiles/tiles.ts';
import { aheadOf, type AheadRow } from './ahead.ts';
import { choiceOf } from './choices.ts';
import { isRight } from './decision.ts';
import { GameChance } from './game-chance.ts';
import { contestOf } from './look-ahead.ts';
import type { PlayChoice, PlayMeasure } from './play-choices.ts';
import { playedOut } from './play-games.ts';
import type { PlayedGame } from './played-game.ts';

/** What follows from a choice, as chances to win. */
export interface Followed {
  /** For a pass when play begins, over the futures of a look ahead; for a discard after it. */
  readonly average: number;
  /** After a pass with the tiles that really came in; null when none did, or when they could not have. */
  readonly same: number | null;
}

/** Another choice beside the one that was made. */
export interface TriedChoice {
  readonly tried: Followed;
  readonly made: Followed;
  /** The chance that the other choice would have gained; 0 where the two can't be told apart. */
  readonly gain: number;
}

/** What another choice is measured with. */
export interface TryMeasure extends PlayMeasure {
  /** What comes in by passes; all tiles alike if null or left out. */
  readonly rates?: IncomingWeights | null;
  /** How passes are compared; as in a look-back unless given. */
  readonly race?: RaceRule;
}

/** Tries other tiles for the pass or discard at `place`; null when they could not be given there. */
export function* tryChoice(
  game: PlayedGame,
  measure: TryMeasure,
  place: number,
  tiles: Tiles,
): Steps<undefined, TriedChoice | null> {
  const event = game.events[place];
  if (event?.type === 'gave') return yield* triedPass(game, measure, place, event, tiles);
  if (event?.type !== 'discarded' || event.seat !== game.before(place).seat) return null;
  return yield* triedDiscard(game, measure, place, event, tiles);
}

/** Both passes on the same futures, as a look-back compares them. */
function* triedPass(
  game: PlayedGame,
  { table, chance: fit, rates = null, race = USUAL_RULE }: TryMeasure,
  place: number,
  event: GaveEvent,
  tiles: Tiles,
): Steps<undefined, TriedChoice | null> {
  const passes = yield* game.passesDue(place);
  const given = expectValue(parseTiles(event.tiles));
  if (choiceOf(passes, tiles) === undefined) return null;
  const chosen = { type: 'give', tiles: given.toKinds() } as const;
  const choices = [chosen, { type: 'give', tiles: tiles.toKinds() }] as const;
  const offered = event.step === 'courtesy' ? given.size : null;
  const contest = contestOf(table, game, { choices, offered, place }, { rates, fit });
  const { chosen: made, rows } = aheadOf(yield* silent(raceSteps(contest, race)), choices, chosen);
  const tried = rows.find((row) => row !== made) as AheadRow;
  const chance = new GameChance(table, fit);
  return {
    tried: { average: tried.worth, same: sameIncoming(game, chance, place, tiles) },
    made: { average: made.worth, same: sameIncoming(game, chance, place, given) },
    gain: isRight(made.verdict) && isRight(tried.verdict) ? 0 : made.loss - tried.loss,
  };
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
  const tried = choices.find((each) => isDiscardOf(each, tiles));
  const made = choices.find((each) => isDiscardOf(each, thrown));
  if (tried === undefined || made === undefined) return null;
  return {
    tried: { average: tried.chance, same: null },
    made: { average: made.chance, same: null },
    gain: made.cost - tried.cost,
  };
}

/**
 * The chance after a pass if these tiles had been given at event `place`, and the same tiles had come in; null when that
 * is impossible: not so many tiles, not in the rack, or the pass was never finished.
 */
function sameIncoming(game: PlayedGame, chance: GameChance, place: number, tiles: Tiles): number | null {
  const gave = game.events[place] as GaveEvent;
  const instead: GaveEvent = { ...gave, tiles: formatTiles(tiles) };
  const incoming = game.events
    .slice(place + 1)
    .filter((event) => event.type === 'received' && event.step === gave.step);
  let state = game.before(place);
  const events: GameEvent[] = game.events.slice(0, place);
  for (const event of [instead, ...incoming]) {
    const next = applyEvent(state, event);
    if (!next.ok) return null;
    state = next.value;
    events.push(event);
  }
  return state.exchange?.phase === 'receiving' ? null : chance.at(state, events);
}
