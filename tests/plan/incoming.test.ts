import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { incomingOf, meansOfBest } from '../../core/plan/incoming.ts';
import { MULTISETS, placeOf, SMALL_MULTISETS, RemovedSets } from '../../core/plan/multisets.ts';
import { distinctPasses } from '../../core/plan/pass-table.ts';
import { compileCard, needsOf } from '../../core/reading/compiled.ts';
import { JOKER, type Kind, KINDS } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, rackNear, randomWay } from '../reference/cards.ts';
import { draws } from '../reference/plain-plan.ts';

const SIZES = [0, 1, 2, 3] as const;
/** A few kinds in all numbers, jokers among them, so that every draw can be gone through. */
const UNSEEN = Tiles.of([0, 0, 1, 1, 1, 1, 1, 2, 9, 9, 17, 20, 20, 20, 35, 35, 35, 35] as Kind[]);
const WEIGHTS = Float64Array.from(KINDS, (kind) => 0.5 + ((7 * kind) % 5) / 4);

/** The place of up to three kinds: zeros in front. */
function placeOfKinds(kinds: readonly Kind[]): number {
  const [low, middle, high] = [0, 0, 0, ...[...kinds].sort((one, other) => one - other)].slice(-3);
  return placeOf(low!, middle!, high!);
}

const weightOf = (tiles: Tiles): number => tiles.toKinds().reduce((product, kind) => product * WEIGHTS[kind]!, 1);

describe('MD-P1. What may come in', () => {
  test.each(SIZES)('of %i tiles has at each multiset the draws that give it, and none elsewhere', (size) => {
    for (const weights of [undefined, WEIGHTS]) {
      const expected = new Float64Array(MULTISETS);
      for (const { tiles, ways } of draws(UNSEEN, size)) {
        expected[placeOfKinds(tiles.toKinds())] = ways * (weights === undefined ? 1 : weightOf(tiles));
      }
      const { counts, all } = incomingOf(UNSEEN.toCounts(), size, weights);
      for (const [place, count] of counts.entries()) expect(count).toBeCloseTo(expected[place]!, 10);
      expect(all).toBeCloseTo(
        expected.reduce((sum, each) => sum + each, 0),
        9,
      );
    }
  });

  test.each(SIZES)('of %i tiles is worth, in the mean, the best value of any part of each draw', (size) => {
    const random = randomFromSeed(81);
    const kinds = UNSEEN.distinct().filter((kind) => kind !== JOKER);
    for (let round = 0; round < 8; round += 1) {
      const own = new Float64Array(MULTISETS);
      own[0] = round % 2 === 0 ? 0 : 0.2;
      // Some multisets, of few tiles or many, have a value of their own.
      for (let entry = 0; entry < 30; entry += 1) {
        const some = Array.from({ length: 1 + random.below(3) }, () => kinds[random.below(kinds.length)]!);
        own[placeOfKinds(some)] = random.fraction();
      }
      const plain = [...own];
      const best = (drawn: readonly Kind[]): number => {
        let most = plain[0]!;
        for (let part = 0; part < 1 << drawn.length; part += 1) {
          most = Math.max(most, plain[placeOfKinds(drawn.filter((_, place) => ((part >> place) & 1) === 1))]!);
        }
        return most;
      };
      let [sum, all] = [0, 0];
      for (const { tiles, ways } of draws(UNSEEN, size)) {
        sum += ways * weightOf(tiles) * best(tiles.toKinds());
        all += ways * weightOf(tiles);
      }
      expect(meansOfBest(own, [incomingOf(UNSEEN.toCounts(), size, WEIGHTS)])[0]).toBeCloseTo(sum / all, 12);
    }
  });
});

describe('what passes take from a way', () => {
  test('has one number for the same useful tiles, another for others, and 0 for none', () => {
    const random = randomFromSeed(82);
    for (let round = 0; round < 12; round += 1) {
      const ways = [randomWay(random), randomWay(random)];
      const compiled = compileCard(cardOf(ways));
      const rack = rackNear(ways[0]!, random);
      const takes = new RemovedSets(compiled, rack.toCounts());
      for (const [number, way] of ways.entries()) {
        const { plain, wild } = needsOf(way);
        takes.setWay(number);
        const known = new Map<number, string>([[0, '']]);
        for (const give of ([1, 2, 3] as const).flatMap((size) => distinctPasses(rack, size))) {
          const useful = give.filter((kind, place) => {
            const over = Math.max(0, rack.count(kind) - plain[kind]! - wild[kind]!);
            const isWanted = plain[kind]! + wild[kind]! > 0;
            return isWanted && give.slice(0, place + 1).filter((other) => other === kind).length > over;
          });
          // The second of three passes side by side.
          const passes = Uint8Array.from([9, 9, 9, ...Array<number>(3 - give.length).fill(0), ...give, 9, 9, 9]);
          const take = takes.numberOf(passes, 3);
          expect(take).toBeLessThan(SMALL_MULTISETS);
          expect(known.get(take) ?? useful.join()).toBe(useful.join());
          known.set(take, useful.join());
        }
        expect(new Set(known.values()).size).toBe(known.size);
      }
    }
  });
});
