import type { PlayedGame } from './game.ts';

/** Sums over simulated games: whole numbers only, so that parts add up to the same in any order (TB-22). */
export interface Tally {
  readonly games: number;
  readonly wallGames: number;
  /** Wins by own draw. */
  readonly selfDrawn: number;
  /** Hands that were dead at the end of their games. */
  readonly deadHands: number;
  /** Tiles drawn from the wall by all seats. */
  readonly draws: number;
  readonly discards: number;
  /** By the away with which a seat began to play, 0 to 14. */
  readonly byAway: readonly Share[];
  /** By seat, East first. */
  readonly bySeat: readonly Share[];
  /** By the place of the policy in the list of policies. */
  readonly byPlayer: readonly PlayerTally[];
}

/** Seats counted, and how many of them won. */
interface Share {
  readonly players: number;
  readonly won: number;
}

interface PlayerTally extends Share {
  /** Sums of the seat's away after the deal, after the exchange and at the end. */
  readonly awayDealt: number;
  readonly awayAfterExchange: number;
  readonly awayAtEnd: number;
}

const MOST_AWAY = 14;
const NOBODY: Share = { players: 0, won: 0 };
const NO_PLAYER: PlayerTally = { ...NOBODY, awayDealt: 0, awayAfterExchange: 0, awayAtEnd: 0 };

export const EMPTY_TALLY: Tally = {
  games: 0,
  wallGames: 0,
  selfDrawn: 0,
  deadHands: 0,
  draws: 0,
  discards: 0,
  byAway: Array<Share>(MOST_AWAY + 1).fill(NOBODY),
  bySeat: Array<Share>(4).fill(NOBODY),
  byPlayer: Array<PlayerTally>(4).fill(NO_PLAYER),
};

/** Fields of a row of sums: players, won, then the three aways. */
const ROW = 5;

/** Counts games one by one; numbers in typed arrays, because it is asked some hundred times a second. */
export class TallyCount {
  #games = 0;
  #wallGames = 0;
  #selfDrawn = 0;
  #deadHands = 0;
  #draws = 0;
  #discards = 0;
  readonly #byAway = new Float64Array((MOST_AWAY + 1) * ROW);
  readonly #bySeat = new Float64Array(4 * ROW);
  readonly #byPlayer = new Float64Array(4 * ROW);

  /** Counts a game; `playerAt[seat]` is the place of the seat's policy in the list of policies. */
  note(game: PlayedGame, playerAt: readonly number[]): void {
    this.#games += 1;
    this.#draws += game.draws;
    this.#discards += game.discards;
    this.#deadHands += game.deadHands;
    if (game.winner < 0) this.#wallGames += 1;
    else if (game.from < 0) this.#selfDrawn += 1;
    for (let seat = 0; seat < 4; seat += 1) {
      addSeat(this.#byAway, game.awayAfterExchange[seat] as number, game, seat);
      addSeat(this.#bySeat, seat, game, seat);
      addSeat(this.#byPlayer, playerAt[seat] as number, game, seat);
    }
  }

  /** All games counted so far. */
  tally(): Tally {
    return {
      games: this.#games,
      wallGames: this.#wallGames,
      selfDrawn: this.#selfDrawn,
      deadHands: this.#deadHands,
      draws: this.#draws,
      discards: this.#discards,
      byAway: EMPTY_TALLY.byAway.map((_, away) => shareAt(this.#byAway, away)),
      bySeat: EMPTY_TALLY.bySeat.map((_, seat) => shareAt(this.#bySeat, seat)),
      byPlayer: EMPTY_TALLY.byPlayer.map((_, player) => playerRow(this.#byPlayer, player)),
    };
  }
}

function addSeat(rows: Float64Array, row: number, game: PlayedGame, seat: number): void {
  const start = row * ROW;
  rows[start] = (rows[start] as number) + 1;
  if (game.winner === seat) rows[start + 1] = (rows[start + 1] as number) + 1;
  rows[start + 2] = (rows[start + 2] as number) + (game.awayDealt[seat] as number);
  rows[start + 3] = (rows[start + 3] as number) + (game.awayAfterExchange[seat] as number);
  rows[start + 4] = (rows[start + 4] as number) + (game.awayAtEnd[seat] as number);
}

function shareAt(rows: Float64Array, row: number): Share {
  return { players: rows[row * ROW] as number, won: rows[row * ROW + 1] as number };
}

function playerRow(rows: Float64Array, row: number): PlayerTally {
  const [awayDealt = 0, awayAfterExchange = 0, awayAtEnd = 0] = rows.subarray(row * ROW + 2, row * ROW + ROW);
  return { ...shareAt(rows, row), awayDealt, awayAfterExchange, awayAtEnd };
}

/** The sum of two tallies; the order does not matter. */
export function addTallies(one: Tally, other: Tally): Tally {
  return {
    games: one.games + other.games,
    wallGames: one.wallGames + other.wallGames,
    selfDrawn: one.selfDrawn + other.selfDrawn,
    deadHands: one.deadHands + other.deadHands,
    draws: one.draws + other.draws,
    discards: one.discards + other.discards,
    byAway: one.byAway.map((share, place) => addShares(share, other.byAway[place] as Share)),
    bySeat: one.bySeat.map((share, place) => addShares(share, other.bySeat[place] as Share)),
    byPlayer: one.byPlayer.map((player, place) => addPlayers(player, other.byPlayer[place] as PlayerTally)),
  };
}

function addShares(one: Share, other: Share): Share {
  return { players: one.players + other.players, won: one.won + other.won };
}

function addPlayers(one: PlayerTally, other: PlayerTally): PlayerTally {
  return {
    ...addShares(one, other),
    awayDealt: one.awayDealt + other.awayDealt,
    awayAfterExchange: one.awayAfterExchange + other.awayAfterExchange,
    awayAtEnd: one.awayAtEnd + other.awayAtEnd,
  };
}
