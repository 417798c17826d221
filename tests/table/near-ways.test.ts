import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { away } from '../../core/reading/away.ts';
import { Hand } from '../../core/table/hand.ts';
import { NearWays } from '../../core/table/near-ways.ts';
import type { SeatView } from '../../core/table/policy.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { JOKER, KIND_COUNT, kindOf } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
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
          const losses = new Float64Array(KIND_COUNT);
          near.addLosses(losses);
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
          expect(near.weights[place]).toBeCloseTo(weigh(way, hand.plainShort[way]!, wild), 12);
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
    expect(after).toBeCloseTo(weigh(0, hand.plainShort[0]!, hand.wildShort[0]! - 2), 12);
    expect([...near.counts]).toEqual(before);
  });
});
