import { expectValue } from '../base/result.ts';
import { silent, type Steps } from '../base/steps.ts';
import type { CalledEvent, DiscardedEvent, GameEvent, SwappedEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handSize, handView } from '../game/hand-view.ts';
import { nextInTurn } from '../game/stage.ts';
import { applyEvent } from '../game/state.ts';
import { groupField, tileField } from '../game/tile-fields.ts';
import { formatTiles, parseTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import { type Choice, ranked } from './choices.ts';
import { type Asked, choiceDocument, type ChoiceDocument, type Decision, judge, LISTED } from './decision.ts';
import type { GameChance } from './game-chance.ts';
import type { PlayedGame } from './played-game.ts';
import { isJudged, type JudgedChoice, type PlayChoice } from './play-choices.ts';
import { playedOut } from './play-games.ts';
import { whyCalled, whyPlayed, whySwapped } from './why.ts';
import { worthOf } from './yardstick.ts';

/* Decisions of play are judged by the list of the Table: its order, its chances, its costs. */

/** Judges what the user did at the event of a place in play; null where nothing of the user's was to decide. */
export function* judgePlay(game: PlayedGame, chance: GameChance, place: number): Steps<undefined, Decision | null> {
  const event = game.events[place] as GameEvent;
  const before = game.before(place);
  switch (event.type) {
    case 'discarded':
      if (event.seat !== before.seat) return yield* judgeLetGo(game, chance, place);
      return handSize(before) === 14 ? yield* judgeDiscard(game, chance, place, event) : null;
    case 'called':
      return event.seat === before.seat ? yield* judgeCall(game, chance, place, event) : null;
    case 'swapped':
      return event.seat === before.seat ? yield* judgeSwap(game, chance, place, event) : null;
    default:
      return null;
  }
}

function* judgeDiscard(
  game: PlayedGame,
  { measure }: GameChance,
  place: number,
  event: DiscardedEvent,
): Steps<undefined, Decision | null> {
  const before = game.before(place);
  const tiles = expectValue(parseTiles(event.tile));
  const isMade = ({ action, tiles: thrown }: PlayChoice): boolean => action === 'discard' && thrown.equals(tiles);
  const { choices } = yield* silent(playedOut(measure, before, game.events, { asked: isMade }));
  const { aim } = worthOf(game.yardstick.at(before), handView(before));
  return judgePlayed({ place, kind: 'discard', rack: before.rack }, choices, choices.find(isMade), (mine, best) =>
    whyPlayed(mine, best, { act: 'discarding', rack: before.rack, aim }),
  );
}

/** An own call; a discard that was not logged is laid on the table first. */
function* judgeCall(
  game: PlayedGame,
  { measure }: GameChance,
  place: number,
  event: CalledEvent,
): Steps<undefined, Decision | null> {
  const offered = beforeCall(game, place, event);
  const kind = expectValue(tileField(event.tile));
  const made = expectValue(groupField(event.group, kind));
  const group = expectValue(parseTiles(event.group));
  const isMade = ({ action, tiles }: PlayChoice): boolean => action === 'call' && tiles.equals(group);
  const { choices } = yield* silent(playedOut(measure, offered.state, offered.events, { made, asked: isMade }));
  return judgePlayed({ place, kind: 'call', rack: offered.state.rack }, choices, choices.find(isMade), whyCalled);
}

/**
 * Letting another's discard go; null when there was nothing to call, or when somebody else's call or win may have come
 * first.
 */
function* judgeLetGo(game: PlayedGame, { measure }: GameChance, place: number): Steps<undefined, Decision | null> {
  const after = game.after(place);
  const next = game.events[place + 1];
  if (handSize(after) !== 13 || next?.type === 'called' || next?.type === 'ended') return null;
  const isMade = ({ action }: PlayChoice): boolean => action === 'let-go';
  const { choices } = yield* silent(playedOut(measure, after, game.events, { asked: isMade }));
  if (choices.length < 2) return null;
  return judgePlayed({ place, kind: 'let-go', rack: after.rack }, choices, choices.find(isMade), whyCalled);
}

/** An own swap; where the draw before it was not logged, leaving the joker is the only other choice. */
function* judgeSwap(
  game: PlayedGame,
  chance: GameChance,
  place: number,
  event: SwappedEvent,
): Steps<undefined, Decision | null> {
  const before = game.before(place);
  const tiles = expectValue(parseTiles(event.tile));
  if (handSize(before) !== 14) {
    const swapped = { tiles, worth: chance.at(game.after(place), game.events) };
    const left = { tiles: Tiles.none, worth: chance.at(before, game.events) };
    const why = (_: Choice, best: Choice): string[] => whySwapped(best.tiles.size > 0);
    return judge({ place, kind: 'swap', step: null, rack: before.rack, why }, ranked([left, swapped]), swapped);
  }
  const isMade = ({ action, tiles: given }: PlayChoice): boolean => action === 'swap' && given.equals(tiles);
  const { choices } = yield* silent(playedOut(chance.measure, before, game.events, { asked: isMade }));
  return judgePlayed({ place, kind: 'swap', rack: before.rack }, choices, choices.find(isMade), (mine, best) =>
    whySwapped(mine.verdict === 'best' || best.action === 'swap'),
  );
}

/** The state with the called discard on the table, and the events that led to it. */
export function beforeCall(
  game: PlayedGame,
  place: number,
  { tile, from }: CalledEvent,
): { readonly state: GameState; readonly events: readonly GameEvent[] } {
  const state = game.before(place);
  const { lastDiscard, seat } = state;
  const past = game.events.slice(0, place);
  if (seat === null || lastDiscard?.kind === expectValue(tileField(tile))) return { state, events: past };
  const thrown: GameEvent = { type: 'discarded', seat: from ?? nextInTurn(seat), tile };
  const offered = applyEvent(state, thrown);
  return offered.ok ? { state: offered.value, events: [...past, thrown] } : { state, events: past };
}

/**
 * A decision of play from the list of all choices, in its order and with the costs that it says; null where the one made
 * is not among them.
 */
function judgePlayed(
  { place, kind, rack }: Pick<Asked, 'place' | 'kind' | 'rack'>,
  choices: readonly PlayChoice[],
  chosen: PlayChoice | undefined,
  why: (chosen: JudgedChoice, best: PlayChoice) => readonly string[],
): Decision | null {
  const [first] = choices;
  if (first === undefined || chosen === undefined || !isJudged(chosen)) return null;
  const { cost, verdict } = chosen;
  const best = verdict === 'best' ? chosen : first;
  return {
    place,
    kind,
    step: null,
    rack: formatTiles(rack),
    chosen: playDocument(chosen),
    best: playDocument(best),
    cost,
    verdict,
    forced: choices.every((each) => each.verdict === 'best'),
    choices: choices.length,
    top: choices
      .filter(isJudged)
      .toSorted((one, other) => other.chance - one.chance)
      .slice(0, LISTED)
      .map(playDocument),
    why: why(chosen, best),
    notes: [],
    ahead: null,
  };
}

function playDocument({ action, tiles, chance }: PlayChoice): ChoiceDocument {
  return { ...choiceDocument({ tiles, worth: chance }), action };
}
