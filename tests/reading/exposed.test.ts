import { describe, expect, test } from 'vitest';
import { type Random, randomFromSeed, shuffle } from '../../core/base/random.ts';
import type { ExposedGroup, Way } from '../../core/card/way.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { groupKinds } from '../../core/game/hand-view.ts';
import { exposedCard } from '../../core/reading/exposed.ts';
import { handOf } from '../../core/reading/hand.ts';
import type { Known } from '../../core/reading/known.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { type Reading, readKnown } from '../../core/reading/reading.ts';
import { rankedWays } from '../../core/reading/targets.ts';
import { Hand, isOpen } from '../../core/table/hand.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER, type Kind, kindOf, KINDS, supplyOf } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { exactDrawReach, plainAway, quotient } from '../reference/plain-reading.ts';
import { DEMO, SMALL, yardstickOf } from '../review/helpers.ts';

/** Lines in which a group laid open leaves others of its kind, or of its kind and size. */
const TWINS = yardstickOf({
  format: 'windrow.card',
  version: 1,
  title: 'Twins',
  season: '',
  sections: [
    {
      name: 'Twins',
      lines: [
        { id: 't1', pattern: '11a 1111a 2222b 3333c', slide: 1 },
        { id: 't2', pattern: '111a 111a 1111a 22a 33a', slide: 1 },
        { id: 't3', pattern: 'FFF FFFFF 333a 3a 00' },
        { id: 't4', pattern: '111a 1111b 111a 1111c', slide: 1, concealed: true },
        { id: 't5', pattern: '888bam 888bam FFFF 2222crak' },
      ],
    },
  ],
});

const CARDS: readonly (readonly [string, CompiledCard])[] = [
  ['the demo card', DEMO.compiled],
  ['a card of four lines', SMALL.compiled],
  ['a card with several groups of a kind in a line', TWINS.compiled],
];
const POSITIONS = 800;

interface Position {
  readonly exposed: readonly ExposedGroup[];
  readonly known: Known;
}

/** Some groups of a way laid open, sometimes one that few ways hold, and a rack that is near to the way. */
function positionOf(compiled: CompiledCard, random: Random): Position {
  const way = compiled.ways[random.below(compiled.wayCount)] as Way;
  const left = Tiles.fullSet.toCounts();
  const large = shuffle(
    way.groups.filter(({ size }) => size >= 3),
    random,
  );
  const exposed = large.slice(0, random.below(4)).flatMap(({ kind, size }) => exposedOf(kind, size, left, random));
  if (random.below(4) === 0) {
    exposed.push(...exposedOf(KINDS[1 + random.below(KINDS.length - 1)] as Kind, 3 + random.below(3), left, random));
  }
  const rack: Kind[] = [];
  const room = 14 - random.below(2) - exposed.reduce((sum, { size }) => sum + size, 0);
  const wanted = way.groups.flatMap(({ kind, size }) => Array<Kind>(size).fill(kind));
  const near = shuffle([...wanted, ...wanted.slice(0, 4), JOKER, JOKER, JOKER], random);
  const any = shuffle(Tiles.fullSet.toKinds(), random);
  for (const kind of [...near.slice(0, random.below(14)), ...any]) {
    if (rack.length >= room || (left[kind] as number) === 0) continue;
    left[kind] = (left[kind] as number) - 1;
    rack.push(kind);
  }
  const thrown = Tiles.of(shuffle(Tiles.fromCounts(left).toKinds(), random).slice(0, random.below(70)));
  const unseen = Tiles.fromCounts(left).minus(thrown);
  const tiles = Tiles.of(rack);
  return { exposed, known: { rack: tiles, unseen, gone: Tiles.fullSet.minus(tiles).minus(unseen) } };
}

function exposedOf(kind: Kind, size: number, left: Uint8Array, random: Random): ExposedGroup[] {
  const naturals = Math.min(size, left[kind] as number, 1 + random.below(size));
  const jokers = size - naturals;
  if (kind === JOKER || naturals === 0 || jokers > (left[JOKER] as number)) return [];
  left[kind] = (left[kind] as number) - naturals;
  left[JOKER] = (left[JOKER] as number) - jokers;
  return [{ kind, size, jokers }];
}

/** Every way to lay the exposed groups on groups of the way, each leaving other groups to fill. */
function leftovers(way: Way, exposed: readonly ExposedGroup[]): Way[] {
  const [first, ...others] = exposed;
  if (first === undefined) return [way];
  return way.groups.flatMap((group, place) => {
    if (group.kind !== first.kind || group.size !== first.size) return [];
    return leftovers({ ...way, groups: way.groups.toSpliced(place, 1) }, others);
  });
}

/** By brute force: the ways that hold the groups, each with what it still needs and how far away it is. */
function plainLeft(compiled: CompiledCard, { exposed, known }: Position): Map<string, { rest: Way; away: number }> {
  const open = exposed.reduce((sum, { size }) => sum + size, 0);
  const left = new Map<string, { rest: Way; away: number }>();
  for (const [way, shape] of compiled.ways.entries()) {
    if (exposed.length > 0 && compiled.concealed[way] === 1) continue;
    for (const rest of leftovers(shape, exposed)) {
      const away = plainAway(rest, known.rack) - open;
      const key = keyOf(compiled, way);
      if (away < (left.get(key)?.away ?? 99)) left.set(key, { rest, away });
    }
  }
  return left;
}

function keyOf({ lines, lineOf, ways }: CompiledCard, way: number): string {
  return `${lines[lineOf[way] as number]?.id} ${ways[way]?.key}`;
}

function readingOf(compiled: CompiledCard, { exposed, known }: Position): Reading {
  return readKnown(exposedCard(compiled, exposed), known, Math.min(8, known.unseen.size), FIRST_REACH_MODEL);
}

describe.each(CARDS)('with groups laid open, %s is read as brute force reads it', (_name, compiled) => {
  test('MD-A4: the ways left, how far away each is, and which can still be made', () => {
    const random = randomFromSeed(3);
    let alive = 0;
    for (let round = 0; round < POSITIONS; round += 1) {
      const position = positionOf(compiled, random);
      const plain = plainLeft(compiled, position);
      const reading = readingOf(compiled, position);
      const { compiled: left, aways, reaches } = reading;
      const read = new Map([...left.ways.keys()].map((way) => [keyOf(left, way), aways[way]]));
      expect(read).toEqual(new Map([...plain].map(([key, { away }]) => [key, away])));
      const all = position.known.rack.plus(position.known.unseen);
      const wrong = [...left.ways.keys()].filter((way) => {
        const { rest, away } = plain.get(keyOf(left, way))!;
        const possible = plainAway(rest, all) - (14 - sizeOf(rest)) === 0;
        alive += possible ? 1 : 0;
        return away === 0 ? reaches[way] !== 1 : reaches[way]! > 0 !== possible;
      });
      expect(wrong).toEqual([]);
    }
    expect(alive).toBeGreaterThan(POSITIONS);
  });

  test('the draw reach of what is left, in exact integers', () => {
    const random = randomFromSeed(5);
    for (let round = 0; round < POSITIONS / 20; round += 1) {
      const position = positionOf(compiled, random);
      const plain = plainLeft(compiled, position);
      const { compiled: left, drawReaches, draws, aways } = readingOf(compiled, position);
      const near = [...left.ways.keys()].sort((one, other) => aways[one]! - aways[other]!).slice(0, 3);
      for (const way of near) {
        const { good, all } = exactDrawReach(plain.get(keyOf(left, way))!.rest, position.known, draws);
        expect(drawReaches[way]).toBeCloseTo(quotient(good, all), 12);
      }
    }
  });

  test('a hand is drawn with its open groups as they lie, and misses as many tiles as it is away', () => {
    const random = randomFromSeed(7);
    for (let round = 0; round < POSITIONS / 4; round += 1) {
      const position = positionOf(compiled, random);
      const reading = readingOf(compiled, position);
      for (const way of rankedWays(reading, 'away', 8)) {
        const { groups, missing, away } = handOf(reading, way);
        expect(missing).toHaveLength(away);
        const drawn = groups.map(({ kind, places }) => {
          const jokers = places.filter(({ held }) => held === 'joker').length;
          const whole = places.every(({ held }) => held !== 'missing');
          return whole ? `${kind} ${places.length} ${jokers}` : '';
        });
        for (const { kind, size, jokers } of position.exposed) expect(drawn).toContain(`${kind} ${size} ${jokers}`);
        const { rack } = position.known;
        const natural = (kind: Kind): number =>
          groups.flatMap(({ places }) => places).filter((each) => each.kind === kind && each.held === 'natural').length;
        const open = Tiles.of(position.exposed.flatMap(groupKinds));
        expect(KINDS.filter((kind) => kind !== JOKER && natural(kind) > open.count(kind) + rack.count(kind))).toEqual(
          [],
        );
      }
    }
  });

  test('the simulated table keeps the same count', () => {
    const random = randomFromSeed(9);
    const table = makeTableCard(compiled);
    const hand = new Hand(table);
    for (let round = 0; round < POSITIONS; round += 1) {
      const { exposed, known } = positionOf(compiled, random);
      hand.clear();
      for (const kind of known.rack.toKinds()) hand.add(kind);
      for (const { kind, size, jokers } of exposed) {
        for (let count = 1; count < size - jokers; count += 1) hand.add(kind);
        for (let count = 0; count < jokers; count += 1) hand.add(JOKER);
        hand.expose(kind, size, jokers);
      }
      const { compiled: left, aways } = readingOf(compiled, { exposed, known });
      const read = new Map([...left.ways.keys()].map((way) => [keyOf(left, way), aways[way]]));
      const counted = [...compiled.ways.keys()].filter((way) => isOpen(hand.awayOf(way)));
      expect(read).toEqual(new Map(counted.map((way) => [keyOf(compiled, way), hand.awayOf(way)])));
    }
  });
});

function sizeOf({ groups }: Way): number {
  return groups.reduce((sum, { size }) => sum + size, 0);
}

describe('what is left of a card', () => {
  const { compiled } = TWINS;
  const pung: ExposedGroup = { kind: kindOf('8b'), size: 3, jokers: 1 };
  const idsOf = (...groups: readonly ExposedGroup[]): string[] => {
    const { lines } = exposedCard(compiled, groups);
    return lines.flatMap(({ id, ways }) => (ways.length > 0 ? [id] : []));
  };

  test('a way is left only if it has each group, of its kind and size, as a group of its own', () => {
    expect(idsOf(pung)).toEqual(['t5']);
    expect(idsOf(pung, pung)).toEqual(['t5']);
    expect(idsOf(pung, pung, pung)).toEqual([]);
    expect(idsOf({ ...pung, kind: kindOf('7b') })).toEqual(['t2']);
    expect(idsOf({ ...pung, size: 5 })).toEqual([]);
    expect(idsOf({ ...pung, kind: kindOf('G') })).toEqual([]);
  });

  test('without groups it is the card itself; the same groups are not compiled twice', () => {
    expect(exposedCard(compiled, [])).toBe(compiled);
    expect(exposedCard(compiled, [pung])).toBe(exposedCard(compiled, [{ ...pung }]));
    expect(exposedCard(compiled, [pung]).exposed).toEqual([pung]);
    expect(exposedCard(compiled, [{ ...pung, jokers: 0 }]).exposed).toEqual([{ ...pung, jokers: 0 }]);
  });

  test('after many other groups, what was kept is compiled anew and the same', () => {
    const first = exposedCard(compiled, [pung]);
    for (const kind of KINDS) {
      if (supplyOf(kind) === 4) exposedCard(compiled, [{ kind, size: 4, jokers: 0 }]);
    }
    expect(exposedCard(compiled, [pung])).not.toBe(first);
    expect(exposedCard(compiled, [pung])).toEqual(first);
  });
});
