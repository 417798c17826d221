import type { CardChance } from '../chance/card-chance.ts';
import { layMoment, steadyTable } from '../chance/lay.ts';
import { MomentChance } from '../chance/moment-chance.ts';
import { agreed, type PassStep } from '../exchange/steps.ts';
import type { GameEvent } from '../game/events.ts';
import type { GameState } from '../game/game-state.ts';
import { handSize } from '../game/hand-view.ts';
import { SEAT_COUNT, type Table } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import type { Kind } from '../tiles/kinds.ts';
import type { PlayMeasure } from './play-choices.ts';
import { type LoggedMoment, seatMoment } from './seat-moment.ts';

/**
 * The chance to win in the states of a logged game (core/chance/CHANCE.md). A state in which the user is to decide has
 * the value that the steady player's own choice leaves. States must have a seat; `events` are those that led to one, or
 * more of them.
 */
export class GameChance {
  readonly fit: CardChance;
  /** The same for the list of all that can be done in play. */
  readonly measure: PlayMeasure;
  readonly #table: Table;
  readonly #chance: MomentChance;

  /** `rule`: how games are played for the costs of play, and `swapAfterCall`, a rule of the house; as usual unless given. */
  constructor(
    card: TableCard,
    fit: CardChance,
    { rule, swapAfterCall }: Pick<PlayMeasure, 'rule' | 'swapAfterCall'> = {},
  ) {
    this.fit = fit;
    this.measure = { table: card, chance: fit, rule, swapAfterCall };
    this.#table = steadyTable(card, fit.kind);
    this.#chance = new MomentChance(this.#table, fit);
  }

  /** The mean chance of a deal: each of four seats wins equally often. */
  get ofDeal(): number {
    return (1 - this.fit.table.wallGames) / SEAT_COUNT;
  }

  at(state: GameState, events: readonly GameEvent[]): number {
    const { before } = this.#lay(seatMoment(state, events));
    if (!this.#chance.isAlive) return 0;
    const { playing, exchange, lastDiscard } = state;
    if (playing) {
      if (handSize(state) === 14) return this.#chance.onTurn().chance;
      const offered = lastDiscard !== null && lastDiscard.seat !== state.seat;
      return offered ? this.#chance.offered(lastDiscard.kind, before).chance : this.#chance.waiting(before);
    }
    if (exchange === null || exchange.step === null) return this.#chance.beforePlay();
    const { phase, step, toCome } = exchange;
    return phase === 'giving' ? this.#chance.beforePass(step) : this.#chance.afterGiving(step, toCome);
  }

  /** As if the exchange were over, for a game whose passes were not logged to their end. */
  beforePlay(state: GameState, events: readonly GameEvent[]): number {
    this.#lay(seatMoment(state, events));
    return this.#chance.isAlive ? this.#chance.beforePlay() : 0;
  }

  /** With 13 tiles in play, letting the discard on the table go. */
  waiting(state: GameState, events: readonly GameEvent[]): number {
    const { before } = this.#lay(seatMoment(state, events));
    return this.#chance.waiting(before);
  }

  /** Just before an own draw; `drawn`: tiles drawn by all seats till then. */
  beforeDraw(state: GameState, events: readonly GameEvent[], drawn: number): number {
    this.#lay({ ...seatMoment(state, events), drawn });
    return this.#chance.waiting(0);
  }

  /** After going on with the second round, before anybody knows whether it is stopped. */
  goingOn(state: GameState, events: readonly GameEvent[]): number {
    this.#lay(seatMoment(state, events));
    return this.#chance.goingOn();
  }

  /** What the steady player's pass leaves where this step is sure to be played. */
  steadyPass(state: GameState, events: readonly GameEvent[], step: PassStep): number {
    this.#lay(seatMoment(state, events));
    return this.#chance.steadyGift(step).chance;
  }

  /** What the steady player's courtesy leaves once it is known how many tiles the player across asks for. */
  steadyCourtesy(state: GameState, events: readonly GameEvent[], offered: number): number {
    this.#lay(seatMoment(state, events));
    const { tiles } = this.#chance.steadyGift('courtesy');
    const given: readonly Kind[] = tiles.slice(0, agreed(tiles.length, offered));
    return this.#chance.afterGift('courtesy', given);
  }

  #lay(moment: LoggedMoment): LoggedMoment {
    layMoment(this.#table, moment);
    this.#chance.seat = moment.seat;
    return moment;
  }
}
