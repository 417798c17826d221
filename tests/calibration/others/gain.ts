import { type Seat, SEATS } from '../../../core/exchange/steps.ts';
import { DEFAULT_POINT_RULES } from '../../../core/game/point-rules.ts';
import { paymentsFor } from '../../../core/game/points.ts';
import { carefulAdviser } from '../../../core/others/careful.ts';
import { lineOfWay } from '../../../core/reading/reading.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import { playExchange } from '../../../core/table/exchange.ts';
import { gameStreams } from '../../../core/table/game.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { type GameEnd, playOut } from '../../../core/table/play.ts';
import { adviser } from '../../../core/table/policies/adviser.ts';
import { POLICIES } from '../../../core/table/policies/names.ts';
import type { Policy } from '../../../core/table/policy.ts';
import { PLAYERS_AT } from '../../../core/table/simulate.ts';
import { layTable, makeTable, playerAt, SEAT_COUNT, type Table } from '../../../core/table/table.ts';
import { makeTableCard } from '../../../core/table/table-card.ts';

/** What one chair wins by looking at the others when it discards and calls, all else alike. */
export interface Gain {
  readonly games: number;
  /** Games won with it and without it. */
  readonly won: number;
  readonly wonWithout: number;
  /** The difference in games of a hundred, with its standard error over pairs of games. */
  readonly difference: number;
  readonly error: number;
  /** Games that another won by a discard of the chair, with it and without it. */
  readonly gaveAway: number;
  readonly gaveAwayWithout: number;
  /** What the chair gets more in a game, in points of the usual rules of payment, with its standard error. */
  readonly points: number;
  readonly pointsError: number;
}

interface Played {
  readonly won: boolean;
  readonly gaveAway: boolean;
  readonly points: number;
}

/**
 * Plays each game twice from the same shuffle: a chair, which moves round the seats, does in play what stands first in the
 * list of advice, with and without what is read of the others. It passes as the players of the table do.
 */
export function gainOf(compiled: CompiledCard, kind: TableKind, games: number, seed: number): Gain {
  const card = makeTableCard(compiled);
  const players = PLAYERS_AT[kind].map((name) => POLICIES[name](card));
  const passing = players[0] as Policy;
  const table = makeTable(card, players);
  const chairs = [carefulAdviser(kind)(card), adviser(card)].map((playing) => inPlayOnly(passing, playing));
  const count = { won: 0, wonWithout: 0, gaveAway: 0, gaveAwayWithout: 0 };
  let squares = 0;
  const points: number[] = [];
  for (let game = 0; game < games; game += 1) {
    const [read, unread] = chairs.map((chair) => played(table, players, chair, seed, game)) as [Played, Played];
    count.won += Number(read.won);
    count.wonWithout += Number(unread.won);
    count.gaveAway += Number(read.gaveAway);
    count.gaveAwayWithout += Number(unread.gaveAway);
    squares += (Number(read.won) - Number(unread.won)) ** 2;
    points.push(read.points - unread.points);
  }
  const mean = (count.won - count.wonWithout) / games;
  const variance = (squares / games - mean * mean) / (games - 1);
  const more = points.reduce((sum, each) => sum + each, 0) / games;
  const spread = points.reduce((sum, each) => sum + (each - more) ** 2, 0) / (games - 1);
  const won = { difference: 100 * mean, error: 100 * Math.sqrt(variance) };
  return { games, ...count, ...won, points: more, pointsError: Math.sqrt(spread / games) };
}

function played(table: Table, players: readonly Policy[], chair: Policy, seed: number, game: number): Played {
  const own = game % SEAT_COUNT;
  for (let seat = 0; seat < SEAT_COUNT; seat += 1) {
    playerAt(table, seat).policy = seat === own ? chair : (players[seat] as Policy);
  }
  layTable(table, gameStreams(seed, game).next().value);
  playExchange(table);
  const end = playOut(table);
  const { winner, from } = end;
  return { won: winner === own, gaveAway: winner >= 0 && from === own, points: pointsOf(table, end, own) };
}

/** What a seat gets by the usual rules; what a hand without jokers earns more is left out. */
function pointsOf({ card }: Table, { winner, from, way }: GameEnd, own: number): number {
  const by = SEATS[winner];
  if (by === undefined) return 0;
  const { points } = lineOfWay(card.compiled, way);
  const discarder = SEATS[from];
  const win = { winner: by, points, jokerless: false, pairsOnly: false };
  const payments = paymentsFor(
    discarder === undefined ? { ...win, by: 'draw' } : { ...win, by: 'discard', from: discarder },
    DEFAULT_POINT_RULES,
  );
  return payments[SEATS[own] as Seat];
}

function inPlayOnly(passing: Policy, playing: Policy): Policy {
  return {
    // The chair takes of the game's chance what the others take, so that both games of a pair are dealt alike.
    begin: (random) => passing.begin?.(random),
    pass: (...about) => passing.pass(...about),
    goesOn: (view) => passing.goesOn(view),
    courtesy: (...about) => passing.courtesy(...about),
    discard: (view) => playing.discard(view),
    call: (...about) => playing.call(...about),
    swap: (...about) => playing.swap(...about),
  };
}
