import type { Random } from '../base/random.ts';
import { MomentChance } from '../chance/moment-chance.ts';
import { givenTiles } from '../exchange/state.ts';
import { agreed, mayBeBlind, PASS_SIZE, PASS_STEPS, type PassStep } from '../exchange/steps.ts';
import type { Contest } from '../plan/race.ts';
import { WALL_AT_START } from '../tiles/deal.ts';
import { POLICIES, type PolicyName } from '../table/policies/names.ts';
import type { TableKind } from '../table/kinds.ts';
import { Hand } from '../table/hand.ts';
import { chanceToGoOn, type Policy } from '../table/policy.ts';
import { PLAYERS_AT } from '../table/simulate.ts';
import { makeTable, type Player, playerAt, SEAT_COUNT } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import { KIND_COUNT, type Kind, SET_SIZE, supplyOf } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { IncomingDraws } from './incoming-draws.ts';
import { Trails } from './trails.ts';
import type { Position } from './known-deal.ts';
import type { PassChoice } from './rivals.ts';
import { EXCHANGE_FIGURES } from './figures.ts';
import { type ExchangeTerms, USUAL_EXCHANGE } from './terms.ts';

/**
 * Compares choices by the rest of the exchange: the first figure is the chance to win when play begins, by the card's
 * fit, the second one the least away then.
 */
export function exchangeContest(
  card: TableCard,
  position: Position,
  choices: readonly PassChoice[],
  terms: ExchangeTerms = USUAL_EXCHANGE,
): Contest {
  const futures = new ExchangeFutures(card, position, terms);
  return {
    candidates: choices.length,
    figures: EXCHANGE_FIGURES,
    sample: (candidate, random, into) => {
      const { chance, away } = futures.play(choices[candidate] as PassChoice, random);
      into[0] = chance;
      into[1] = away;
    },
  };
}

/** How the exchange came out: the chance to win and the least away when play begins. */
export interface ExchangeFuture {
  readonly chance: number;
  readonly away: number;
}

/**
 * Futures of the rest of an exchange: what comes in at each step is drawn from the unseen tiles,
 * tiles given away do not come back, and the user's seat decides by a policy once the choice on
 * trial is made. With the same stream two choices meet the same tiles, stops and offers.
 */
export class ExchangeFutures {
  readonly #terms: ExchangeTerms;
  readonly #due: PassStep;
  readonly #rack: Hand;
  readonly #given: Uint8Array;
  readonly #draws: IncomingDraws;
  readonly #player: Player;
  readonly #policy: Policy;
  readonly #value: MomentChance;
  readonly #trails = new Trails<ExchangeFuture>();
  /** What the last stream began with, by which it is known again. */
  #stops = -1;
  #offer = -1;

  constructor(card: TableCard, { seat, exchange }: Position, terms: ExchangeTerms = USUAL_EXCHANGE) {
    if (exchange.step === null) throw new Error('a future begins while a pass is due');
    const given = givenTiles(exchange);
    const unseen = Tiles.fullSet.minus(exchange.rack.plus(given)).toCounts();
    this.#terms = terms;
    this.#due = exchange.step;
    this.#rack = new Hand(card);
    for (const kind of exchange.rack.toKinds()) this.#rack.add(kind);
    this.#given = given.toCounts();
    const mayReturn = given
      .toCounts()
      .map((count, kind) => Math.min(count, supplyOf(kind as Kind) - exchange.rack.count(kind as Kind)));
    this.#draws = new IncomingDraws(unseen, mayReturn, terms.rates);
    this.#policy = POLICIES[terms.own ?? steadyPlayer(terms.fit.kind)](card);
    const table = makeTable(card, Array<Policy>(SEAT_COUNT).fill(this.#policy));
    table.next = SET_SIZE - WALL_AT_START;
    this.#player = playerAt(table, seat);
    this.#value = new MomentChance(table, terms.fit);
    this.#value.seat = seat;
  }

  /** One future of a choice; all chance comes from `random`. */
  play(choice: PassChoice, random: Random): ExchangeFuture {
    const { hand, likings } = this.#player;
    const [stops, offer] = [random.fraction(), random.fraction()];
    for (let kind = 0; kind < KIND_COUNT; kind += 1) likings[kind] = random.fraction();
    if (stops !== this.#stops || offer !== this.#offer) this.#trails.clear();
    [this.#stops, this.#offer] = [stops, offer];
    this.#restart();
    for (let step: PassStep | undefined = this.#due; step !== undefined; step = following(step)) {
      if (step === 'left2' && !this.#goesOn(choice, stops)) step = 'courtesy';
      if (step !== this.#due) {
        const lists = [hand.counts, this.#player.given, this.#draws.left] as const;
        const known = this.#trails.meet({ step: PASS_STEPS.indexOf(step), drawn: this.#draws.drawn, lists });
        if (known !== undefined) return this.#trails.end(known);
      }
      // Drawn at each step, whatever is taken of it, so that all choices draw alike.
      const coming = this.#draws.draw(random, step);
      const gave = this.#give(choice, step, offer);
      const taken = coming.slice(0, gave.length);
      this.#draws.take(taken);
      this.#draws.give(gave);
      for (const kind of taken) hand.add(kind);
    }
    return this.#trails.end({ chance: this.#value.beforePlay(), away: hand.least() });
  }

  #restart(): void {
    const { hand, given } = this.#player;
    hand.copy(this.#rack);
    given.set(this.#given);
    this.#draws.restart();
  }

  /** Gives the tiles of a step; as many come in. */
  #give(choice: PassChoice, step: PassStep, offer: number): readonly Kind[] {
    const { hand, given, view } = this.#player;
    const out: Kind[] = [];
    if (step === this.#due && choice.type === 'give') out.push(...choice.tiles);
    else if (step === this.#due && step === 'courtesy') out.length = 0;
    else if (step === 'courtesy') out.length = this.#policy.courtesy(view, out);
    else out.length = this.#policy.pass(view, step, mayBeBlind(step), out);
    if (step === 'courtesy') out.length = agreed(out.length, this.#offered(offer));
    for (const kind of out) {
      hand.remove(kind);
      given[kind] = (given[kind] as number) + 1;
    }
    return out;
  }

  #goesOn(choice: PassChoice, stops: number): boolean {
    if (this.#due === 'left2') return choice.type !== 'stop';
    const { othersStop } = this.#terms.fit.table;
    if (stops < othersStop) return false;
    // Evenly spread again, now that nobody else stops.
    const own = (stops - othersStop) / (1 - othersStop);
    return own < chanceToGoOn(this.#policy, this.#player.view);
  }

  /** How many tiles the player across asks for when `offer` is drawn. */
  #offered(offer: number): number {
    const { offered, fit } = this.#terms;
    if (offered !== undefined) return offered;
    let sum = 0;
    const place = fit.table.offers.findIndex((chance) => (sum += chance) > offer);
    return place < 0 ? PASS_SIZE : place;
  }
}

function steadyPlayer(kind: TableKind): PolicyName {
  return PLAYERS_AT[kind][0] as PolicyName;
}

function following(step: PassStep): PassStep | undefined {
  return PASS_STEPS[PASS_STEPS.indexOf(step) + 1];
}
