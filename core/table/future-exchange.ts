import type { Random } from '../base/random.ts';
import { givenTiles, PASS_SIZE } from '../exchange/state.ts';
import { PASS_STEPS, type PassStep } from '../exchange/steps.ts';
import { KIND_COUNT, type Kind, SET_SIZE } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { IncomingDraws } from './future-draws.ts';
import type { Choice } from './future-seats.ts';
import { BestReach } from './future-value.ts';
import { type ExchangeTerms, USUAL_EXCHANGE } from './future-usual.ts';
import type { Position } from './future-world.ts';
import { WALL_AT_START } from './hazard.ts';
import { POLICIES } from './policies/names.ts';
import type { Policy } from './policy.ts';
import { makeTable, type Player, playerAt, SEAT_COUNT } from './table.ts';
import type { TableCard } from './table-card.ts';

/** How the exchange came out: the best reach and the least away when play begins. */
export interface ExchangeFuture {
  readonly reach: number;
  readonly away: number;
}

const ALL_ALIKE = new Float64Array(KIND_COUNT).fill(1);

/**
 * Futures of the rest of an exchange: what comes in at each step is drawn from the unseen tiles,
 * tiles given away do not come back, and the user's seat decides by a policy once the choice on
 * trial is made. With the same stream two choices meet the same tiles, stops and offers.
 */
export class ExchangeFutures {
  readonly #terms: ExchangeTerms;
  readonly #due: PassStep;
  readonly #rack: readonly Kind[];
  readonly #given: Uint8Array;
  readonly #draws: IncomingDraws;
  readonly #player: Player;
  readonly #policy: Policy;
  readonly #value: BestReach;

  constructor(card: TableCard, { seat, exchange }: Position, terms: ExchangeTerms = USUAL_EXCHANGE) {
    if (exchange.step === null) throw new Error('a future begins while a pass is due');
    const given = givenTiles(exchange);
    const unseen = Tiles.fullSet.minus(exchange.rack.plus(given)).toCounts();
    this.#terms = terms;
    this.#due = exchange.step;
    this.#rack = exchange.rack.toKinds();
    this.#given = given.toCounts();
    this.#draws = new IncomingDraws(unseen, terms.weights ?? ALL_ALIKE);
    this.#policy = POLICIES[terms.own](card);
    this.#value = new BestReach(card, terms.model);
    const table = makeTable(card, Array<Policy>(SEAT_COUNT).fill(this.#policy));
    table.next = SET_SIZE - WALL_AT_START;
    this.#player = playerAt(table, seat);
  }

  /** One future of a choice; all chance comes from `random`. */
  play(choice: Choice, random: Random): ExchangeFuture {
    const { hand, likings } = this.#player;
    const othersGoOn = random.fraction() < this.#terms.othersGoOn;
    const offer = random.fraction();
    for (let kind = 0; kind < KIND_COUNT; kind += 1) likings[kind] = random.fraction();
    this.#restart();
    for (let step: PassStep | undefined = this.#due; step !== undefined; step = following(step)) {
      if (step === 'left2' && !this.#goesOn(choice, othersGoOn)) step = 'courtesy';
      // Drawn at each step, whatever is taken of it, so that all choices draw alike.
      const coming = this.#draws.draw(random);
      const count = this.#give(choice, step, offer);
      const taken = coming.slice(0, count);
      this.#draws.take(taken);
      for (const kind of taken) hand.add(kind);
    }
    return { reach: this.#value.of(hand, hand.counts, this.#draws.left), away: hand.least() };
  }

  #restart(): void {
    const { hand, given } = this.#player;
    hand.clear();
    for (const kind of this.#rack) hand.add(kind);
    given.set(this.#given);
    this.#draws.restart();
  }

  /** Gives the tiles of a step; how many went and so come in. */
  #give(choice: Choice, step: PassStep, offer: number): number {
    const { hand, given, view } = this.#player;
    const out: Kind[] = [];
    if (step === this.#due && choice.type === 'give') out.push(...choice.tiles);
    else if (step === this.#due && step === 'courtesy') out.length = 0;
    else if (step === 'courtesy') out.length = this.#policy.courtesy(view, out);
    else out.length = this.#policy.pass(view, step, step === 'left' || step === 'right2', out);
    if (step === 'courtesy') out.length = Math.min(out.length, this.#offered(offer));
    for (const kind of out) {
      hand.remove(kind);
      given[kind] = (given[kind] as number) + 1;
    }
    return out.length;
  }

  #goesOn(choice: Choice, othersGoOn: boolean): boolean {
    if (this.#due === 'left2') return choice.type !== 'stop';
    return othersGoOn && this.#policy.goesOn(this.#player.view);
  }

  /** How many tiles the player across asks for when `offer` is drawn. */
  #offered(offer: number): number {
    const { offered, offers } = this.#terms;
    if (offered !== undefined) return offered;
    let sum = 0;
    const place = offers.findIndex((chance) => (sum += chance) > offer);
    return place < 0 ? PASS_SIZE : place;
  }
}

function following(step: PassStep): PassStep | undefined {
  return PASS_STEPS[PASS_STEPS.indexOf(step) + 1];
}
