import highsLoader from 'highs';
import { lessEq, solve } from 'yalps';
import { describe, expect, test } from 'vitest';
import { type Random, randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Way, WayGroup } from '../../core/card/way.ts';
import { away, awayOfAll, smallestAway } from '../../core/reading/deficits.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { JOKER, KIND_COUNT, type Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoCard, rackNear, randomRack, randomWay, wayOf } from '../reference/cards.ts';
import { plainAway } from '../reference/plain-reading.ts';
import { rounds } from '../reference/rounds.ts';

const PAIRS = rounds(2_000);

function pairs(seed: number, count: number): { way: Way; rack: Tiles }[] {
  const random = randomFromSeed(seed);
  return Array.from({ length: count }, () => {
    const way = randomWay(random);
    return { way, rack: withJokers(rackNear(way, random), random) };
  });
}

/** Swaps up to five tiles for jokers, so that jokers are common. */
function withJokers(rack: Tiles, random: Random): Tiles {
  const kinds = rack.toKinds();
  const jokers = Math.min(5, 8 - rack.count(JOKER));
  for (let more = random.below(jokers + 1); more > 0; more -= 1) kinds[kinds.length - more] = JOKER;
  return Tiles.of(kinds);
}

/**
 * The most tiles that fit, as an integer program: one variable for naturals and one for jokers in
 * each group, no joker in groups under three, no more of a kind than the rack holds.
 */
function program(way: Way, rack: Tiles): { objective: string[]; limits: { names: string[]; most: number }[] } {
  const objective: string[] = [];
  const limits: { names: string[]; most: number }[] = [];
  const byKind = new Map<number, string[]>();
  const jokers: string[] = [];
  for (const [place, { kind, size }] of way.groups.entries()) {
    const natural = `n${place}`;
    const inGroup = [natural];
    byKind.set(kind, [...(byKind.get(kind) ?? []), natural]);
    if (size >= 3) {
      inGroup.push(`j${place}`);
      jokers.push(`j${place}`);
    }
    objective.push(...inGroup);
    limits.push({ names: inGroup, most: size });
  }
  for (const [kind, names] of byKind) limits.push({ names, most: rack.toCounts()[kind] as number });
  if (jokers.length > 0) limits.push({ names: jokers, most: rack.count(JOKER) });
  return { objective, limits };
}

describe('MD-A1. Away is 14 less the most tiles of the rack that can lie in the way at once.', () => {
  test(`an integer program (yalps) agrees on ${PAIRS} random racks and ways with jokers and mixed groups`, () => {
    for (const { way, rack } of pairs(11, PAIRS)) {
      const { objective, limits } = program(way, rack);
      const { result, status } = solve({
        direction: 'maximize',
        objective: 'laid',
        constraints: Object.fromEntries(limits.map(({ most }, place) => [`c${place}`, lessEq(most)])),
        variables: Object.fromEntries(
          objective.map((name) => [
            name,
            Object.fromEntries([
              ['laid', 1],
              ...limits.flatMap(({ names }, place) => (names.includes(name) ? [[`c${place}`, 1]] : [])),
            ]),
          ]),
        ),
        integers: true,
      });
      expect(status).toBe('optimal');
      expect(away(way, rack)).toBe(14 - Math.round(result));
    }
  });

  test('a second solver (highs) agrees on all of them, as one program of independent blocks', async () => {
    const highs = await highsLoader();
    const blocks = pairs(11, PAIRS);
    for (let from = 0; from < blocks.length; from += 100) {
      const part = blocks.slice(from, from + 100);
      const programs = part.map(({ way, rack }) => program(way, rack));
      const answer = highs.solve(lpText(programs));
      expect(answer.Status).toBe('Optimal');
      const laid = programs.map((_, block) =>
        Object.entries(answer.Columns)
          .filter(([name]) => name.endsWith(`_${block}`))
          .reduce((sum, [, column]) => sum + ('Primal' in column ? (column.Primal as number) : 0), 0),
      );
      expect(part.map(({ way, rack }) => away(way, rack))).toEqual(laid.map((tiles) => 14 - Math.round(tiles)));
    }
  });

  test('a plain count of tiles laid agrees on 20,000 more', () => {
    for (const { way, rack } of pairs(12, rounds(20_000))) expect(away(way, rack)).toBe(plainAway(way, rack));
  });
});

describe('what a tile may lie in', () => {
  const tiles = (text: string): Tiles => expectValue(parseTiles(text));
  const way = wayOf('FF 22b 333b 333b 4444c'.split(' ').map(groupOf));
  function groupOf(text: string): WayGroup {
    return { kind: tiles(text).toKinds()[0] as Kind, size: tiles(text).size };
  }

  test('MD-A2. A joker lies only in a group of three or more.', () => {
    expect(away(way, tiles('J F 22b 3333b 4444c'))).toBe(2);
    expect(away(way, tiles('J FF 22b 333b 4444c'))).toBe(2);
    expect(away(way, tiles('JJJ FF 22b 333b 4444c'))).toBe(0);
  });

  test('MD-A3. A natural tile goes to a single or a pair before it goes to a larger group.', () => {
    const mixed = wayOf(['5b', '555b', 'FF', '2222c', '3333d'].map(groupOf));
    expect(away(mixed, tiles('5b JJJ FF 2222c 3333d'))).toBe(0);
    expect(away(mixed, tiles('55b JJ FF 2222c 3333d'))).toBe(0);
    expect(away(mixed, tiles('JJJJ FF 2222c 3333d'))).toBe(1);
  });
});

function lpText(programs: readonly ReturnType<typeof program>[]): string {
  const all = programs.flatMap(({ objective }, block) => objective.map((name) => `${name}_${block}`));
  const limits = programs.flatMap(({ limits: own }, block) =>
    own.map(
      ({ names, most }, place) =>
        ` c${block}_${place}: ${names.map((name) => `${name}_${block}`).join(' + ')} <= ${most}`,
    ),
  );
  return ['Maximize', ` laid: ${all.join(' + ')}`, 'Subject To', ...limits, 'General', ` ${all.join(' ')}`, 'End'].join(
    '\n',
  );
}

describe('the kernel over a whole card', () => {
  test('gives each way of the demo card the same away as the single-way function', () => {
    const compiled = compileCard(demoCard());
    const random = randomFromSeed(13);
    for (let round = 0; round < rounds(40); round += 1) {
      const rack = withJokers(randomRack(random, 13 + (round % 2)), random);
      const all = awayOfAll(compiled, rack.toCounts(), new Uint8Array(compiled.wayCount));
      expect([...all]).toEqual(compiled.ways.map((way) => away(way, rack)));
    }
  });

  test('lists the users of every kind, and nothing else', () => {
    const compiled = compileCard(cardOf(pairs(14, 50).map(({ way }) => way)));
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const users = [...compiled.users.subarray(compiled.userStarts[kind], compiled.userStarts[kind + 1])];
      expect(users).toEqual(
        compiled.ways.flatMap((way, place) => (way.groups.some((group) => group.kind === kind) ? [place] : [])),
      );
    }
  });
});

test('the smallest away is that of the nearest way; a card without ways lacks all 14', () => {
  const compiled = compileCard(demoCard());
  const random = randomFromSeed(19);
  for (let round = 0; round < 10; round += 1) {
    const rack = randomRack(random, 13);
    const least = Math.min(...compiled.ways.map((way) => away(way, rack)));
    expect(smallestAway(compiled, rack.toCounts())).toBe(least);
  }
  expect(smallestAway(compileCard(cardOf([])), randomRack(random, 13).toCounts())).toBe(14);
});
