import { finish } from '../../../core/base/steps.ts';
import type { SeatFit } from '../../../core/others/fit.ts';
import { OthersReader } from '../../../core/others/others.ts';
import type { SeatReading, Take } from '../../../core/others/seat-reading.ts';
import type { SeatSigns } from '../../../core/others/seat-ways.ts';
import type { CompiledCard } from '../../../core/reading/compiled.ts';
import { FAILINGS, type TableKind } from '../../../core/table/kinds.ts';
import type { ByWeight } from '../../../core/table/policies/by-weight.ts';
import type { Offer } from '../../../core/table/policy.ts';
import { PLAYERS_AT, simulateGames } from '../../../core/table/simulate.ts';
import { playerAt, type Table } from '../../../core/table/table.ts';
import { makeTableCard } from '../../../core/table/table-card.ts';
import { JOKER, KINDS } from '../../../core/tiles/kinds.ts';

/** One other seat as the seat on turn reads it just before it discards, with the truth. */
export interface SeatSample {
  readonly drawn: number;
  readonly signs: SeatSigns;
  readonly reading: SeatReading;
  /** The line that it works for, a number on the card; -1 for a dead hand. */
  readonly line: number;
  readonly tiles: readonly TileSample[];
}

/** A tile that the reader could discard: what is said of it, and the chance that it is taken, of which the player's failings are a part. */
interface TileSample {
  readonly kind: number;
  readonly said: Take;
  readonly truth: Take;
}

export interface Collecting {
  readonly compiled: CompiledCard;
  readonly kind: TableKind;
  readonly games: number;
  readonly seed: number;
  /** One discard in so many is looked at. */
  readonly every: number;
  readonly fitOf: (shown: number) => SeatFit;
}

const NO_FAILINGS = { missedWins: 0, missedCalls: 0 };

/** Plays games of a kind of table and shows the three other seats of some discards; all that is shown is live. */
export function collectSeats(task: Collecting, visit: (seats: readonly SeatSample[]) => void): void {
  const { compiled, kind, games, seed, every, fitOf } = task;
  const card = makeTableCard(compiled);
  const others = new OthersReader(card, kind, fitOf);
  const failings = kind === 'quick' ? NO_FAILINGS : FAILINGS[kind];
  let discards = 0;
  const beforeDiscard = (table: Table, reader: number, drawn: number): void => {
    discards += 1;
    if (discards % every !== 0) return;
    const { hand, view } = playerAt(table, reader);
    const samples = others.read(view).seats.map(({ seat, reading }): SeatSample => {
      const signs = { shown: view.exposuresOf(seat), thrown: view.thrownBy(seat), passed: view.passedBy(seat) };
      const tiles = KINDS.filter((each) => each !== JOKER && hand.counts[each] !== 0).map((each) => ({
        kind: each,
        said: reading.take(each),
        truth: takes(table, seat, each, failings),
      }));
      const way = policyOf(table, seat).aim(playerAt(table, seat).view);
      return { drawn, signs, reading, line: way < 0 ? -1 : (compiled.lineOf[way] as number), tiles };
    });
    visit(samples);
  };
  finish(simulateGames({ compiled, seed, games, policies: PLAYERS_AT[kind] }, { beforeDiscard }));
}

/** The player's policy without what chance makes it overlook. */
function policyOf(table: Table, seat: number): ByWeight {
  const { policy } = playerAt(table, seat);
  return (policy.unfailing ?? policy) as ByWeight;
}

const OFFER: Offer = { size: 0, jokers: 0 };

/** Whether a seat takes a tile, as a chance where it may overlook that. */
function takes(table: Table, seat: number, kind: (typeof KINDS)[number], failings: typeof NO_FAILINGS): Take {
  const { hand, view } = playerAt(table, seat);
  if (hand.winsWith(kind)) return { win: 1 - failings.missedWins, group: 0 };
  const held = (hand.counts[kind] as number) + (hand.counts[JOKER] as number);
  const calls = held >= 2 && policyOf(table, seat).call(view, kind, OFFER);
  return { win: 0, group: calls ? 1 - failings.missedCalls : 0 };
}
