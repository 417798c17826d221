import { expect } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { Hand } from '../../core/table/hand.ts';
import type { Failings } from '../../core/table/kinds.ts';
import { fallible } from '../../core/table/policies/fallible.ts';
import type { Policy, SeatView, ShownGroup } from '../../core/table/policy.ts';
import { beginGame, type Table } from '../../core/table/table.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { KIND_COUNT } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf } from './cards.ts';

/** A player like the soft one. */
export const NONE: Failings = {
  missedWins: 0,
  missedCalls: 0,
  missedSwaps: 0,
  secondBest: 0,
  stops: 0,
  goesOn: 0,
  wrongCalls: 0,
  lines: 99,
  holdsBack: false,
};
const SUPPLY = Tiles.fullSet.toCounts();
export const tiles = (text: string): Tiles => expectValue(parseTiles(text));

/** A player with these failings alone, whose stream has begun. */
export function begun(card: TableCard, failings: Partial<Failings>, seed = 1): Policy {
  const policy = fallible({ ...NONE, ...failings })(card);
  policy.begin?.(randomFromSeed(seed));
  return policy;
}

/** What a seat with this rack sees, the others with these exposures. */
export function seatWith(card: TableCard, rack: string, others: readonly (readonly ShownGroup[])[] = []): SeatView {
  const hand = new Hand(card);
  for (const kind of tiles(rack).toKinds()) hand.add(kind);
  const gone = new Uint8Array(KIND_COUNT);
  return {
    card,
    seat: 0,
    hand,
    exposuresOf: (seat) => others[seat] ?? [],
    thrownBy: () => [],
    passedBy: () => [],
    gone,
    given: new Uint8Array(KIND_COUNT),
    unseen: (kind) => SUPPLY[kind]! - hand.counts[kind]! - gone[kind]!,
    wallLeft: 60,
    likings: Float64Array.from({ length: KIND_COUNT }, (_, kind) => kind / KIND_COUNT),
  };
}

export const bams = makeTableCard(
  cardOf({ id: 'run', pattern: 'FF 1111bam 2222bam 3333bam' }, { id: 'other', pattern: 'NN 4444bam 5555bam 6666bam' }),
);

export const TIMES = 4_000;
/** How many of 4,000 times something happens. */
export const countOf = (happens: () => boolean): number =>
  Array.from({ length: TIMES }, happens).filter(Boolean).length;
/** Four standard errors either way: one sound test in 16,000 fails. What never or always happens does so exactly. */
export const around = (count: number, chance: number, times = TIMES): void =>
  expect(Math.abs(count - times * chance)).toBeLessThanOrEqual(4 * Math.sqrt(times * chance * (1 - chance)));

/** Racks and a wall in some order, without an exchange. */
export function layRacks(table: Table, seed: number): void {
  const random = randomFromSeed(seed);
  const set = Tiles.fullSet.toKinds();
  for (let last = set.length - 1; last > 0; last -= 1) {
    const pick = random.below(last + 1);
    [set[last], set[pick]] = [set[pick]!, set[last]!];
  }
  table.gone.fill(0);
  table.next = 0;
  for (const [place, kind] of set.entries()) table.wall[place] = kind;
  for (const [seat, { hand }] of table.players.entries()) {
    hand.clear();
    for (let count = seat === 0 ? 14 : 13; count > 0; count -= 1) hand.add(table.wall[table.next++]!);
  }
  beginGame(table, random);
}
