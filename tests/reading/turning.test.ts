import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import type { Known } from '../../core/reading/known.ts';
import { leanOf, type SectionShare } from '../../core/reading/lean.ts';
import { largest, reachesAfter, turningTiles } from '../../core/reading/one-tile.ts';
import { readKnown, readRack, type Reading } from '../../core/reading/reading.ts';
import { bestWayOfLines, targetsOf } from '../../core/reading/targets.ts';
import { JOKER, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, randomRack, randomWay } from '../reference/cards.ts';
import { rounds } from '../reference/rounds.ts';

const compiled = compileCard(demoCard());
const racks = ((): Tiles[] => {
  const random = randomFromSeed(91);
  return Array.from({ length: 2 + rounds(4) }, () => randomRack(random, 13));
})();
/** All four of a kind are seen, so that a kind is no longer among the unseen. */
const SEEN = KINDS[10] as Kind;
const gone = Tiles.of([SEEN, SEEN, SEEN, SEEN]);
const readings = racks
  .filter((rack) => rack.count(SEEN) === 0)
  .map((rack) => expectValue(readRack(compiled, rack, { gone })));

/** The whole card read anew with one tile more. */
function withOne({ known, draws, model }: Reading, kind: Kind): Reading {
  const after: Known = { ...known, rack: known.rack.with(kind), unseen: known.unseen.without(kind) };
  return readKnown(compiled, after, draws, model);
}

/** Half the sum of what the sections gain and lose. */
function moved(before: readonly SectionShare[], after: readonly SectionShare[]): number {
  return before.reduce((sum, { section, share }) => {
    const now = after.find((other) => other.section === section)?.share ?? Number.NaN;
    return sum + Math.max(0, now - share);
  }, 0);
}

describe('for each unseen kind but the joker: how much the best reach would rise, and how much of the lean would move', () => {
  test('is what a whole reading with that tile gives, most gain first, then most shift', () => {
    expect(readings.length).toBeGreaterThan(0);
    for (const reading of readings) {
      const told = turningTiles(reading);
      const kinds = KINDS.filter((kind) => kind !== JOKER && reading.known.unseen.count(kind) > 0);
      expect(told.map(({ kind }) => kind).toSorted((one, other) => one - other)).toEqual(kinds);
      expect(kinds.length).toBeLessThan(35);
      for (const { kind, unseen, gain, shift } of told) {
        const after = withOne(reading, kind);
        expect(unseen).toBe(reading.known.unseen.count(kind));
        expect(gain).toBe(largest(after.reaches) - largest(reading.reaches));
        expect(shift).toBeCloseTo(moved(reading.lean, after.lean), 12);
      }
      const order = told.toSorted(
        (one, other) => other.gain - one.gain || other.shift - one.shift || one.kind - other.kind,
      );
      expect(told).toEqual(order);
      expect(told.some(({ gain }, place) => place > 0 && gain === told[place - 1]?.gain)).toBe(true);
    }
  });

  test('tiles that change nothing at all keep the order of the set', () => {
    const random = randomFromSeed(92);
    const small = compileCard(cardOf([randomWay(random)]));
    const reading = expectValue(readRack(small, racks[0] as Tiles));
    const idle = turningTiles(reading).filter(({ gain, shift }) => gain === 0 && shift === 0);
    expect(idle.length).toBeGreaterThan(10);
    expect(idle).toEqual(idle.toSorted((one, other) => one.kind - other.kind));
  });
});

describe('one tile more or less', () => {
  test('gives each way the reach that a whole reading gives it, concealed ways too', () => {
    const random = randomFromSeed(93);
    const ways = Array.from({ length: rounds(40) }, () => randomWay(random));
    for (const concealed of [false, true]) {
      const card = compileCard(cardOf(ways, concealed));
      for (const rack of racks) {
        const reading = expectValue(readRack(card, rack));
        const { known, draws, model } = reading;
        for (const kind of KINDS.filter((each) => each !== JOKER && known.unseen.count(each) > 0)) {
          const after = { ...known, rack: known.rack.with(kind), unseen: known.unseen.without(kind) };
          expect([...reachesAfter(reading, kind, 1)]).toEqual([...readKnown(card, after, draws, model).reaches]);
        }
        for (const kind of rack.distinct().filter((each) => each !== JOKER)) {
          const after = { ...known, rack: rack.without(kind), gone: known.gone.with(kind) };
          expect([...reachesAfter(reading, kind, -1)]).toEqual([...readKnown(card, after, draws, model).reaches]);
        }
      }
    }
  });
});

describe('lean and targets', () => {
  test('the largest share comes first; equal ones keep the card’s order', () => {
    const random = randomFromSeed(94);
    const sections = ['One', 'Two', 'Three', 'Four'];
    const way = randomWay(random);
    const card = compileCard(cardOf([randomWay(random), way, randomWay(random), way], false, sections));
    const shares = leanOf(card, Float64Array.of(0.1, 0.2, 0.5, 0.2));
    expect(shares.map(({ section }) => section)).toEqual(['Three', 'Two', 'Four', 'One']);
    for (const reading of readings) {
      const falling = reading.lean.toSorted((one, other) => other.share - one.share);
      expect(reading.lean).toEqual(falling);
    }
  });

  test('a card without lines leans nowhere and has no target', () => {
    const reading = expectValue(readRack(compileCard(cardOf([])), racks[0] as Tiles));
    expect(reading.away).toBe(14);
    expect(bestWayOfLines(reading)).toEqual([]);
    expect(targetsOf(reading)).toEqual([]);
    expect(turningTiles(reading).every(({ gain }) => gain === 0)).toBe(true);
  });
});
