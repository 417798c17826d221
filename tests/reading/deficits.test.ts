import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way } from '../../core/card/way.ts';
import { type Deficits, emptyDeficits, fillDeficits, smallestAway } from '../../core/reading/deficits.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { type Known, knownTiles } from '../../core/reading/known.ts';
import { JOKER, KINDS } from '../../core/tiles/kinds.ts';
import { cardOf, rackNear, randomWay } from '../reference/cards.ts';
import { plainAway } from '../reference/plain-reading.ts';
import { rounds } from '../reference/rounds.ts';

interface Lack {
  readonly kind: number;
  readonly plain: number;
  readonly wild: number;
  readonly unseen: number;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, next) => total + next, 0);

/** What a way lacks, kind by kind: small groups first, jokers nowhere. */
function plainLacks(way: Way, { rack, unseen }: Known): Lack[] {
  return KINDS.flatMap((kind) => {
    const own = way.groups.filter((group) => group.kind === kind).map(({ size }) => size);
    const plain = sum(own.filter((size) => size < 3));
    const wild = sum(own.filter((size) => size >= 3));
    const held = rack.count(kind);
    const lack = { plain: Math.max(0, plain - held), wild: Math.max(0, wild - Math.max(0, held - plain)) };
    return lack.plain + lack.wild === 0 ? [] : [{ kind, ...lack, unseen: unseen.count(kind) }];
  });
}

function listed({ length, kind, plain, wild, unseen }: Deficits): Lack[] {
  return Array.from({ length }, (_, place) => ({
    kind: kind[place]!,
    plain: plain[place]!,
    wild: wild[place]!,
    unseen: unseen[place]!,
  }));
}

describe('what a way lacks, on 4,000 racks and ways', () => {
  const random = randomFromSeed(81);
  const into = emptyDeficits();
  let covered = 0;
  let short = 0;

  test('each kind that lacks something is listed, kinds rising, with what is unseen of it; larger groups only while jokers do not cover them', () => {
    for (let round = 0; round < rounds(4_000); round += 1) {
      const way = randomWay(random);
      const known = expectValue(knownTiles(rackNear(way, random)));
      fillDeficits(compileCard(cardOf([way])), 0, known.rack.toCounts(), known.unseen.toCounts(), into);
      const lacks = plainLacks(way, known);
      const open = sum(lacks.map(({ wild }) => wild));
      const isCovered = open <= known.rack.count(JOKER);
      covered += isCovered && open > 0 ? 1 : 0;
      short += isCovered ? 0 : 1;
      expect(listed(into)).toEqual(
        isCovered ? lacks.filter(({ plain }) => plain > 0).map((lack) => ({ ...lack, wild: 0 })) : lacks,
      );
      expect(into.shortage).toBe(isCovered ? 0 : open - known.rack.count(JOKER));
      expect(into.away).toBe(plainAway(way, known.rack));
    }
    expect(covered).toBeGreaterThan(rounds(100));
    expect(short).toBeGreaterThan(rounds(100));
  });
});

test('the smallest away of a card is that of its nearest way, and 14 when it has none', () => {
  const random = randomFromSeed(82);
  for (let round = 0; round < 50; round += 1) {
    const ways = Array.from({ length: 6 }, () => randomWay(random));
    const rack = rackNear(ways[round % 6]!, random);
    const each = ways.map((way) => plainAway(way, rack));
    expect(smallestAway(compileCard(cardOf(ways)), rack.toCounts())).toBe(Math.min(...each));
  }
  expect(smallestAway(compileCard(cardOf([])), new Uint8Array(36))).toBe(14);
});
