import { expectValue, type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import type { GameProblem } from '../game/tile-fields.ts';
import { statesOf } from '../game/state.ts';
import { PASS_SIZE } from '../exchange/steps.ts';
import type { IncomingWeights } from '../table/incoming-rates.ts';
import { parseTiles } from '../tiles/text.ts';
import type { Choice } from './choices.ts';
import { passesDue } from './passes.ts';
import type { GameYardstick } from './yardstick.ts';

/**
 * A game that is looked back at: its events with the state before and after each, replayed once, its
 * yardstick, and the exact table of each pass, made when it is first asked for and kept.
 */
export class PlayedGame {
  readonly events: readonly GameEvent[];
  readonly yardstick: GameYardstick;
  readonly #states: readonly GameState[];
  readonly #passes = new Map<number, readonly Choice[]>();

  /** `states`: before each event and after all of them. */
  constructor(events: readonly GameEvent[], states: readonly GameState[], yardstick: GameYardstick) {
    this.events = events;
    this.yardstick = yardstick;
    this.#states = states;
  }

  /** Returns the first illegal event's problem. */
  static of(events: readonly GameEvent[], yardstick: GameYardstick): Result<PlayedGame, GameProblem> {
    const states = statesOf(events);
    return states.ok ? success(new PlayedGame(events, states.value, yardstick)) : states;
  }

  /** The state before the event at a place. */
  before(place: number): GameState {
    return this.#states[place] as GameState;
  }

  after(place: number): GameState {
    return this.before(place + 1);
  }

  /** The state after all events. */
  get last(): GameState {
    return this.before(this.events.length);
  }

  /**
   * All passes that could be made where tiles were given, or the second round was stopped; best
   * first, by what comes in if that is given.
   */
  *passesDue(place: number, rates: IncomingWeights | null = null): Steps<undefined, readonly Choice[]> {
    const kept = rates === null ? this.#passes.get(place) : undefined;
    if (kept !== undefined) return kept;
    const event = this.events[place];
    const before = this.before(place);
    const gave = event?.type === 'gave';
    const step = gave ? event.step : 'left2';
    const given = gave ? expectValue(parseTiles(event.tiles)).size : PASS_SIZE;
    const passes = yield* passesDue(this.yardstick.at(before), before, { step, given, rates });
    if (rates === null) this.#passes.set(place, passes);
    return passes;
  }
}
