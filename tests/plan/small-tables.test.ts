import { expect, test } from 'vitest';
import { type Random, randomFromSeed, shuffle } from '../../core/base/random.ts';
import type { Way } from '../../core/card/way.ts';
import { passTable } from '../../core/plan/pass-table.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import type { Known } from '../../core/reading/known.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../../core/reading/reach-model.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, wayOf } from '../reference/cards.ts';
import { plainPass } from '../reference/plain-plan.ts';
import { plainRawReach } from '../reference/plain-reach.ts';

/** One moment, and no knots: the plain reference is slow. */
const MODEL: ReachModel = {
  source: 'test',
  moments: FIRST_REACH_MODEL.moments.slice(1, 2).map((moment) => ({ ...moment, weight: 1 })),
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 1, reach: 1 },
  ],
};

const hand = (...groups: readonly (readonly [kind: number, size: number])[]): Way =>
  wayOf(groups.map(([kind, size]) => ({ kind: kind as Kind, size })));

/** Hands that share tiles, with a pair and a single of one kind, larger groups beside a pair of the same kind, and a sextet. */
const HANDS = [
  hand([9, 2], [9, 1], [10, 2], [11, 4], [12, 5]),
  hand([13, 2], [14, 2], [15, 3], [11, 4], [2, 3]),
  hand([9, 4], [10, 4], [16, 6]),
  hand([13, 2], [13, 4], [15, 2], [12, 3], [14, 3]),
];

/**
 * A rack near one of the hands, which lacks as many tiles as come in or up to two more, with some idle tiles to give;
 * what it lacks and a few tiles that other hands want are unseen.
 */
function situation(random: Random, size: number): Known {
  const near = HANDS[random.below(HANDS.length)]!.groups.flatMap((group) => Array<Kind>(group.size).fill(group.kind));
  // Where the hand wants more of a kind than the set has, jokers stand in.
  const own = near.map((kind, place) => (place - near.indexOf(kind) < 4 ? kind : JOKER));
  shuffle(own, random);
  const held = own.slice(size + random.below(3));
  const rack = Tiles.of(
    [
      ...held,
      ...Array<Kind>(13)
        .fill(30 as Kind)
        .map((kind, place) => (kind + (place % 5)) as Kind),
    ].slice(0, 13),
  );
  const wanted = HANDS.flatMap(({ groups }) => groups.map(({ kind }) => kind));
  const left = Tiles.fullSet.minus(rack);
  const others = shuffle(
    left.toKinds().filter((kind) => wanted.includes(kind)),
    random,
  ).slice(0, 8);
  const unseen = Tiles.of(own)
    .minus(Tiles.of(held))
    .plus(Tiles.of([JOKER, ...others]));
  const supplied = unseen.minus(unseen.minus(left));
  return { rack, gone: left.minus(supplied), unseen: supplied };
}

test.each([1, 2, 3] as const)(
  'CR-G1: tables of %i tiles are those of brute force, for hands near enough to be whole',
  (size) => {
    const random = randomFromSeed(90 + size);
    let whole = 0;
    for (let round = 0; round < 16; round += 1) {
      const concealed = round % 3 === 0;
      const known = situation(random, size);
      const table = passTable(compileCard(cardOf(HANDS, concealed)), known, size, MODEL);
      // The best three, which give what is idle, and some others.
      const order = [...table.passes.keys()].sort((one, other) => table.reach[other]! - table.reach[one]!);
      const chosen = order.filter((_, rank) => rank < 3 || rank % Math.ceil(order.length / 5) === 0);
      for (const place of chosen) {
        const give = table.passes[place]!;
        const plain = plainPass(
          HANDS.map((way) => ({ way, concealed })),
          known,
          give,
          (each, after) => plainRawReach(each.way, after, MODEL, each.concealed),
        );
        expect(table.expectedAway[place]).toBeCloseTo(plain.expectedAway, 11);
        expect(table.reach[place]).toBeCloseTo(plain.reach, 11);
        whole = Math.max(whole, plain.reach);
      }
    }
    expect(whole).toBeGreaterThan(0.05);
  },
);
