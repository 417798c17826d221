import { describe, expect, test } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way } from '../../core/card/way.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { emptyDeficits, fillDeficits } from '../../core/reading/deficits.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { calibrated, rawUnder } from '../../core/reading/reach.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../../core/reading/reach-model.ts';
import { newReader, reachOfDeficits } from '../../core/reading/reader.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, rackNear, randomWay, wayOf } from '../reference/cards.ts';
import { plainRawReach, sampleReach } from '../reference/plain-reach.ts';
import { rounds } from '../reference/rounds.ts';

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
const way = (text: string): Way =>
  wayOf(text.split(' ').map((group) => ({ kind: tiles(group).toKinds()[0] as Kind, size: tiles(group).size })));

const UNCALIBRATED: ReachModel = {
  ...FIRST_REACH_MODEL,
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 1, reach: 1 },
  ],
};
const reader = newReader(UNCALIBRATED);

function reachOf(target: Way, known: Known, concealed: boolean): number {
  const compiled = compileCard(cardOf([target], concealed));
  const deficits = emptyDeficits();
  fillDeficits(compiled, 0, known.rack.toCounts(), known.unseen.toCounts(), deficits);
  return reachOfDeficits(reader.reach, deficits, known.unseen.count(JOKER), concealed);
}

interface Case {
  readonly target: Way;
  readonly known: Known;
  readonly concealed: boolean;
}

/** Ways, racks near them and tiles gone; every other one concealed. */
function cases(seed: number, count: number): Case[] {
  const random = randomFromSeed(seed);
  return Array.from({ length: count }, (_, place) => {
    const target = randomWay(random);
    const rack = rackNear(target, random);
    const gone = Tiles.of(
      Tiles.fullSet
        .minus(rack)
        .toKinds()
        .filter(() => random.below(6) === 0),
    );
    return { target, known: expectValue(knownTiles(rack, gone)), concealed: place % 2 === 1 };
  });
}

describe('MD-M1, MD-M2, MD-M3, MD-M4, MD-M5, MD-M6, MD-M7, MD-M8: the stated model', () => {
  test('going through every outcome of every kind gives the same chance, to 1e-12 (open and concealed)', () => {
    let positive = 0;
    for (const { target, known, concealed } of cases(31, 600)) {
      const exact = plainRawReach(target, known, UNCALIBRATED, concealed);
      const found = reachOf(target, known, concealed);
      expect(Math.abs(found - exact)).toBeLessThanOrEqual(1e-12 * exact + 1e-16);
      if (exact > 0.01) positive += 1;
    }
    expect(positive).toBeGreaterThan(200);
  });

  // 24 comparisons at 5 standard errors: a false alarm once in some 70,000 runs with new seeds.
  test('simulating the fates of all unseen copies agrees within five standard errors', () => {
    const samples = 20_000;
    const random = randomFromSeed(32);
    for (const { target, known, concealed } of cases(33, rounds(24))) {
      const exact = plainRawReach(target, known, UNCALIBRATED, concealed);
      let hits = 0;
      for (let sample = 0; sample < samples; sample += 1) {
        if (sampleReach(target, known, UNCALIBRATED, concealed, () => random.fraction())) hits += 1;
      }
      const error = Math.sqrt(Math.max(exact * (1 - exact), 1 / samples) / samples);
      expect(Math.abs(hits / samples - exact)).toBeLessThanOrEqual(5 * error);
    }
  });

  test('MD-M6. a concealed hand has no larger reach than the same hand open, while two tiles lack', () => {
    const known = expectValue(knownTiles(tiles('FF 11b 22b 333b 444c 5d')));
    const target = way('FF 111b 222b 333b 444c');
    expect(reachOf(target, known, true)).toBeLessThan(reachOf(target, known, false));
  });

  test('MD-M8. a pair can be called as the last tile: with a certain discard it is complete', () => {
    const known = expectValue(knownTiles(tiles('F 111b 222b 333b 444c')));
    const target = way('FF 111b 222b 333b 444c');
    expect(reachOf(target, known, false)).toBeCloseTo(reachOf(target, known, true), 12);
    expect(reachOf(target, known, false)).toBeGreaterThan(0.5);
  });
});

describe('MD-M9. The raw chance is mapped along straight lines between knots that rise from (0, 0) to (1, 1).', () => {
  const knots = [
    { raw: 0, reach: 0 },
    { raw: 0.2, reach: 0.1 },
    { raw: 0.6, reach: 0.7 },
    { raw: 1, reach: 1 },
  ];
  test.each([
    [0, 0],
    [0.1, 0.05],
    [0.2, 0.1],
    [0.4, 0.4],
    [0.6, 0.7],
    [0.8, 0.85],
    [1, 1],
    [1.0000001, 1],
  ])('%f goes to %f', (raw, reach) => expect(calibrated(knots, raw)).toBeCloseTo(reach, 12));
});

describe('MD-M10. A complete way has reach 1, and a way with a dead need has reach 0.', () => {
  test('complete', () => {
    const known = expectValue(knownTiles(tiles('FF 111b 222b 333b 44c J')));
    expect(reachOf(way('FF 111b 222b 333b 444c'), known, false)).toBe(1);
    expect(reachOf(way('FF 111b 222b 333b 444c'), known, true)).toBe(1);
  });

  test('a dead single or pair, and a dead pung once all jokers are gone too', () => {
    const single = expectValue(knownTiles(tiles('111b 222b 333b 444c 5d'), tiles('NNNN')));
    expect(reachOf(way('NN 111b 222b 333b 444c'), single, false)).toBe(0);
    const pung = expectValue(knownTiles(tiles('FF 111b 222b 333b 44c'), tiles('44c JJJJJJJJ')));
    expect(reachOf(way('FF 111b 222b 333b 444c'), pung, false)).toBe(0);
    expect(reachOf(way('FF 111b 222b 333b 444c'), pung, true)).toBe(0);
    const joker = expectValue(knownTiles(tiles('FF 111b 222b 333b 44c'), tiles('44c JJJJJJJ')));
    expect(reachOf(way('FF 111b 222b 333b 444c'), joker, false)).toBeGreaterThan(0);
  });
});

describe('MD-M11. A useful tile in the rack instead of among the unseen never lowers the reach, so that the best part of what comes in decides.', () => {
  test('on 2,000 random cases', () => {
    const random = randomFromSeed(34);
    let moved = 0;
    for (const { target, known, concealed } of cases(35, rounds(2_000))) {
      const useful = usefulTile(target, known, random);
      if (useful === undefined) continue;
      const after: Known = { ...known, rack: known.rack.with(useful), unseen: known.unseen.without(useful) };
      const before = reachOf(target, known, concealed);
      expect(reachOf(target, after, concealed)).toBeGreaterThanOrEqual(before * (1 - 1e-12));
      moved += 1;
    }
    expect(moved).toBeGreaterThan(rounds(1_000));
  });

  test('a useless tile come in changes nothing', () => {
    for (const { target, known, concealed } of cases(36, 200)) {
      const useless = known.unseen
        .distinct()
        .find((kind) => kind !== JOKER && target.groups.every((group) => group.kind !== kind));
      if (useless === undefined) continue;
      const after: Known = { ...known, rack: known.rack.with(useless), unseen: known.unseen.without(useless) };
      expect(reachOf(target, after, concealed)).toBe(reachOf(target, known, concealed));
    }
  });
});

function usefulTile(target: Way, known: Known, random: Random): Kind | undefined {
  const lacking = target.groups.filter(({ kind }) => {
    const wanted = target.groups.filter((group) => group.kind === kind).reduce((sum, { size }) => sum + size, 0);
    return known.unseen.count(kind) > 0 && known.rack.count(kind) < wanted;
  });
  return lacking.length === 0 ? undefined : lacking[random.below(lacking.length)]?.kind;
}

describe('the raw chance under a reach', () => {
  const { calibration } = FIRST_REACH_MODEL;

  test('has a reach that is not over it, and a millionth more has', () => {
    for (let reach = 0; reach < 1; reach += 0.0037) {
      const raw = rawUnder(calibration, reach);
      expect(calibrated(calibration, raw)).toBeLessThanOrEqual(reach);
      expect(calibrated(calibration, raw + 1e-6)).toBeGreaterThan(reach);
    }
  });

  test('is over no chance below all, and all chances at the end', () => {
    expect(rawUnder(calibration, -0.1)).toBe(-1);
    expect(rawUnder(calibration, 1)).toBe(1);
  });
});
