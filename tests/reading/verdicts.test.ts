import { describe, expect, test } from 'vitest';
import { type Random, randomFromSeed, shuffle } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way } from '../../core/card/way.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { readKnown, readRack, type Reading } from '../../core/reading/reading.ts';
import { bestWayOfLines, type Target, targetsOf } from '../../core/reading/targets.ts';
import { turningTiles } from '../../core/reading/one-tile.ts';
import { tileVerdicts } from '../../core/reading/verdicts.ts';
import { codeOf, faceOf, JOKER, type Kind, KINDS, supplyOf } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, lineOf, randomRack, randomWay, wayOf } from '../reference/cards.ts';

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
const way = (text: string): Way =>
  wayOf(text.split(' ').map((group) => ({ kind: tiles(group).toKinds()[0] as Kind, size: tiles(group).size })));
const compiled = compileCard(demoCard());
const read = (rack: Tiles, card = compiled): Reading => expectValue(readRack(card, rack));

function racks(count: number): Tiles[] {
  const random = randomFromSeed(51);
  return Array.from({ length: count }, (_, place) => randomRack(random, 13 + (place % 2)));
}

const best = (reading: Reading): number => Math.max(...reading.reaches);

describe('MD-V1. Targets are the best ways of the five best lines that have at least two fifths of the best reach.', () => {
  test('on the demo card', () => {
    for (const rack of racks(6)) {
      const reading = read(rack);
      const targets = targetsOf(reading);
      expect(targets.length).toBeGreaterThan(0);
      expect(targets.length).toBeLessThanOrEqual(5);
      expect(new Set(targets.map(({ line }) => line.id)).size).toBe(targets.length);
      expect(targets[0]?.reach).toBe(best(reading));
      for (const { reach, uses, away } of targets) {
        expect(reach).toBeGreaterThanOrEqual(0.4 * best(reading));
        expect(uses.reduce((sum, count) => sum + count, 0)).toBe(14 - away);
      }
    }
  });
});

describe('MD-V1. just inside and just outside', () => {
  test('each line that may be aimed at is, in order, and no other', () => {
    const cut = { byNumber: 0, byReach: 0 };
    for (const rack of racks(40)) {
      const reading = read(rack);
      const reachOf = new Map<number, number>();
      for (const [at, reach] of reading.reaches.entries()) {
        const line = compiled.lineOf[at] as number;
        reachOf.set(line, Math.max(reach, reachOf.get(line) ?? 0));
      }
      const lines = [...reachOf.values()].toSorted((one, other) => other - one);
      const near = lines.filter((reach) => reach >= 0.4 * (lines[0] as number));
      expect(targetsOf(reading).map(({ reach }) => reach)).toEqual(near.slice(0, 5));
      if (near.length > 5) cut.byNumber += 1;
      if (near.length < 5) cut.byReach += 1;
    }
    expect(Math.min(cut.byNumber, cut.byReach)).toBeGreaterThan(2);
  });

  test('of two hands that are equal otherwise the one of more points comes first', () => {
    const one = way('FF 2222b 4444b 6666b');
    const lines = [25, 40, 30].map((points) => ({ ...lineOf([one], `for-${points}`), points }));
    const card = compileCard({ title: 'T', season: '', sections: [{ name: 'Only', lines }] });
    const reading = read(tiles('FF 222b 444b 666b 19c'), card);
    expect(targetsOf(reading).map(({ line }) => line.points)).toEqual([40, 30, 25]);
  });
});

describe('MD-V2. A tile is kept when the best target uses it, or lines with a quarter of the whole reach do; otherwise it is spare.', () => {
  test('every tile of the rack has a verdict, in canonical order, with a sentence of at most 20 words each', () => {
    for (const rack of racks(8)) {
      const verdicts = tileVerdicts(read(rack));
      expect(verdicts.map(({ kind }) => kind)).toEqual(rack.toKinds());
      for (const { sentence, verdict } of verdicts) {
        expect(sentence.startsWith(verdict === 'keep' ? 'Keep: ' : 'Spare: ')).toBe(true);
        for (const part of sentence.split(/(?<=\.) /)) expect(part.split(' ').length).toBeLessThanOrEqual(20);
      }
    }
  });

  test('a joker is always kept', () => {
    const verdicts = tileVerdicts(read(tiles('J N E W S 147b 258c 36d')));
    expect(verdicts[0]).toMatchObject({ kind: JOKER, verdict: 'keep' });
  });

  test('only what the single line of a card uses is kept, copy by copy', () => {
    const card = compileCard(cardOf([way('FF 111b 222b 333b 444c')]));
    const verdicts = tileVerdicts(read(tiles('FFF 11b 5b 2b 3b 4c 99d NEW'), card));
    expect(verdicts.filter(({ verdict }) => verdict === 'keep').map(({ kind }) => codeOf(kind))).toEqual([
      'F',
      'F',
      '1b',
      '1b',
      '2b',
      '3b',
      '4c',
    ]);
    expect(verdicts.find(({ kind, copy }) => codeOf(kind) === 'F' && copy === 3)?.sentence).toBe(
      'Spare: no hand that you can still reach needs the third flower.',
    );
    expect(verdicts.find(({ kind }) => codeOf(kind) === '2b')?.sentence).toBe(
      'Keep: Only needs the two bam, and it runs with one bam and three bam.',
    );
  });

  test('the loss is what the best reach falls by when the tile is given', () => {
    const rack = racks(1)[0] as Tiles;
    const reading = read(rack);
    for (const { kind, loss } of tileVerdicts(reading)) {
      if (kind === JOKER) continue;
      const known = { rack: rack.without(kind), gone: Tiles.of([kind]), unseen: reading.known.unseen };
      expect(best(readKnown(compiled, known, 0, reading.model))).toBeCloseTo(best(reading) - loss, 12);
    }
  });
});

describe('MD-V3. A tile is strained when two targets want it that together want more of the rack than stays after three tiles are given.', () => {
  const one = way('FF 111b 222b 333b 444c');
  const other = way('FF 777d 888d 999d 666c');

  test('two hands that share only the flowers strain these', () => {
    const card = compileCard(cardOf([one, other]));
    const verdicts = tileVerdicts(read(tiles('FF 11b 2b 3b 4c 77d 8d 9d 6c 5d'), card));
    const strained = verdicts.filter(({ strain }) => strain !== null).map(({ kind }) => codeOf(kind));
    expect(strained).toEqual(['F', 'F']);
    expect(verdicts[0]?.sentence).toContain("Strain: you can't keep");
  });

  test('two hands that fit into ten tiles strain nothing', () => {
    const card = compileCard(cardOf([one, way('FF 111b 222b 333b 555c')]));
    const verdicts = tileVerdicts(read(tiles('FF 11b 2b 3b 4c 5c 77d 8d 9d 6c'), card));
    expect(verdicts.every(({ strain }) => strain === null)).toBe(true);
  });
});

describe('MD-V2 and MD-V3, counted again from the targets and the best ways of all lines', () => {
  const near = (one: Kind, other: Kind): boolean => {
    const [left, right] = [faceOf(one), faceOf(other)];
    if (left.class !== 'number' || right.class !== 'number' || left.suit !== right.suit) return false;
    return Math.abs(left.number - right.number) === 1;
  };
  const counts = { kept: 0, byWorth: 0, spare: 0, running: 0, strained: 0 };

  function recount(reading: Reading): void {
    const { rack } = reading.known;
    const targets = targetsOf(reading);
    const lines = bestWayOfLines(reading);
    const whole = lines.reduce((sum, { reach }) => sum + reach, 0);
    const verdicts = tileVerdicts(reading);
    expect(verdicts).toHaveLength(rack.size);
    for (const { kind, copy, copies, verdict, wantedBy, worth, runsWith, strain, loss } of verdicts) {
      expect(copies).toBe(rack.count(kind));
      expect(copy).toBeLessThanOrEqual(copies);
      const wants = ({ uses }: Target): boolean => (uses[kind] as number) >= copy;
      const share = lines.filter(wants).reduce((sum, { reach }) => sum + reach, 0) / whole;
      expect(worth).toBeCloseTo(share, 12);
      expect(wantedBy).toEqual(targets.filter(wants));
      const isBest = wants(targets[0] as Target);
      expect(verdict).toBe(kind === JOKER || isBest || share >= 0.25 ? 'keep' : 'spare');
      if (kind === JOKER) expect(loss).toBe(best(reading));
      const [first] = wantedBy;
      const beside = rack.distinct().filter((other) => near(kind, other));
      expect(runsWith).toEqual(first === undefined ? [] : beside.filter((other) => (first.uses[other] as number) > 0));
      expect(strain).toEqual(kind === JOKER ? null : strainOf(wantedBy, rack.size));
      counts.kept += isBest ? 1 : 0;
      counts.byWorth += !isBest && verdict === 'keep' && kind !== JOKER ? 1 : 0;
      counts.spare += verdict === 'spare' ? 1 : 0;
      counts.running += runsWith.length;
      counts.strained += strain === null ? 0 : 1;
    }
  }

  test('for every tile of 24 racks and the demo card, and of 60 racks between two hands of small cards', () => {
    for (const rack of racks(24)) recount(read(rack));
    const random = randomFromSeed(52);
    for (let round = 0; round < 60; round += 1) {
      const ways = Array.from({ length: 4 }, () => randomWay(random, KINDS.slice(1, 24)));
      const rack = between(ways[0] as Way, ways[1] as Way, random);
      recount(read(rack, compileCard(cardOf(ways))));
    }
    for (const count of Object.values(counts)) expect(count).toBeGreaterThan(5);
  });

  /** 13 tiles, as many as the set has, of two hands together, some of another. */
  function between(one: Way, other: Way, random: Random): Tiles {
    const wanted = [one, other].flatMap(({ groups }) =>
      groups.flatMap(({ kind, size }) => Array<Kind>(size).fill(kind)),
    );
    let rack = Tiles.none;
    for (const kind of [...shuffle(wanted, random), ...shuffle([...KINDS], random)]) {
      if (rack.size < 13 && rack.count(kind) < supplyOf(kind)) rack = rack.with(kind);
    }
    return rack;
  }

  /** The first pair, in the order of the targets, whose tiles together leave fewer than three over. */
  function strainOf(wantedBy: readonly Target[], size: number): [Target, Target] | null {
    const pairs = wantedBy.flatMap((one, place) =>
      wantedBy.slice(place + 1).map((other): [Target, Target] => [one, other]),
    );
    return (
      pairs.find(([one, other]) => {
        const together = [...one.uses].map((count, kind) => Math.max(count, other.uses[kind] as number));
        return together.reduce((sum, count) => sum + count, 0) > size - 3;
      }) ?? null
    );
  }

  test('when nothing can be reached, a tile is worth nothing, and no neighbour of another suit or at its end counts', () => {
    const dead = compileCard(cardOf([way('NN 999b 111c 222c 333c')]));
    const reading = expectValue(readRack(dead, tiles('9b 1c 2c FF E 0 4578c 22d'), { gone: tiles('NNNN') }));
    const verdicts = tileVerdicts(reading);
    for (const { worth } of verdicts) expect(worth).toBe(0);
    const alive = tileVerdicts(read(tiles('9b 1c 2c FF E 0 4578c 22d'), dead));
    const runs = (code: string): string[] =>
      alive.find(({ kind }) => codeOf(kind) === code)?.runsWith.map(codeOf) ?? [];
    expect(runs('9b')).toEqual([]);
    expect(runs('1c')).toEqual(['2c']);
    expect(runs('2c')).toEqual(['1c']);
    expect(runs('4c')).toEqual([]);
  });
});

describe('turning tiles', () => {
  test('tell what one more tile gains, agreeing with a reading of 14 tiles', () => {
    const rack = racks(1)[0] as Tiles;
    const reading = read(rack);
    const turning = turningTiles(reading);
    expect(turning.map(({ kind }) => kind).sort((a, b) => a - b)).toEqual(
      reading.known.unseen.distinct().filter((kind) => kind !== JOKER),
    );
    for (const { kind, gain, unseen, shift } of turning) {
      expect(best(read(rack.with(kind))) - best(reading)).toBeCloseTo(gain, 12);
      expect(unseen).toBe(reading.known.unseen.count(kind));
      expect(shift).toBeGreaterThanOrEqual(0);
      expect(shift).toBeLessThanOrEqual(1);
    }
    const gains = turning.map(({ gain }) => gain);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
    expect(gains[0]).toBeGreaterThan(0);
  });
});
