import hypergeometric from '@stdlib/stats-base-dists-hypergeometric';
import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way } from '../../core/card/way.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { drawReach } from '../../core/reading/draw-reach.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { readRack } from '../../core/reading/reading.ts';
import { JOKER, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { away } from '../../core/reading/deficits.ts';
import { demoCard, rackNear, randomRack, randomWay, wayOf } from '../reference/cards.ts';
import { exactDrawReach, quotient } from '../reference/plain-reading.ts';
import { rounds } from '../reference/rounds.ts';

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
const kind = (text: string): Kind => tiles(text).toKinds()[0] as Kind;

function known(rack: Tiles, gone = Tiles.none): Known {
  return expectValue(knownTiles(rack, gone));
}

/** A way from groups as text, one blank between: `FF 111b 9c`. */
function way(text: string): Way {
  return wayOf(text.split(' ').map((group) => ({ kind: kind(group), size: tiles(group).size })));
}

function expectClose(actual: number, exact: number, relative = 1e-12): void {
  expect(Math.abs(actual - exact)).toBeLessThanOrEqual(relative * exact);
}

describe('MD-D1. Draw reach is the exact chance that so many tiles, drawn without replacement from all unseen ones, complete the way.', () => {
  test('CR-G1: exact integer counting agrees to 1e-12 on 250 random ways, racks, draws and tiles gone', () => {
    const random = randomFromSeed(21);
    let positive = 0;
    for (let round = 0; round < rounds(250); round += 1) {
      const target = randomWay(random);
      const rack = rackNear(target, random);
      const all = known(rack).unseen.toKinds();
      const gone = Tiles.of(all.filter(() => random.below(round % 2 === 0 ? 8 : 1000) === 0));
      const situation = known(rack, gone);
      const draws = [0, 1, 2, 5, 10, 20, 40, situation.unseen.size][round % 8] as number;
      const { good, all: every } = exactDrawReach(target, situation, draws);
      expectClose(drawReach(target, situation, draws), quotient(good, every));
      if (good > 0n) positive += 1;
    }
    expect(positive).toBeGreaterThan(rounds(100));
  });

  test('CR-G1: every way of the demo card, racks of 13 and 14 tiles, agrees with exact integers to 1e-12', () => {
    const compiled = compileCard(demoCard());
    const random = randomFromSeed(22);
    for (const size of [13, 14]) {
      const rack = randomRack(random, size);
      const reading = expectValue(readRack(compiled, rack, { draws: 20, gone: tiles('3b 3b 3b E E').minus(rack) }));
      for (let number = size; number < rounds(compiled.wayCount); number += 17) {
        const { good, all } = exactDrawReach(compiled.ways[number] as Way, reading.known, 20);
        expectClose(reading.drawReaches[number] as number, quotient(good, all));
      }
    }
  });

  test('CR-G1: a kind wanted in a pair and in a larger group, and kinds of which every copy helps, agree with exact integers', () => {
    const random = randomFromSeed(24);
    const hands = ['NN NNNN EEEE WWWW', 'FF FFFF 1111b 22b 22d', '11b 111b 222b 3333b 44b', 'NN NNN NNN EEE WWW'].map(
      way,
    );
    let positive = 0;
    for (let round = 0; round < 24; round += 1) {
      const target = hands[round % hands.length]!;
      const held = rackNear(target, random, 6 + (round % 5))
        .toKinds()
        .slice(0, 13 - (round % 4));
      const situation = known(Tiles.of([...held, ...Array<Kind>(13 - held.length).fill(JOKER)]));
      for (const draws of [1, 4, 15, 60]) {
        const { good, all } = exactDrawReach(target, situation, draws);
        expectClose(drawReach(target, situation, draws), quotient(good, all));
        if (good > 0n) positive += 1;
      }
    }
    expect(positive).toBeGreaterThan(40);
    // One north wind held: its pair needs a natural one, and the kong wants more of them than are unseen.
    const situation = known(tiles('N EEEE WWW JJ 579d'));
    for (const draws of [3, 12, 50]) {
      const { good, all } = exactDrawReach(hands[0]!, situation, draws);
      expectClose(drawReach(hands[0]!, situation, draws), quotient(good, all));
    }
  });

  test('CR-G1: drawing every set of tiles in turn gives the same share on small sets, to 1e-12', () => {
    const random = randomFromSeed(23);
    for (let round = 0; round < 40; round += 1) {
      const target = randomWay(random, KINDS.slice(9, 14));
      const rack = rackNear(target, random, 11);
      const rest = Tiles.fullSet.minus(rack);
      const wanted = rest.toKinds().filter((each) => each === JOKER || (each >= 9 && each < 14));
      const unseen = Tiles.of([...wanted.filter(() => random.below(3) === 0), ...rest.toKinds().slice(20, 24)]);
      const small = unseen.toKinds().slice(0, 12);
      const situation: Known = { rack, gone: rest.minus(Tiles.of(small)), unseen: Tiles.of(small) };
      const draws = 1 + (round % 5);
      const sets = subsets(small, draws);
      const hits = sets.filter((drawn) => away(target, rack.plus(Tiles.of(drawn))) === 0).length;
      expectClose(drawReach(target, situation, draws), hits / sets.length);
    }
  });
});

function subsets(items: readonly Kind[], size: number): Kind[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, place) => subsets(items.slice(place + 1), size - 1).map((rest) => [item, ...rest]));
}

describe('textbook waits', () => {
  // One kind wanted: 1 - C(N - u, d) / C(N, d), the hypergeometric law (any textbook of probability).
  test.each([
    ['a pair tile, no joker helps', 'FF 111b 222b 333b 444c', 'F 111b 222b 333b 444c', 7, 0],
    ['a single', 'N 1111b 222b 333b 444c', '111b 222b 333b 444c J', 4, 0],
    ['a pung tile, where jokers help too', 'FF 111b 222b 333b 444c', 'FF 111b 222b 333b 44c', 2, 8],
  ])('one tile: %s, against two libraries', (_, groups, held, copies, jokers) => {
    const situation = known(tiles(held).size === 13 ? tiles(held) : tiles(held).without(JOKER));
    const unseen = situation.unseen.size;
    for (const draws of [1, 3, 10, 25]) {
      const expected = 1 - jstat.hypgeom.pdf(0, unseen, copies + jokers, draws);
      const second = 1 - hypergeometric.cdf(0, unseen, copies + jokers, draws);
      const found = drawReach(way(groups), situation, draws);
      expectClose(found, expected, 1e-10);
      expectClose(found, second, 1e-10);
    }
  });

  test('two tiles: two single waits by inclusion and exclusion', () => {
    // P(both) = 1 - P(no A) - P(no B) + P(neither); A has 4 copies, B has 3.
    const situation = known(tiles('111b 222b 333b 44c G 9d'), tiles('E'));
    const unseen = situation.unseen.size;
    const target = way('111b 222b 333b 44c N E G');
    const none = (copies: number, draws: number): number => jstat.hypgeom.pdf(0, unseen, copies, draws);
    for (const draws of [2, 8, 20]) {
      const expected = 1 - none(4, draws) - none(3, draws) + none(7, draws);
      expectClose(drawReach(target, situation, draws), expected, 1e-9);
    }
  });

  test('two of the same tile: 1 - P(0) - P(1)', () => {
    const situation = known(tiles('111b 222b 333b 444c G'));
    const target = way('111b 222b 333b 444c');
    const pair = wayOf([...target.groups, { kind: kind('N'), size: 2 }]);
    const unseen = situation.unseen.size;
    const expected = 1 - jstat.hypgeom.pdf(0, unseen, 4, 20) - jstat.hypgeom.pdf(1, unseen, 4, 20);
    expectClose(drawReach(pair, situation, 20), expected, 1e-10);
  });
});

describe('published chances of other cards', () => {
  /** A set of unseen tiles: so many of the kind that is wanted, and others of no use. */
  function unseenSet(rack: Tiles, wanted: string, copies: number, size: number): Known {
    const rest = Tiles.fullSet.minus(rack);
    const useless = rest.toKinds().filter((each) => each !== JOKER && each !== kind(wanted));
    const unseen = Tiles.of([...Array<Kind>(copies).fill(kind(wanted)), ...useless.slice(0, size - copies)]);
    return { rack, gone: rest.minus(unseen), unseen };
  }

  test('an ace among five cards of 52: 0.341158 (1 - C(48,5)/C(52,5) = 886,656/2,598,960)', () => {
    const situation = unseenSet(tiles('1111b 222b 333b 444c'), 'N', 4, 52);
    expect(situation.unseen.size).toBe(52);
    const found = drawReach(way('N 1111b 222b 333b 444c'), situation, 5);
    expect(found).toBeCloseTo(0.341158, 6);
    expectClose(found, 886_656 / 2_598_960);
  });

  // A player of bridge does not see 26 cards; 13 of them are on the left. The Official Encyclopedia of Bridge, table of
  // suit breaks, from memory; any table of bridge odds has the same, such as 68, 28 and 4 in 100 for five cards.
  test.each([
    [5, { '3-2': 67.83, '4-1': 28.26, '5-0': 3.91 }],
    [4, { '2-2': 40.7, '3-1': 49.74, '4-0': 9.57 }],
  ])('how %i cards that are missing at bridge break', (missing, published) => {
    const held = [
      '1111b 222b 333b 444c',
      '111b 222b 333b 444c',
      '111b 222b 333b 44c',
      '111b 222b 3333b',
      '111b 222b 333b',
    ];
    const atLeast = held.map((rest, place) => {
      const situation = unseenSet(tiles(rest), 'F', missing, 26);
      return drawReach(way(`${'F'.repeat(place + 1)} ${rest}`), situation, 13);
    });
    const exactly = [1, ...atLeast].map((chance, place, all) => chance - (all[place + 1] ?? 0));
    for (const [split, percent] of Object.entries(published)) {
      const [more = 0, fewer = 0] = split.split('-').map(Number);
      const both = (exactly[more] ?? 0) + (more === fewer ? 0 : (exactly[fewer] ?? 0));
      expect(100 * both, split).toBeCloseTo(percent, 2);
    }
  });
});

describe('MD-D2 and MD-D3', () => {
  test('MD-D3. It is 1 for a complete way and 0 for a way that the unseen tiles can’t complete.', () => {
    const complete = known(tiles('FF 111b 222b 333b 444c'));
    expect(drawReach(way('FF 111b 222b 333b 444c'), complete, 0)).toBe(1);
    expectClose(drawReach(way('FF 111b 222b 333b 444c'), complete, 30), 1, 1e-13);
    const dead = known(tiles('111b 222b 333b 444c E'), tiles('NNN'));
    expect(drawReach(way('NN 111b 222b 333b 444c'), dead, 100)).toBe(0);
  });

  test('MD-D2. Every tile of the rack is kept, and jokers drawn stand in groups of three and more.', () => {
    const alive = known(tiles('111b 222b 333b 44c EE'), tiles('44c'));
    expect(drawReach(way('EE 111b 222b 333b 444c'), alive, 139 - 2)).toBeCloseTo(1, 12);
    const pairOnly = known(tiles('111b 222b 333b 444c E'), tiles('EEE'));
    expect(drawReach(way('EE 111b 222b 333b 444c'), pairOnly, 100)).toBe(0);
  });
});

describe('laws', () => {
  test('more draws never lower the chance', () => {
    const random = randomFromSeed(24);
    for (let round = 0; round < 60; round += 1) {
      const target = randomWay(random);
      const situation = known(rackNear(target, random));
      let last = 0;
      for (let draws = 0; draws <= 60; draws += 6) {
        const next = drawReach(target, situation, draws);
        expect(next).toBeGreaterThanOrEqual(last * (1 - 1e-12));
        expect(next).toBeLessThanOrEqual(1 + 1e-12);
        last = next;
      }
    }
  });

  test('swapping a useless unseen tile for a needed one never lowers the chance', () => {
    const random = randomFromSeed(25);
    let swaps = 0;
    for (let round = 0; round < 200; round += 1) {
      const target = randomWay(random);
      const rack = rackNear(target, random);
      const full = known(rack).unseen;
      const useless = full
        .distinct()
        .find((each) => each !== JOKER && target.groups.every((group) => group.kind !== each));
      const needed = target.groups.find(
        (group) => full.count(group.kind) > 0 && rack.count(group.kind) < group.size,
      )?.kind;
      if (useless === undefined || needed === undefined) continue;
      const before: Known = { rack, gone: Tiles.of([needed]), unseen: full.without(needed) };
      const after: Known = { rack, gone: Tiles.of([useless]), unseen: full.without(useless) };
      expect(drawReach(target, after, 15)).toBeGreaterThanOrEqual(drawReach(target, before, 15) * (1 - 1e-12));
      swaps += 1;
    }
    expect(swaps).toBeGreaterThan(100);
  });
});
