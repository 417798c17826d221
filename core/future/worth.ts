import { type Random, randomFromSeed, shuffle } from '../base/random.ts';
import type { Steps } from '../base/steps.ts';
import type { CardChance } from '../chance/card-chance.ts';
import { layHand } from '../chance/lay.ts';
import { carefulAdviser } from '../others/careful.ts';
import { mayBePassed, PASS_SIZE } from '../exchange/steps.ts';
import { playExchange } from '../table/exchange.ts';
import { gameStreams } from '../table/game.ts';
import { playOut } from '../table/play.ts';
import { POLICIES, type PolicyName } from '../table/policies/names.ts';
import type { Policy, SeatView } from '../table/policy.ts';
import { beginGame, layTable, makeTable, playerAt, SEAT_COUNT, type Table } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import { ExchangeAdviser } from './exchange-adviser.ts';

/** Rules that one chair can follow: the window's own advice, two policies of the simulated table, and chance alone. */
export const WORTH_RULES = ['advice', 'soft', 'nearest', 'random'] as const;
type WorthRule = (typeof WORTH_RULES)[number];
/** Where the chair follows a rule; elsewhere it plays soft. */
export const WORTH_PARTS = ['game', 'exchange', 'play'] as const;
type WorthPart = (typeof WORTH_PARTS)[number];

/** Who the other three seats can be. */
export const WORTH_OTHERS = ['soft', 'planner', 'beginner', 'club'] as const satisfies readonly PolicyName[];
type WorthOthers = (typeof WORTH_OTHERS)[number];

export interface WorthTask {
  readonly card: TableCard;
  /** The chance at the kind of table that the others make. */
  readonly fit: CardChance;
  readonly deals: number;
  /** Walls that each deal is played on with after the exchange. */
  readonly walls: number;
  readonly seed: number;
  readonly rule: WorthRule;
  readonly against: WorthRule;
  readonly part: WorthPart;
  readonly others: WorthOthers;
  /** A clock, in seconds. */
  readonly seconds: () => number;
}

/** What following one rule instead of another is worth. */
export interface Worth {
  readonly deals: number;
  /** Games played in all. */
  readonly games: number;
  /** Games that the chair won by the first rule, and by the second. */
  readonly won: number;
  readonly wonAgainst: number;
  /** In games of a hundred, with its standard error. */
  readonly difference: number;
  readonly error: number;
  /** What a decision by the first rule took. */
  readonly secondsPerDecision: number;
}

/**
 * Plays each deal twice, the chair by the first rule and then by the second, and goes on from each exchange with the
 * same walls; the chair moves round the seats from deal to deal. Yields the part done, 0 to 1.
 */
export function* worthSteps(task: WorthTask): Steps<number, Worth> {
  const { card, deals, walls } = task;
  const others = Array.from({ length: SEAT_COUNT }, () => POLICIES[task.others](card));
  const table = makeTable(card, others);
  const timed = new Timed(policyOf(task.rule, task), task.seconds);
  const first = ruled(task, timed);
  const second = ruled(task, policyOf(task.against, task));
  let [won, wonAgainst, squares] = [0, 0, 0];
  for (let deal = 0; deal < deals; deal += 1) {
    const chair = deal % SEAT_COUNT;
    const wins = [first, second].map((policy) => {
      for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
        playerAt(table, seat).policy = seat === chair ? policy : (others[seat] as Policy);
      }
      return winsOf(table, chair, task, deal);
    });
    const [mine = 0, other = 0] = wins;
    won += mine;
    wonAgainst += other;
    squares += ((mine - other) / walls) ** 2;
    yield (deal + 1) / deals;
  }
  const mean = (won - wonAgainst) / (deals * walls);
  const variance = deals > 1 ? (squares - deals * mean * mean) / (deals - 1) : 0;
  return {
    deals,
    games: 2 * deals * walls,
    won,
    wonAgainst,
    difference: 100 * mean,
    error: 100 * Math.sqrt(variance / deals),
    secondsPerDecision: timed.decisions === 0 ? 0 : timed.spent / timed.decisions,
  };
}

/** How many of the walls a chair wins with after one deal and its exchange; the first wall is the one that was laid. */
function winsOf(table: Table, chair: number, { seed, walls }: WorthTask, deal: number): number {
  layTable(table, gameStreams(seed, deal).next().value);
  playExchange(table);
  const begun = table.next;
  const racks = table.players.map(({ hand }) => hand.counts.slice());
  const random = gameStreams(seed, FIRST_OF_WALLS + deal).next().value;
  let wins = 0;
  for (let wall = 0; wall < walls; wall += 1) {
    if (wall > 0) layWall(table, begun, racks, random);
    if (playOut(table).winner === chair) wins += 1;
  }
  return wins;
}

/** The streams of the walls begin at this number, far beyond those of the deals. */
const FIRST_OF_WALLS = 1 << 20;

/** Back to the racks with which play began, and another wall of the same tiles. */
function layWall(table: Table, begun: number, racks: readonly ArrayLike<number>[], random: Random): void {
  const tiles = shuffle(table.wall.slice(begun), random);
  for (const [place, kind] of tiles.entries()) table.wall[begun + place] = kind;
  table.next = begun;
  table.gone.fill(0);
  for (const [seat, rack] of racks.entries()) {
    const { hand, thrown } = playerAt(table, seat);
    layHand(hand, rack, []);
    thrown.length = 0;
  }
  // A stream of its own: what players take of it changes no other wall.
  beginGame(table, randomFromSeed(random.bits()));
}

/** Follows a policy in the part of the game that is measured; in the other plays soft, or among club players as these do. */
function ruled({ card, part, others }: WorthTask, policy: Policy): Policy {
  const soft = POLICIES[others === 'club' ? 'club' : 'soft'](card);
  const passing = part === 'play' ? soft : policy;
  const playing = part === 'exchange' ? soft : policy;
  return {
    begin: (random) => {
      for (const each of new Set([passing, playing])) each.begin?.(random);
    },
    seesWin: () => playing.seesWin?.() ?? true,
    pass: (...about) => passing.pass(...about),
    goesOn: (view) => passing.goesOn(view),
    courtesy: (...about) => passing.courtesy(...about),
    discard: (view) => playing.discard(view),
    callsWrongly: (...about) => playing.callsWrongly?.(...about) ?? false,
    call: (...about) => playing.call(...about),
    swap: (...about) => playing.swap(...about),
  };
}

function policyOf(rule: WorthRule, { card, fit }: WorthTask): Policy {
  if (rule === 'random') return randomPolicy();
  if (rule !== 'advice') return POLICIES[rule](card);
  const exchange = new ExchangeAdviser(card, fit);
  const play = carefulAdviser(fit.kind)(card);
  return {
    pass: (view, step, _, out) => exchange.pass(view, step, out),
    goesOn: (view) => exchange.goesOn(view),
    courtesy: (view, out) => exchange.pass(view, 'courtesy', out),
    discard: (view) => play.discard(view),
    call: (...about) => play.call(...about),
    swap: (...about) => play.swap(...about),
  };
}

/** Gives and discards any tile but a joker, goes on, never calls or swaps. */
function randomPolicy(): Policy {
  let random: Random = randomFromSeed(0);
  const anyOf = (view: SeatView, taken: readonly Kind[]): Kind => {
    const tiles = KINDS.filter(mayBePassed).flatMap((kind) => {
      const left = (view.hand.counts[kind] as number) - taken.filter((other) => other === kind).length;
      return Array<Kind>(Math.max(0, left)).fill(kind);
    });
    return tiles.length === 0 ? JOKER : (tiles[random.below(tiles.length)] as Kind);
  };
  return {
    begin: (stream) => {
      random = randomFromSeed(stream.bits());
    },
    pass: (view, _, __, out) => {
      for (let place = 0; place < PASS_SIZE; place += 1) out[place] = anyOf(view, out.slice(0, place));
      return PASS_SIZE;
    },
    goesOn: () => true,
    courtesy: () => 0,
    discard: (view) => anyOf(view, []),
    call: () => false,
    swap: () => false,
  };
}

/** Measures how long another policy takes over its decisions. */
class Timed implements Policy {
  spent = 0;
  decisions = 0;
  readonly #policy: Policy;
  readonly #seconds: () => number;

  constructor(policy: Policy, seconds: () => number) {
    this.#policy = policy;
    this.#seconds = seconds;
  }

  begin: NonNullable<Policy['begin']> = (random) => this.#policy.begin?.(random);
  seesWin: NonNullable<Policy['seesWin']> = () => this.#policy.seesWin?.() ?? true;
  pass: Policy['pass'] = (...about) => this.#time(() => this.#policy.pass(...about));
  goesOn: Policy['goesOn'] = (view) => this.#time(() => this.#policy.goesOn(view));
  courtesy: Policy['courtesy'] = (...about) => this.#time(() => this.#policy.courtesy(...about));
  discard: Policy['discard'] = (view) => this.#time(() => this.#policy.discard(view));
  callsWrongly: NonNullable<Policy['callsWrongly']> = (...about) => this.#policy.callsWrongly?.(...about) ?? false;
  call: Policy['call'] = (...about) => this.#time(() => this.#policy.call(...about));
  swap: Policy['swap'] = (...about) => this.#time(() => this.#policy.swap(...about));

  #time<Value>(decide: () => Value): Value {
    const from = this.#seconds();
    const value = decide();
    this.spent += this.#seconds() - from;
    this.decisions += 1;
    return value;
  }
}
