import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import type { WayGroup } from '../../core/card/way.ts';
import { type HiddenNeed, MOST_AWAY, RackCounter } from '../../core/others/rack-counts.ts';
import { JOKER, type Kind, KIND_COUNT, numberKind, windKind } from '../../core/tiles/kinds.ts';
import { awayOf, binomial, type Copies, racksFrom, withTile } from './brute-force.ts';

const KINDS_IN_USE: readonly Kind[] = [
  JOKER,
  numberKind(1, 'bam'),
  numberKind(2, 'bam'),
  numberKind(3, 'crak'),
  windKind('N'),
  windKind('E'),
];

function countsOf(copies: Copies): Uint8Array {
  const counts = new Uint8Array(KIND_COUNT);
  for (const [kind, count] of copies) counts[kind] = count;
  return counts;
}

/** What groups want, kind by kind. */
function needsOf(groups: readonly WayGroup[]): HiddenNeed[] {
  const kinds = [...new Set(groups.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const own = groups.filter((group) => group.kind === kind);
    const sum = (sizes: readonly WayGroup[]): number => sizes.reduce((all, { size }) => all + size, 0);
    const wild = own.filter(({ size }) => size > 2);
    const group = Math.max(0, ...wild.map(({ size }) => size));
    return { kind, plain: sum(own.filter(({ size }) => size < 3)), wild: sum(wild), group };
  });
}

/** Some unseen tiles, and groups for which a rack of one tile less lies among them. */
function cases(seed: number): { readonly copies: Copies; readonly groups: readonly WayGroup[] }[] {
  const random = randomFromSeed(seed);
  return Array.from({ length: 40 }, () => {
    const copies = new Map(KINDS_IN_USE.map((kind) => [kind, random.below(kind === JOKER ? 4 : 5)]));
    const groups = Array.from({ length: 1 + random.below(3) }, () => ({
      kind: KINDS_IN_USE[1 + random.below(KINDS_IN_USE.length - 1)] as Kind,
      size: 1 + random.below(4),
    }));
    return { copies, groups };
  }).filter(({ groups }) => groups.reduce((sum, { size }) => sum + size, 0) >= 2);
}

const sizeOf = (groups: readonly WayGroup[]): number => groups.reduce((sum, { size }) => sum + size, 0) - 1;

describe('OT-2: racks that could lie hidden are counted exactly', () => {
  test('as many at each away as are found by laying every rack', () => {
    let [checked, racksSeen] = [0, 0];
    for (const { copies, groups } of cases(11)) {
      const found = new Float64Array(MOST_AWAY + 1);
      for (const { rack, ways } of racksFrom(copies, sizeOf(groups))) {
        const away = awayOf(groups, rack);
        expect(away).toBeGreaterThan(0);
        if (away <= MOST_AWAY) found[away] = (found[away] as number) + ways;
        racksSeen += 1;
      }
      const { byAway } = new RackCounter(countsOf(copies)).racks(needsOf(groups));
      expect([...byAway]).toEqual([...found]);
      checked += found.some((count) => count > 0) ? 1 : 0;
    }
    expect(checked).toBeGreaterThan(25);
    expect(racksSeen).toBeGreaterThan(1000);
  });

  test('together they are all racks: a binomial coefficient', () => {
    const groups: WayGroup[] = [
      { kind: numberKind(1, 'bam'), size: 2 },
      { kind: numberKind(2, 'bam'), size: 4 },
    ];
    const copies = new Map(KINDS_IN_USE.map((kind) => [kind, kind === JOKER ? 8 : 4]));
    const { byAway } = new RackCounter(countsOf(copies)).racks(needsOf(groups));
    expect(byAway.reduce((sum, count) => sum + count, 0)).toBe(binomial(28, 5));
  });

  test('ways that want alike share a count, whatever the order and the kinds; others do not', () => {
    const counts = countsOf(new Map(KINDS_IN_USE.map((kind) => [kind, kind === windKind('E') ? 3 : 4])));
    const counter = new RackCounter(counts);
    const need = (kind: Kind, plain: number, wild: number): HiddenNeed => ({ kind, plain, wild, group: wild });
    const [one, two, north, east] = [numberKind(1, 'bam'), numberKind(2, 'bam'), windKind('N'), windKind('E')] as const;
    const first = counter.racks([need(one, 2, 0), need(two, 0, 4)]);
    expect(counter.racks([need(two, 0, 4), need(north, 2, 0)])).toBe(first);
    expect(counter.racks([need(two, 0, 4), need(east, 2, 0)])).not.toBe(first);
    expect(counter.racks([need(two, 0, 3), need(north, 2, 0)])).not.toBe(first);
  });
});

describe('OT-8: what one more tile does is counted exactly', () => {
  test('racks that it completes, and racks that lay a group open with it, as by laying every rack', () => {
    let [completing, calling] = [0, 0];
    for (const { copies, groups } of cases(12)) {
      // Two groups of one kind: which of them a call lays open is not told apart.
      if (new Set(groups.map(({ kind }) => kind)).size < groups.length) continue;
      const needs = needsOf(groups);
      const counted = new RackCounter(countsOf(copies)).racks(needs);
      for (const need of needs) {
        let completes = 0;
        const calls = new Float64Array(MOST_AWAY + 1);
        for (const { rack, ways } of racksFrom(copies, sizeOf(groups))) {
          const away = awayOf(groups, rack);
          if (away > MOST_AWAY) continue;
          const held = rack.get(need.kind as Kind) ?? 0;
          const isWanted = held < need.plain + need.wild;
          if (away === 1 && isWanted && awayOf(groups, withTile(rack, need.kind as Kind)) === 0) completes += ways;
          const mayLay = need.group > 0 && held < need.group && held + (rack.get(JOKER) ?? 0) >= need.group - 1;
          if (mayLay) calls[away] = (calls[away] as number) + ways;
        }
        const takes = counted.takes(need);
        expect(takes.completes).toBe(completes);
        expect([...takes.calls]).toEqual([...calls]);
        completing += completes > 0 ? 1 : 0;
        calling += calls.some((count) => count > 0) ? 1 : 0;
      }
    }
    expect(completing).toBeGreaterThan(10);
    expect(calling).toBeGreaterThan(5);
  });
});
