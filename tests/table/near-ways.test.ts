import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { away } from '../../core/reading/deficits.ts';
import { Hand, isOpen } from '../../core/table/hand.ts';
import { NearWays } from '../../core/table/near-ways.ts';
import type { SeatView } from '../../core/table/policy.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { JOKER, KIND_COUNT, type Kind, kindOf, KINDS } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { Way } from '../../core/card/way.ts';
import { cardOf, demoCard, demoTable } from './cards.ts';

const SUPPLY = Tiles.fullSet.toCounts();

function viewOf(card: TableCard, rack: Tiles, gone: Tiles = Tiles.none): { view: SeatView; hand: Hand } {
  const hand = new Hand(card);
  for (const kind of rack.toKinds()) hand.add(kind);
  const goneCounts = gone.toCounts();
  const view: SeatView = {
    card,
    seat: 0,
    hand,
    exposuresOf: () => [],
    thrownBy: () => [],
    passedBy: () => [],
    gone: goneCounts,
    given: new Uint8Array(KIND_COUNT),
    unseen: (kind) => (SUPPLY[kind] as number) - (hand.counts[kind] as number) - (goneCounts[kind] as number),
    wallLeft: 60,
    likings: new Float64Array(KIND_COUNT),
  };
  return { view, hand };
}

const tiles = (text: string): Tiles => expectValue(parseTiles(text));
/** Any weight that tells the two shortages apart and falls with each. */
const weigh = (_way: number, plain: number, wild: number): number => 0.5 ** wild * 0.3 ** plain;
const racks = fc
  .shuffledSubarray(Tiles.fullSet.toKinds(), { minLength: 13, maxLength: 14 })
  .map((kinds) => Tiles.of(kinds));

describe('near ways', () => {
  it('are all living ways at most so many tiles behind the nearest', () => {
    fc.assert(
      fc.property(racks, fc.nat(2), (rack, margin) => {
        const near = new NearWays(demoTable, weigh);
        near.collect(viewOf(demoTable, rack).view, margin);
        const aways = demoCard.ways.map((way) => away(way, rack));
        const limit = Math.min(...aways) + margin;
        // Before anything lies face up a way of the card can always be completed.
        const expected = [...aways.keys()].filter((way) => aways[way]! <= limit);
        expect([...near.ways.subarray(0, near.length)]).toEqual(expected);
      }),
      { seed: 41, numRuns: 60 },
    );
  });

  it('a way whose pair is gone is not living, a group of three is while jokers are left', () => {
    const card = makeTableCard(cardOf({ id: 'one', pattern: 'NN 1111bam 2222bam 3333bam' }));
    const rack = tiles('111b 2222b 3333b FF');
    const near = new NearWays(card, weigh);
    near.collect(viewOf(card, rack, tiles('NNN')).view, 0);
    expect(near.length).toBe(0);
    near.collect(viewOf(card, rack, tiles('NN 1b')).view, 0);
    expect(near.length).toBe(1);
    near.collect(viewOf(card, rack, tiles('NN 1b JJJJJJJJ')).view, 0);
    expect(near.length).toBe(0);
  });

  it('looks farther when no way within the margin lives', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'dead', pattern: 'NN 1111bam 2222bam 3333bam' },
        { id: 'far', pattern: 'EE 1111dot 2222dot 3333dot' },
      ),
    );
    const near = new NearWays(card, weigh);
    near.collect(viewOf(card, tiles('1111b 2222b 3333b F'), tiles('NNNN')).view, 2);
    expect([...near.ways.subarray(0, near.length)]).toEqual([1]);
  });

  it('the losses by a kind are what the weights lose when one such tile is taken', () => {
    fc.assert(
      fc.property(racks, (rack) => {
        const { view } = viewOf(demoTable, rack);
        const near = new NearWays(demoTable, weigh);
        for (const kind of rack.distinct().filter((each) => each !== JOKER)) {
          near.collect(view, 2);

          const losses = near.losses();
          const before = near.total();
          near.take(kind);
          expect(before - near.total()).toBeCloseTo(losses[kind]!, 10);
        }
      }),
      { seed: 42, numRuns: 25 },
    );
  });

  it('taking several tiles leaves the weights of the smaller rack', () => {
    fc.assert(
      fc.property(racks, fc.infiniteStream(fc.nat(12)), (rack, choices) => {
        const near = new NearWays(demoTable, weigh);
        near.collect(viewOf(demoTable, rack).view, 2);
        let left = rack;
        for (let count = 0; count < 3; count += 1) {
          const free = left.toKinds().filter((kind) => kind !== JOKER);
          const kind = free[choices.next().value! % free.length]!;
          left = left.without(kind);
          near.take(kind);
        }
        const hand = viewOf(demoTable, left).hand;
        for (let place = 0; place < near.length; place += 1) {
          const way = near.ways[place]!;
          const wild = Math.max(0, hand.wildShort[way]! - hand.counts[JOKER]!);
          expect(near.weights[place]).toBeCloseTo(weigh(way, hand.plainShortOf(way), wild), 12);
        }
      }),
      { seed: 43, numRuns: 40 },
    );
  });

  it('an exposure is weighed as the hand that it leaves', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'open', pattern: 'FF 1111bam 2222bam 3333bam' },
        { id: 'shut', pattern: 'FF 1111bam 2222bam 4444bam', concealed: true },
      ),
    );
    const { view, hand } = viewOf(card, tiles('F 111b 222b 33b JJ 5d'));
    const near = new NearWays(card, weigh);
    near.collect(view, 3);
    const after = near.totalAfterCall(view, kindOf('1b'), 4, 0);
    const before = [...near.counts];
    hand.expose(kindOf('1b'), 4, 0);
    expect(after).toBeCloseTo(weigh(0, hand.plainShortOf(0), hand.wildShort[0]! - 2), 12);
    expect([...near.counts]).toEqual(before);
  });
});

/** A rack with up to two groups of some hand laid open, and some tiles face up. */
const played = fc
  .record({
    way: fc.nat(demoCard.wayCount - 1),
    open: fc.nat(2),
    jokers: fc.nat(1),
    rack: fc.shuffledSubarray(Tiles.fullSet.toKinds(), { minLength: 14, maxLength: 14 }),
    gone: fc.shuffledSubarray(Tiles.fullSet.toKinds(), { minLength: 60, maxLength: 60 }),
  })
  .map(({ way, open, jokers, rack, gone }) => {
    const laid = demoCard.concealed[way] === 1 ? [] : largeGroups(demoCard.ways[way]!).slice(0, open);
    const { view, hand } = viewOf(demoTable, Tiles.none);
    for (const { kind, size } of laid) {
      const used = Math.min(jokers, size - 2);
      for (let count = 1 + used; count < size; count += 1) hand.add(kind);
      for (let count = 0; count < used; count += 1) hand.add(JOKER);
      hand.expose(kind, size, used);
    }
    const room = 14 - laid.reduce((sum, { size }) => sum + size, 0);
    for (const kind of rack.slice(0, room)) hand.add(kind);
    const shown = view.gone as Uint8Array;
    for (const kind of gone) if (view.unseen(kind) > 0) shown[kind]! += 1;
    return { view, hand };
  });

function largeGroups({ groups }: Way): Way['groups'] {
  return groups.filter(({ size }) => size >= 3);
}

/** The groups of a way that are not laid open yet; undefined if a group laid open is none of it. */
function groupsLeft(way: number, hand: Hand): { kind: Kind; size: number }[] | undefined {
  const groups = [...demoCard.ways[way]!.groups];
  for (const { kind, size } of hand.exposures) {
    const place = groups.findIndex((group) => group.kind === kind && group.size === size);
    if (place < 0 || demoCard.concealed[way] === 1) return undefined;
    groups.splice(place, 1);
  }
  return groups;
}

/** Tiles missing for these groups with so many of each kind and so many jokers; infinite where no joker may help. */
function missingFor(groups: readonly { kind: Kind; size: number }[], has: (kind: Kind) => number): number {
  let [plain, wild] = [0, 0];
  for (const kind of KINDS) {
    const of = (large: boolean): number =>
      groups.reduce((sum, group) => (group.kind === kind && group.size >= 3 === large ? sum + group.size : sum), 0);
    plain += Math.max(0, of(false) - has(kind));
    wild += Math.max(0, of(true) - Math.max(0, has(kind) - of(false)));
  }
  return plain > 0 ? Infinity : Math.max(0, wild - has(JOKER));
}

const weightOf = (hand: Hand, way: number): number =>
  weigh(way, hand.plainShortOf(way), Math.max(0, hand.wildShort[way]! - hand.counts[JOKER]!));

function copyOf(hand: Hand): Hand {
  const copy = new Hand(demoTable);
  for (const { kind, size, jokers } of hand.exposures) {
    for (let count = 1 + jokers; count < size; count += 1) copy.add(kind);
    for (let count = 0; count < jokers; count += 1) copy.add(JOKER);
    copy.expose(kind, size, jokers);
  }
  for (const kind of KINDS) for (let count = 0; count < hand.counts[kind]!; count += 1) copy.add(kind);
  return copy;
}

describe('near ways beside groups laid open and tiles face up', () => {
  it('are those whose other groups rack and unseen tiles can still fill, by away', () => {
    fc.assert(
      fc.property(played, fc.nat(2), ({ view, hand }, margin) => {
        const near = new NearWays(demoTable, weigh);
        near.collect(view, margin);
        const living = demoCard.ways.flatMap((_, way) => {
          const groups = groupsLeft(way, hand);
          if (groups === undefined) return [];
          return missingFor(groups, (kind) => hand.counts[kind]! + view.unseen(kind)) === 0 ? [way] : [];
        });
        const least = hand.least();
        const nearest = Math.min(...living.map((way) => hand.awayOf(way)));
        const limit = Math.max(least + margin, nearest);
        expect([...near.ways.subarray(0, near.length)]).toEqual(living.filter((way) => hand.awayOf(way) <= limit));
        for (let place = 0; place < near.length; place += 1) {
          expect(near.weights[place]).toBe(weightOf(hand, near.ways[place]!));
        }
      }),
      { seed: 44, numRuns: 120 },
    );
  });

  it('lose by a tile what the hand without it weighs less, each way alone and all together', () => {
    fc.assert(
      fc.property(played, ({ view, hand }) => {
        const near = new NearWays(demoTable, weigh);
        near.collect(view, 2);

        const losses = near.losses();
        expect(losses[JOKER]).toBe(0);
        for (const kind of KINDS.filter((each) => each !== JOKER)) {
          const without = copyOf(hand);
          const held = hand.counts[kind]! > 0;
          if (held) without.remove(kind);
          const each = [...near.ways.subarray(0, near.length)].map(
            (way) => weightOf(hand, way) - weightOf(without, way),
          );
          expect(losses[kind]).toBeCloseTo(
            each.reduce((sum, loss) => sum + loss, 0),
            12,
          );
          for (const [place, loss] of each.entries()) expect(near.uses(place, kind)).toBe(loss > 0);
        }
      }),
      { seed: 45, numRuns: 25 },
    );
  });

  it('after tiles are taken are weighed as the hand without them, groups laid open counted once', () => {
    fc.assert(
      fc.property(played, fc.infiniteStream(fc.nat(12)), ({ view, hand }, choices) => {
        const near = new NearWays(demoTable, weigh);
        near.collect(view, 2);
        const left = copyOf(hand);
        for (let count = 0; count < 3; count += 1) {
          const free = KINDS.filter((kind) => kind !== JOKER && left.counts[kind]! > 0);
          if (free.length === 0) return;
          const kind = free[choices.next().value! % free.length]!;
          left.remove(kind);
          near.take(kind);
          for (let place = 0; place < near.length; place += 1) {
            expect(near.weights[place]).toBeCloseTo(weightOf(left, near.ways[place]!), 12);
          }
        }
      }),
      { seed: 46, numRuns: 40 },
    );
  });

  it('after a call are those that hold the group beside all others, weighed as the hand that it leaves', () => {
    let laid = 0;
    fc.assert(
      fc.property(played, fc.integer({ min: 3, max: 6 }), ({ view, hand }, size) => {
        const near = new NearWays(demoTable, weigh);
        near.collect(view, 3);
        for (const kind of KINDS.filter((each) => each !== JOKER)) {
          const jokers = Math.max(0, size - 1 - hand.counts[kind]!);
          if (jokers > hand.counts[JOKER]!) continue;
          const after = copyOf(hand);
          after.expose(kind, size, jokers);
          const open = [...near.ways.subarray(0, near.length)].filter((way) => isOpen(after.awayOf(way)));
          laid += open.length;
          const counts = [...near.counts];
          expect(near.totalAfterCall(view, kind, size, jokers)).toBeCloseTo(
            open.reduce((sum, way) => sum + weightOf(after, way), 0),
            12,
          );
          expect([[...near.counts], [...near.exposed]]).toEqual([counts, [...hand.exposed]]);
        }
      }),
      { seed: 47, numRuns: 60 },
    );
    expect(laid).toBeGreaterThan(100);
  });
});

describe('all near ways', () => {
  const { view } = viewOf(demoTable, tiles('FF N 0 13b 4578c 223d'));

  it('weigh together what each weighs; the heaviest is the first of the greatest weight', () => {
    const near = new NearWays(demoTable, weigh);
    near.collect(view, 1);
    const weights = [...near.weights.subarray(0, near.length)];
    expect(near.total()).toBeCloseTo(
      weights.reduce((sum, weight) => sum + weight, 0),
      12,
    );
    expect(near.heaviest()).toBe(weights.indexOf(Math.max(...weights)));
    expect(new NearWays(demoTable, weigh).heaviest()).toBe(-1);
  });

  it('know the tiles that each needs for its singles and pairs', () => {
    const near = new NearWays(demoTable, weigh);
    near.collect(view, 1);
    for (let place = 0; place < near.length; place += 1) {
      const small = demoCard.ways[near.ways[place]!]!.groups.filter(({ size }) => size < 3);
      for (const kind of KINDS) {
        const needed = small.reduce((sum, group) => (group.kind === kind ? sum + group.size : sum), 0);
        expect(near.plainNeed(place, kind)).toBe(needed);
      }
    }
  });

  it('of equal weight are as heavy as each other: the first counts', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'far', pattern: 'EE 1111dot 2222dot 3333dot' },
        { id: 'near', pattern: 'NN 1111bam 2222bam 3333bam' },
        { id: 'as-near', pattern: 'NN 1111bam 2222bam 4444bam' },
      ),
    );
    const near = new NearWays(card, weigh);
    near.collect(viewOf(card, tiles('N 1111b 2222b')).view, 14);
    expect(near.length).toBe(3);
    expect(near.heaviest()).toBe(1);
    near.collect(viewOf(card, tiles('E 1111d 2222d')).view, 14);
    expect(near.heaviest()).toBe(0);
  });

  it('a weight is asked for with the tile gone from the trial rack', () => {
    const sizes = new Set<number>();
    const near = new NearWays(demoTable, (way, plain, wild, rack) => {
      sizes.add(rack.counts.reduce((sum, count) => sum + count, 0));
      return weigh(way, plain, wild);
    });
    near.collect(view, 2);
    expect([...sizes]).toEqual([13]);
    sizes.clear();
    near.losses();
    expect([...sizes]).toEqual([12]);
    expect([...near.counts]).toEqual(Array.from(view.hand.counts));
  });

  it('after a call with jokers keep what else they need of the kind', () => {
    const card = makeTableCard(cardOf({ id: 'winds', pattern: 'NN NNN EEEE WWWWW' }));
    const { view: own, hand } = viewOf(card, tiles('NN EE WW JJ 1234b'));
    const near = new NearWays(card, weigh);
    near.collect(own, 3);
    const after = near.totalAfterCall(own, kindOf('N'), 3, 1);
    hand.expose(kindOf('N'), 3, 1);
    // Left: N, EE, WW and a joker; missing: N of the pair, EE and WWW but for the joker.
    expect([hand.plainShortOf(0), hand.wildShort[0]]).toEqual([1, 5]);
    expect(after).toBeCloseTo(weigh(0, 1, 4), 12);
  });

  it('may miss all fourteen tiles', () => {
    const card = makeTableCard(cardOf({ id: 'one', pattern: 'NN 1111bam 2222bam 3333bam' }));
    const near = new NearWays(card, weigh);
    near.collect(viewOf(card, tiles('123456789d 1234c')).view, 2);
    expect([near.length, near.weights[0]]).toEqual([1, weigh(0, 2, 12)]);
    const all = new NearWays(demoTable, weigh);
    all.collect(viewOf(demoTable, Tiles.none).view, 2);
    expect(all.length).toBe(1024);
  });

  it('are at most 1024: of more the farthest are left out', () => {
    const near = new NearWays(demoTable, weigh);
    near.collect(view, 14);
    const aways = demoCard.ways.map((_, way) => view.hand.awayOf(way)).toSorted((one, other) => one - other);
    expect(aways.length).toBeGreaterThan(1024);
    const kept = aways.filter((each) => each < aways[1024]!);
    expect(near.length).toBe(kept.length);
  });

  it('are none where the hand is dead or no way lives', () => {
    const card = makeTableCard(cardOf({ id: 'one', pattern: 'NN 1111bam 2222bam 3333bam' }));
    const { view: dead, hand } = viewOf(card, tiles('444b 1111b'));
    const near = new NearWays(card, weigh);
    near.collect(dead, 0);
    expect(near.length).toBe(1);
    hand.expose(kindOf('4b'), 4, 0);
    near.collect(dead, 0);
    expect(near.length).toBe(0);
  });
});
