import type { Watcher } from '../table/game.ts';
import { IncomingFit } from '../table/incoming-fit.ts';
import { type IncomingRates, stepTable } from '../table/incoming-rates.ts';
import type { TableKind } from '../table/kinds.ts';
import type { GameEnd } from '../table/play.ts';
import { playerAt, type Table } from '../table/table.ts';
import { type Kind, KIND_COUNT, KINDS, supplyOf } from '../tiles/kinds.ts';

/** What the games of a card at a kind of table brought: plain data, kept with the card. */
export interface CardFit {
  readonly kind: TableKind;
  /** Games of this card that it was fitted to; 0 where none were. */
  readonly games: number;
  readonly seed: number;
  /** The coefficients of `fillCorrection` (state.ts). */
  readonly correction: ArrayLike<number>;
  readonly table: TableFigures;
  /** The mean best reach with which seats begin to play; fits of earlier versions are without it. */
  readonly bestReach?: number;
}

/** What a kind of table does with a card. */
export interface TableFigures {
  /** The chance that one of three others stops the exchange before the second round. */
  readonly othersStop: number;
  /** The chances that the player across asks for 0, 1, 2 and 3 tiles in the courtesy. */
  readonly offers: readonly number[];
  /** The share of games that nobody wins. */
  readonly wallGames: number;
  /** The mean number of tiles drawn from the wall in a game, by all seats. */
  readonly draws: number;
  /** What comes in by passes, by step and kind. */
  readonly incoming: IncomingRates;
}

/** Enough digits for a chance to a hundredth of a game in a hundred, the same on every machine. */
export function rounded(value: number): number {
  return Math.round(value * 1e5) / 1e5;
}

/** Before tiles come in: 36 counts of those that a seat has not seen, and of those that it gave away before the present step. */
export function whereabouts(
  table: Table,
  seat: number,
  gave: readonly Kind[],
): { readonly unseen: Uint8Array; readonly earlier: Uint8Array } {
  const { given, hand } = playerAt(table, seat);
  const earlier = given.slice();
  for (const kind of gave) earlier[kind] = (earlier[kind] as number) - 1;
  const unseen = new Uint8Array(KIND_COUNT);
  for (const kind of KINDS) {
    const others = supplyOf(kind) - (hand.counts[kind] as number) - (given[kind] as number);
    // A tile that came back lies in the rack and counts as given, too.
    if (others < 0) earlier[kind] = Math.max(0, (earlier[kind] as number) + others);
    else unseen[kind] = others;
  }
  return { unseen, earlier };
}

/** Rates to a thousandth. */
export function roundedRates({ classes, weights, returned, ...rest }: IncomingRates): IncomingRates {
  const thousandth = (value: number): number => Math.round(value * 1000) / 1000;
  return {
    ...rest,
    classes: classes.map((each) => ({ ...each, rate: thousandth(each.rate), error: thousandth(each.error) })),
    weights: stepTable((step) => Array.from(weights[step], thousandth)),
    returned: stepTable((step) => thousandth(returned[step])),
  };
}

const SEATS_OF_OTHERS = 3 / 4;

/** Counts what a table does with a card. */
export class FigureCount {
  readonly watcher: Watcher;
  #games = 0;
  #secondRounds = 0;
  #wall = 0;
  #draws = 0;
  /** Courtesies in which at least so many tiles changed hands. */
  readonly #agreed = new Float64Array(4);
  #courtesies = 0;
  readonly #incoming: IncomingFit;

  /** `incoming`: where passes are counted; of several cards together if they share it. */
  constructor(incoming = new IncomingFit()) {
    this.#incoming = incoming;
    this.watcher = {
      onPass: (table, seat, step, gave, tiles) => {
        const { unseen, earlier } = whereabouts(table, seat, gave);
        this.#incoming.note(step, unseen, earlier, tiles);
        if (step === 'left2' && seat === 0) this.#secondRounds += 1;
        if (step !== 'courtesy') return;
        this.#courtesies += 1;
        for (let least = 0; least <= tiles.length; least += 1) {
          this.#agreed[least] = (this.#agreed[least] as number) + 1;
        }
      },
      afterGame: (_, end) => this.#ended(end),
    };
  }

  #ended({ winner, draws }: GameEnd): void {
    this.#games += 1;
    this.#draws += draws;
    if (winner < 0) this.#wall += 1;
  }

  /** The share of games so far that nobody won. */
  get wallGames(): number {
    return this.#wall / this.#games;
  }

  /** Two players of one kind ask for the same numbers equally often, so that the smaller is m or more as the square of one's. */
  figures(): TableFigures {
    const atLeast = (tiles: number): number =>
      tiles > 3 ? 0 : Math.sqrt((this.#agreed[tiles] as number) / this.#courtesies);
    const goOn = this.#secondRounds / this.#games;
    return {
      othersStop: rounded(1 - goOn ** SEATS_OF_OTHERS),
      offers: [0, 1, 2, 3].map((tiles) => rounded(atLeast(tiles) - atLeast(tiles + 1))),
      wallGames: this.wallGames,
      draws: rounded(this.#draws / this.#games),
      incoming: roundedRates(this.#incoming.rates()),
    };
  }
}
