import { randomFromSeed } from '../../../core/base/random.ts';
import { finish } from '../../../core/base/steps.ts';
import type { CardChance } from '../../../core/chance/card-chance.ts';
import { MomentChance } from '../../../core/chance/moment-chance.ts';
import { whereabouts } from '../../../core/chance/table-figures.ts';
import { mayBeBlind, PASS_STEPS, type PassStep, SEATS } from '../../../core/exchange/steps.ts';
import { ExchangeFutures } from '../../../core/future/exchange-futures.ts';
import { IncomingDraws } from '../../../core/future/incoming-draws.ts';
import { positionBefore } from '../../../core/future/known-deal.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import type { ExchangeTerms } from '../../../core/future/terms.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import type { Watcher } from '../../../core/table/game.ts';
import { INCOMING_CLASSES, type IncomingClass, incomingClassOf } from '../../../core/table/incoming-rates.ts';
import { PLAYERS_AT, simulateGames } from '../../../core/table/simulate.ts';
import { playerAt, SEAT_COUNT, type Table } from '../../../core/table/table.ts';
import { makeTableCard } from '../../../core/table/table-card.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';

/** The steps at which all seats look ahead: the first one, and the second round, where it may be stopped. */
const LOOKED_FROM = ['right', 'left2'] as const;

/** A mean over seats with its standard error; the seats of one game count as one observation. */
interface Mean {
  readonly mean: number;
  readonly error: number;
}

/** What looks ahead said against what came; chances as fractions of 1. */
export interface FuturesCheck {
  readonly step: (typeof LOOKED_FROM)[number];
  readonly looks: number;
  /** The mean chance when play begins that the futures of the choice made gave. */
  readonly said: number;
  /** That less the chance when play began, and less the share of games won. */
  readonly overBegun: Mean;
  readonly overWon: Mean;
}

/** Tiles of a class that came in at a step, and as many as the futures draw; a pass. */
export interface IncomingCheck {
  readonly step: PassStep;
  readonly class: IncomingClass;
  readonly came: number;
  readonly drawn: number;
  /** The standard error of `came` less `drawn`. */
  readonly error: number;
}

export interface FuturesTask {
  readonly compiled: CompiledCard;
  readonly fit: CardChance;
  /** Not the seed of the fit. */
  readonly seed: number;
  readonly games: number;
  /** Futures of each look. */
  readonly futures: number;
  /** Whether what comes in is drawn by the card's own rates, as it is unless left out. */
  readonly byRates?: boolean;
}

/** Lets every seat of simulated games look ahead, and compares what was said with what came. */
export function checkFutures(task: FuturesTask): {
  readonly looks: readonly FuturesCheck[];
  readonly incoming: readonly IncomingCheck[];
} {
  const { compiled, fit, seed, games } = task;
  if (seed === fit.seed) throw new Error('these games took part in the fit');
  const checker = new Checker(task);
  finish(simulateGames({ compiled, seed, games, policies: PLAYERS_AT[fit.kind] }, checker.watcher));
  return { looks: LOOKED_FROM.map((step) => checker.looksAt(step)), incoming: checker.incoming() };
}

interface Look {
  readonly step: PassStep;
  readonly game: number;
  readonly seat: number;
  readonly goesOn: boolean;
  readonly said: number;
  begun: number;
  won: number;
}

class Checker {
  readonly watcher: Watcher;
  readonly #terms: ExchangeTerms;
  readonly #futures: number;
  readonly #card;
  readonly #looks: Look[] = [];
  /** By step and class: of each pass, tiles that came and the mean number drawn. */
  readonly #passes = new Map<string, { came: number; drawn: number; squares: number; passes: number }>();
  #open: Look[] = [];
  #game = 0;
  #secondRound = false;

  constructor({ compiled, fit, futures, byRates = true }: FuturesTask) {
    this.#card = makeTableCard(compiled);
    this.#terms = byRates ? { fit, rates: fit.table.incoming } : { fit };
    this.#futures = futures;
    this.watcher = {
      beforePass: (table, step) => {
        if (step !== 'right' && step !== 'left2') return;
        for (let seat = 0; seat < SEAT_COUNT; seat += 1) this.#open.push(this.#look(table, seat, step));
      },
      onPass: (table, seat, step, gave, tiles) => {
        if (step === 'left2') this.#secondRound = true;
        this.#compare(table, seat, step, gave, tiles);
      },
      afterExchange: (table) => this.#begins(table),
      afterGame: (_, { winner }) => this.#ended(winner),
    };
  }

  looksAt(step: (typeof LOOKED_FROM)[number]): FuturesCheck {
    const looks = this.#looks.filter((look) => look.step === step);
    return {
      step,
      looks: looks.length,
      said: looks.reduce((sum, { said }) => sum + said, 0) / looks.length,
      overBegun: meanByGame(looks, ({ said, begun }) => said - begun),
      overWon: meanByGame(looks, ({ said, won }) => said - won),
    };
  }

  incoming(): readonly IncomingCheck[] {
    return PASS_STEPS.flatMap((step) =>
      INCOMING_CLASSES.flatMap((kindClass) => {
        const sums = this.#passes.get(`${step} ${kindClass}`);
        if (sums === undefined) return [];
        const { came, drawn, squares, passes } = sums;
        const mean = (came - drawn) / passes;
        const error = Math.sqrt((squares / passes - mean ** 2) / passes);
        return { step, class: kindClass, came: came / passes, drawn: drawn / passes, error };
      }),
    );
  }

  /** The steady player's choice at a step, and the mean over its futures. */
  #look(table: Table, seat: number, step: 'right' | 'left2'): Look {
    const { hand, given, policy, view } = playerAt(table, seat);
    // Asked of the player without its slips: those take of the stream that the game itself needs.
    const goesOn = step === 'right' || (policy.unfailing ?? policy).goesOn(view);
    const tiles: Kind[] = [];
    if (goesOn) tiles.length = policy.pass(view, step, mayBeBlind(step), tiles);
    const choice: PassChoice = goesOn ? { type: 'give', tiles } : { type: 'stop' };
    const position = positionBefore(
      Tiles.fromCounts(hand.counts),
      Tiles.fromCounts(given),
      SEATS[seat] as (typeof SEATS)[number],
      step,
    );
    const futures = new ExchangeFutures(this.#card, position, this.#terms);
    const random = randomFromSeed(SEAT_COUNT * this.#game + seat);
    let sum = 0;
    for (let future = 0; future < this.#futures; future += 1) sum += futures.play(choice, random).chance;
    return { step, game: this.#game, seat, goesOn, said: sum / this.#futures, begun: 0, won: 0 };
  }

  #compare(table: Table, seat: number, step: PassStep, gave: readonly Kind[], tiles: readonly Kind[]): void {
    if (tiles.length === 0) return;
    const { unseen, earlier } = whereabouts(table, seat, gave);
    const draws = new IncomingDraws(unseen, earlier, this.#terms.rates);
    const random = randomFromSeed(1_000_000 + SEAT_COUNT * this.#game + seat);
    draws.restart();
    const drawn = Array.from({ length: DRAWS }, () => draws.draw(random, step).slice(0, tiles.length)).flat();
    for (const kindClass of INCOMING_CLASSES) {
      const key = `${step} ${kindClass}`;
      const sums = this.#passes.get(key) ?? { came: 0, drawn: 0, squares: 0, passes: 0 };
      const count = (kinds: readonly Kind[]): number =>
        kinds.filter((kind) => incomingClassOf(kind) === kindClass).length;
      const [came, mean] = [count(tiles), count(drawn) / DRAWS];
      sums.came += came;
      sums.drawn += mean;
      sums.squares += (came - mean) ** 2;
      sums.passes += 1;
      this.#passes.set(key, sums);
    }
  }

  #begins(table: Table): void {
    const chance = new MomentChance(table, this.#terms.fit);
    const hasHappened = ({ step, goesOn }: Look): boolean => step === 'right' || goesOn === this.#secondRound;
    this.#open = this.#open.filter(hasHappened);
    for (const look of this.#open) {
      chance.seat = look.seat;
      look.begun = chance.beforePlay();
    }
  }

  #ended(winner: number): void {
    for (const look of this.#open) look.won = look.seat === winner ? 1 : 0;
    this.#looks.push(...this.#open);
    this.#open = [];
    this.#secondRound = false;
    this.#game += 1;
  }
}

/** Draws of each pass that the futures' rates are compared by. */
const DRAWS = 8;

function meanByGame(looks: readonly Look[], of: (look: Look) => number): Mean {
  const games = new Map<number, number>();
  for (const look of looks) games.set(look.game, (games.get(look.game) ?? 0) + of(look));
  const mean = [...games.values()].reduce((sum, each) => sum + each, 0) / games.size;
  const spread = [...games.values()].reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return { mean: (mean * games.size) / looks.length, error: Math.sqrt(spread) / looks.length };
}
