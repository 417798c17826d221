import { describe, expect, it } from 'vitest';
import type { PlayedGame } from '../../core/table/game.ts';
import { addTallies, EMPTY_TALLY, type Tally, TallyCount } from '../../core/table/tally.ts';

const game = (winner: number, from: number, draws: number, discards: number): PlayedGame => ({
  winner,
  from,
  way: winner < 0 ? -1 : 5,
  draws,
  discards,
  awayDealt: [7, 8, 6, 9],
  awayAfterExchange: [5, 4, 5, 6],
  deadHands: winner < 0 ? 2 : 0,
  awayAtEnd: [0, 1, 2, 3].map((seat) => (seat === winner ? 0 : seat + 1)),
});

function tallyOf(...games: readonly (readonly [PlayedGame, readonly number[]])[]): Tally {
  const count = new TallyCount();
  for (const [played, playerAt] of games) count.note(played, playerAt);
  return count.tally();
}

const SEATED = [0, 1, 2, 3];
/** The policies one seat on: the first of the list sits at the second seat. */
const TURNED = [3, 0, 1, 2];
const ON_DISCARD = [game(0, 2, 30, 31), SEATED] as const;
const SELF_DRAWN = [game(3, -1, 41, 42), TURNED] as const;
const BY_EAST = [game(2, 0, 10, 11), SEATED] as const;
const WALL = [game(-1, -1, 99, 100), TURNED] as const;

describe('a tally of games', () => {
  const tally = tallyOf(ON_DISCARD, SELF_DRAWN, BY_EAST, WALL);

  it('counts games, how they ended, dead hands, draws and discards', () => {
    expect(tally).toMatchObject({ games: 4, wallGames: 1, selfDrawn: 1, deadHands: 2, draws: 180, discards: 184 });
  });

  it('counts who sat where, and who won', () => {
    expect(tally.bySeat).toEqual([1, 0, 1, 1].map((won) => ({ players: 4, won })));
  });

  it('counts by the away at the beginning of play', () => {
    const expected = EMPTY_TALLY.byAway.map(() => ({ players: 0, won: 0 }));
    expected[4] = { players: 4, won: 0 };
    expected[5] = { players: 8, won: 2 };
    expected[6] = { players: 4, won: 1 };
    expect(tally.byAway).toEqual(expected);
  });

  it('adds up for each policy what the seats had that it sat at', () => {
    // The first policy sat at the first seat twice, at the second twice; the third at the third and fourth; it won both.
    expect(tally.byPlayer[0]).toEqual({
      players: 4,
      won: 1,
      awayDealt: 2 * 7 + 2 * 8,
      awayAfterExchange: 2 * 5 + 2 * 4,
      awayAtEnd: 0 + 1 + 2 + 2,
    });
    expect(tally.byPlayer[2]).toEqual({
      players: 4,
      won: 2,
      awayDealt: 2 * 6 + 2 * 9,
      awayAfterExchange: 2 * 5 + 2 * 6,
      awayAtEnd: 3 + 0 + 0 + 4,
    });
    expect(tally.byPlayer.map(({ players }) => players)).toEqual([4, 4, 4, 4]);
  });

  it('of parts adds up to that of the whole, in any order, and nothing adds nothing', () => {
    const [one, other] = [tallyOf(ON_DISCARD, WALL), tallyOf(SELF_DRAWN, BY_EAST)];
    expect(addTallies(one, other)).toEqual(tally);
    expect(addTallies(other, one)).toEqual(tally);
    expect(addTallies(EMPTY_TALLY, tally)).toEqual(tally);
    expect(new TallyCount().tally()).toEqual(EMPTY_TALLY);
  });
});
