import type { PlayedGame } from './game.ts';

/** Sums over simulated games: whole numbers only, so that parts add up to the same in any order (T22). */
export interface Tally {
  readonly games: number;
  readonly wallGames: number;
  /** Wins by own draw. */
  readonly selfDrawn: number;
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
export interface Share {
  readonly players: number;
  readonly won: number;
}

export interface PlayerTally extends Share {
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
  draws: 0,
  discards: 0,
  byAway: Array<Share>(MOST_AWAY + 1).fill(NOBODY),
  bySeat: Array<Share>(4).fill(NOBODY),
  byPlayer: Array<PlayerTally>(4).fill(NO_PLAYER),
};

/** One game as a tally; `playerAt[seat]` is the place of the seat's policy. */
export function tallyOf(game: PlayedGame, playerAt: readonly number[]): Tally {
  const wonBy = (seat: number): number => (game.winner === seat ? 1 : 0);
  const seats = playerAt.map((player, seat) => ({ player, seat, away: game.awayAfterExchange[seat] as number }));
  const shareOf = (own: readonly { readonly seat: number }[]): Share => ({
    players: own.length,
    won: own.reduce((sum, { seat }) => sum + wonBy(seat), 0),
  });
  return {
    games: 1,
    wallGames: game.winner < 0 ? 1 : 0,
    selfDrawn: game.winner >= 0 && game.from < 0 ? 1 : 0,
    draws: game.draws,
    discards: game.discards,
    byAway: EMPTY_TALLY.byAway.map((_, away) => shareOf(seats.filter((each) => each.away === away))),
    bySeat: seats.map((each) => shareOf([each])),
    byPlayer: EMPTY_TALLY.byPlayer.map((_, place) => {
      const own = seats.filter((each) => each.player === place);
      const sumOf = (aways: readonly number[]): number =>
        own.reduce((sum, { seat }) => sum + (aways[seat] as number), 0);
      return {
        ...shareOf(own),
        awayDealt: sumOf(game.awayDealt),
        awayAfterExchange: sumOf(game.awayAfterExchange),
        awayAtEnd: sumOf(game.awayAtEnd),
      };
    }),
  };
}

/** The sum of two tallies; the order does not matter. */
export function addTallies(one: Tally, other: Tally): Tally {
  return {
    games: one.games + other.games,
    wallGames: one.wallGames + other.wallGames,
    selfDrawn: one.selfDrawn + other.selfDrawn,
    draws: one.draws + other.draws,
    discards: one.discards + other.discards,
    byAway: one.byAway.map((share, place) => addShares(share, other.byAway[place] ?? NOBODY)),
    bySeat: one.bySeat.map((share, place) => addShares(share, other.bySeat[place] ?? NOBODY)),
    byPlayer: one.byPlayer.map((player, place) => addPlayers(player, other.byPlayer[place] ?? NO_PLAYER)),
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
