import { describe, expect, test } from 'vitest';
import type { PassSize } from '../../core/exchange/steps.ts';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way } from '../../core/card/way.ts';
import { bestMeans } from '../../core/plan/best-means.ts';
import { HeldValues } from '../../core/plan/way-values.ts';
import { incomingOf } from '../../core/plan/incoming.ts';
import { MULTISETS, placeOf, placeOfAny, RemovedSets } from '../../core/plan/multisets.ts';
import { distinctPasses, passTable, passTableSteps } from '../../core/plan/pass-table.ts';
import { smallestAway } from '../../core/reading/deficits.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../../core/reading/reach-model.ts';
import { codeOf, JOKER, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, rackNear, randomRack, randomWay, wayOf } from '../reference/cards.ts';
import { allDraws, draws, plainPass, plainWays } from '../reference/plain-plan.ts';
import { plainRawReach } from '../reference/plain-reach.ts';
import { quotient } from '../reference/plain-reading.ts';
import { IN_FULL } from '../reference/rounds.ts';

/** Two moments keep the plain reference quick; the knots make sure that calibration is applied before the best is taken. */
const MODEL: ReachModel = {
  source: 'test',
  moments: FIRST_REACH_MODEL.moments.slice(1, 3).map((moment) => ({ ...moment, weight: 0.5 })),
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 0.3, reach: 0.5 },
    { raw: 1, reach: 1 },
  ],
};

function mapped(raw: number): number {
  return raw < 0.3 ? (raw * 0.5) / 0.3 : 0.5 + ((raw - 0.3) * 0.5) / 0.7;
}

/** A card of a few ways and a rack near one of them; most tiles gone, so that brute force ends soon. */
function smallCase(random: Random, ways: number): { card: ReturnType<typeof cardOf>; known: Known } {
  const made = Array.from({ length: ways }, () => randomWay(random));
  const card = cardOf(made, random.below(3) === 0);
  const rack = rackNear(made[0] as (typeof made)[number], random);
  const rest = Tiles.fullSet.minus(rack).toKinds();
  const gone = Tiles.of(rest.filter((kind) => kind !== JOKER && random.below(5) < 3));
  return { card, known: expectValue(knownTiles(rack, gone)) };
}

describe('MD-P1, MD-P2, MD-P3. The table holds exact means over what comes in.', () => {
  test('CR-G1: brute force over every draw, way and kind agrees to 1e-12 for whole small cards, one to three tiles', () => {
    const random = randomFromSeed(61);
    for (const [round, size] of ([1, 2, 1, 2, 3] as const).slice(0, IN_FULL ? 5 : 2).entries()) {
      const { card, known } = smallCase(random, 4);
      const compiled = compileCard(card);
      const table = passTable(compiled, known, size, MODEL);
      const chosen = table.passes.flatMap((give, place) =>
        place % (size === 3 ? 60 : 7) === round % 5 ? [{ give, place }] : [],
      );
      expect(chosen.length).toBeGreaterThan(0);
      for (const { give, place } of chosen) {
        const plain = plainPass(plainWays(card), known, give, ({ way, concealed }, after) =>
          mapped(plainRawReach(way, after, MODEL, concealed)),
        );
        expectClose(table.expectedAway[place], plain.expectedAway);
        expectClose(table.reach[place], plain.reach);
      }
    }
  }, 60_000);

  test('CR-G1: whole numbers without bounds give the same expected away to 1e-12, two tiles, demo card', () => {
    const card = demoCard();
    const compiled = compileCard(card);
    const random = randomFromSeed(67);
    for (let round = 0; round < 4; round += 1) {
      const known = expectValue(knownTiles(randomRack(random, 13)));
      const give = distinctPasses(known.rack, 2)[random.below(40)] as readonly Kind[];
      const table = passTable(compiled, known, 2, FIRST_REACH_MODEL, [give]);
      const kept = known.rack.minus(Tiles.of(give));
      let [aways, all] = [0n, 0n];
      for (const { tiles, ways } of draws(known.unseen, 2)) {
        aways += BigInt(ways) * BigInt(smallestAway(compiled, kept.plus(tiles).toCounts()));
        all += BigInt(ways);
      }
      expectClose(table.expectedAway[0], quotient(aways, all));
    }
  });

  test('what is given away from a hand that nothing helps further may come back', () => {
    const pair = { kind: 30 as Kind, size: 2 };
    const kongs = [9, 10, 11].map((kind) => ({ kind: kind as Kind, size: 4 }));
    const target = wayOf([...kongs, pair]);
    // Whole; and lacking nothing but a tile of which all four are gone.
    for (const rack of [
      [9, 9, 9, 9, 10, 10, 10, 10, 11, 11, 11, JOKER, 30, 30],
      [9, 9, 9, 9, 10, 10, 10, 10, 11, 11, 11, 30, 30, 35],
    ] as Kind[][]) {
      const held = Tiles.of(rack);
      const left = Tiles.fullSet.minus(held);
      const gone = Tiles.of(left.toKinds().filter((kind, place) => kind === 11 || place % 3 > 0));
      const known = expectValue(knownTiles(held, gone));
      for (const give of [[30], [9, 30], [9, 10, 30]] as Kind[][]) {
        const size = give.length as PassSize;
        const table = passTable(compileCard(cardOf([target])), known, size, FIRST_REACH_MODEL, [give]);
        const plain = plainPass([{ way: target, concealed: false }], known, give, () => 0);
        expectClose(table.expectedAway[0], plain.expectedAway);
      }
    }
  });

  test('tiles for larger groups help no further than to their shortage after the rack’s jokers', () => {
    const target = wayOf([
      ...[9, 10, 11].map((kind) => ({ kind: kind as Kind, size: 2 })),
      ...[20, 21].map((kind) => ({ kind: kind as Kind, size: 4 })),
    ]);
    // Three of one larger group, two of the other, two jokers: a shortage of one, though three kinds of tile lie open.
    const rack = Tiles.of([20, 20, 20, 21, 21, JOKER, JOKER, 30, 31, 32, 33, 34, 35] as Kind[]);
    const known = expectValue(knownTiles(rack));
    const table = passTable(compileCard(cardOf([target])), known, 2, FIRST_REACH_MODEL, [[30, 31]] as Kind[][]);
    const plain = plainPass([{ way: target, concealed: false }], known, [30, 31] as Kind[], () => 0);
    expectClose(table.expectedAway[0], plain.expectedAway);
  });

  test('a hand that lacks a dead pair changes nothing for the reach of another', () => {
    const target = (hand: readonly [number, number, number, number]): Way =>
      wayOf(hand.map((kind, place) => ({ kind: kind as Kind, size: place === 3 ? 2 : 4 })));
    // Winds and dragons with a pair of one bams, of which four are gone; others with a pair of one craks.
    const [dead, open] = [target([2, 3, 6, 9]), target([4, 5, 7, 18])];
    const rack = Tiles.of([2, 2, 2, 3, 3, 3, 4, 4, 4, 5, 5, 5, 30] as Kind[]);
    const known = expectValue(knownTiles(rack, Tiles.of([9, 9, 9, 9] as Kind[])));
    const both = passTable(compileCard(cardOf([dead, open])), known, 3, FIRST_REACH_MODEL);
    const alone = passTable(compileCard(cardOf([open])), known, 3, FIRST_REACH_MODEL);
    expect(both.reach).toEqual(alone.reach);
    // The tiles of the dead hand still count as had, so that without the other's winds it is nearer.
    const nearer = both.expectedAway.map((away, pass) => (alone.expectedAway[pass] as number) - away);
    expect(Math.min(...nearer)).toBeGreaterThanOrEqual(0);
    expect(nearer[both.passes.findIndex((give) => give.join() === '4,4,4')]).toBeGreaterThan(1);
  });

  test('CR-G1: however many futures are kept at a time, the means are the same to the last bit', () => {
    const compiled = compileCard(demoCard());
    const known = expectValue(knownTiles(randomRack(randomFromSeed(68), 13)));
    const counts = known.rack.toCounts();
    const unseen = known.unseen.toCounts();
    const passes = distinctPasses(known.rack, 2);
    const means = (mostEntries?: number): Float64Array[] => {
      const incomings = [incomingOf(unseen, 2)] as const;
      const work = {
        wayCount: compiled.wayCount,
        counts,
        passes,
        removed: new RemovedSets(compiled, counts),
        incomings,
      };
      const steps = bestMeans(work, new HeldValues(compiled, unseen, 2), mostEntries);
      for (;;) {
        const step = steps.next();
        if (step.done === true) return step.value;
      }
    };
    const whole = means();
    const { expectedAway } = passTable(compiled, known, 2, FIRST_REACH_MODEL);
    expect(whole[0]?.map((has) => 14 - has)).toEqual(expectedAway);
    for (const mostEntries of [0, 50, 1000]) expect(means(mostEntries)).toEqual(whole);
  });

  test('a reading of every rack that may come up agrees for sampled passes of the demo card', () => {
    const compiled = compileCard(demoCard());
    const random = randomFromSeed(62);
    const sizes = [
      [1, 12],
      [2, 4],
      [3, 1],
    ] as const;
    for (const [size, samples] of sizes.slice(0, IN_FULL ? 3 : 1)) {
      const known = expectValue(knownTiles(randomRack(random, 13)));
      const table = passTable(compiled, known, size, FIRST_REACH_MODEL);
      for (let sample = 0; sample < samples; sample += 1) {
        const place = random.below(table.passes.length);
        const found = readAll(compiled, known, table.passes[place] as readonly Kind[]);
        expect(table.expectedAway[place]).toBeCloseTo(found.expectedAway, 11);
        expect(table.reach[place]).toBeCloseTo(found.reach, 11);
      }
    }
  }, 120_000);
});

function expectClose(actual: number | undefined, exact: number): void {
  expect(Math.abs((actual ?? Number.NaN) - exact)).toBeLessThanOrEqual(1e-12 * exact);
}

/** The mean over every draw by reading the whole card each time. */
function readAll(compiled: ReturnType<typeof compileCard>, known: Known, give: readonly Kind[]) {
  const kept = known.rack.minus(Tiles.of(give));
  let aways = 0;
  let reaches = 0;
  let all = 0;
  for (const { tiles, ways } of draws(known.unseen, give.length)) {
    const after: Known = { rack: kept.plus(tiles), gone: Tiles.of(give), unseen: known.unseen.minus(tiles) };
    const reading = readKnown(compiled, after, 0, FIRST_REACH_MODEL);
    aways += ways * reading.away;
    reaches += ways * reading.reaches.reduce((most, next) => Math.max(most, next), 0);
    all += ways;
  }
  expect(all).toBe(allDraws(known.unseen, give.length));
  return { expectedAway: aways / all, reach: reaches / all };
}

describe('the passes of a rack', () => {
  test('are in canonical order, more of a kind first', () => {
    const kinds = distinctPasses(expectValue(parseTiles('J FF 1b 1b')), 2).map((give) => give.map(codeOf).join(' '));
    expect(kinds).toEqual(['F F', 'F 1b', '1b 1b']);
  });

  test('are all different choices without jokers: as many as counting by kinds says', () => {
    const random = randomFromSeed(63);
    for (let round = 0; round < 50; round += 1) {
      const rack = randomRack(random, 13 + (round % 2));
      for (const size of [0, 1, 2, 3] as const) {
        const passes = distinctPasses(rack, size);
        expect(new Set(passes.map(String)).size).toBe(passes.length);
        expect(passes.length).toBe(countPasses(rack, size));
        expect(passes.every((give) => rack.contains(Tiles.of(give)) && !give.includes(JOKER))).toBe(true);
      }
    }
  });

  /** The coefficient of z^size in the product of (1 + z + … + z^count) over the kinds. */
  function countPasses(rack: Tiles, size: PassSize): number {
    const terms = KINDS.slice(1).reduce(
      (product, kind) =>
        product.map((_, power) =>
          product.slice(Math.max(0, power - rack.count(kind)), power + 1).reduce((sum, term) => sum + term, 0),
        ),
      [1, 0, 0, 0],
    );
    return terms[size] as number;
  }
});

describe('laws of the table', () => {
  const compiled = compileCard(demoCard());

  test('giving nothing leaves the reading as it is', () => {
    const known = expectValue(knownTiles(randomRack(randomFromSeed(64), 13)));
    const reading = readKnown(compiled, known, 0, FIRST_REACH_MODEL);
    const table = passTable(compiled, known, 0, FIRST_REACH_MODEL);
    expect(table.passes).toEqual([[]]);
    expect(table.expectedAway[0]).toBe(reading.away);
    expect(table.reach[0]).toBeCloseTo(Math.max(...reading.reaches), 14);
  });

  test('a few passes asked for have the numbers of the whole table', () => {
    const known = expectValue(knownTiles(randomRack(randomFromSeed(65), 14)));
    const table = passTable(compiled, known, 3, FIRST_REACH_MODEL);
    const asked = [3, 77, table.passes.length - 1];
    const part = passTable(
      compiled,
      known,
      3,
      FIRST_REACH_MODEL,
      asked.map((place) => table.passes[place] as readonly Kind[]),
    );
    expect([...part.expectedAway]).toEqual(asked.map((place) => table.expectedAway[place]));
    expect([...part.reach]).toEqual(asked.map((place) => table.reach[place]));
  });

  test('progress rises from 0 to under 1, in more than twenty steps', () => {
    const known = expectValue(knownTiles(randomRack(randomFromSeed(66), 13)));
    const parts: number[] = [];
    const steps = passTableSteps(compiled, known, 3, FIRST_REACH_MODEL);
    for (let step = steps.next(); step.done !== true; step = steps.next()) parts.push(step.value);
    expect(parts.length).toBeGreaterThan(20);
    expect(parts).toEqual([...parts].sort((one, other) => one - other));
    expect(parts.every((part) => part >= 0 && part < 1)).toBe(true);
  });

  test('a joker in the rack is never given, and a rack of jokers and few tiles still has a table', () => {
    const known = expectValue(knownTiles(Tiles.of([...Array<Kind>(8).fill(JOKER), ...KINDS.slice(9, 14)])));
    const table = passTable(compiled, known, 3, FIRST_REACH_MODEL);
    expect(table.passes).toHaveLength(10);
    expect(table.reach.every((reach) => reach > 0 && reach <= 1)).toBe(true);
  });
});

test('every multiset of up to three kinds has a place of its own, whatever the order it is told in', () => {
  let next = 0;
  for (let high = 0; high < KINDS.length; high += 1)
    for (let middle = 0; middle <= high; middle += 1)
      for (let low = 0; low <= middle; low += 1) {
        const orders = [
          placeOfAny(low, middle, high),
          placeOfAny(low, high, middle),
          placeOfAny(middle, low, high),
          placeOfAny(middle, high, low),
          placeOfAny(high, low, middle),
          placeOfAny(high, middle, low),
        ];
        expect(new Set([placeOf(low, middle, high), ...orders])).toEqual(new Set([next]));
        next += 1;
      }
  expect(next).toBe(MULTISETS);
});
