import { mapped, type Steps } from '../base/steps.ts';
import { RackAways } from '../others/rack-aways.ts';
import { countPairs, type DueGames, type PairCount, PlayDuels } from '../future/play-costs.ts';
import { PlayFutures } from '../future/play-futures.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import type { PlayOption } from '../table/play-option.ts';
import type { Offer } from '../table/policy.ts';
import { type PlayChoice, type PlayChoices, playChoices, type PlayMeasure, playOptions } from './play-choices.ts';
import { NEXT, openChoices, withCosts } from './play-costs.ts';

/** Games from a state of play, for the choices of its list by their places. */
export class PlayGames {
  readonly #futures: PlayFutures;
  readonly #options: readonly PlayOption[];

  private constructor(futures: PlayFutures, options: readonly PlayOption[]) {
    this.#futures = futures;
    this.#options = options;
  }

  /** Null where nothing is due. */
  static at(measure: PlayMeasure, state: GameState, events: readonly GameEvent[], made?: Offer): PlayGames | null {
    const moment = playOptions(measure, state, events, made);
    if (moment === null) return null;
    const { table, chance } = measure;
    const futures = new PlayFutures(table, chance.kind, RackAways.of(table, chance.kind), moment.position);
    return new PlayGames(futures, moment.options);
  }

  /** Plays the games due. */
  count(due: DueGames): Steps<undefined, PairCount[]> {
    return countPairs(this.#futures, this.#options, due);
  }
}

/** A decision of play that is judged: the same list as at the Table, of which games need not tell all. */
export interface PlayedRequest {
  /** A call that was made; see `playChoices`. */
  readonly made?: Offer | undefined;
  /** The choices whose costs are wanted, beside the few that stand next to the first; all if left out. */
  readonly asked?: (choice: PlayChoice) => boolean;
}

/** All that can be done in a state of play with what each choice costs, by games from there; yields the part done, 0 to 1. */
export function* playedOut(
  measure: PlayMeasure,
  state: GameState,
  events: readonly GameEvent[],
  { made, asked = () => true }: PlayedRequest = {},
): Steps<number, PlayChoices> {
  const ranked = yield* mapped(playChoices(measure, state, events, made), () => 0);
  const { choices } = ranked;
  const open = openChoices(choices);
  const wanted = open.filter((place) => asked(choices[place] as PlayChoice));
  const games = wanted.length === 0 ? null : PlayGames.at(measure, state, events, made);
  if (games === null) return ranked;
  const duels = new PlayDuels(
    open.filter((place, count) => count < NEXT || wanted.includes(place)),
    measure.rule,
  );
  for (let due = duels.due; due !== null; due = duels.due) {
    const { done } = duels;
    duels.take(due, [yield* mapped(games.count(due), () => done)]);
  }
  return { ...ranked, choices: withCosts(choices, duels.counts, measure.rule) };
}
