import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { playExchange } from '../../core/table/exchange.ts';
import { isOpen } from '../../core/table/hand.ts';
import { playOut } from '../../core/table/play.ts';
import { soft } from '../../core/table/policies/by-weight.ts';
import { Steadfast } from '../calibration/steadfast.ts';
import type { Offer, SeatView } from '../../core/table/policy.ts';
import { layTable, makeTable, playerAt } from '../../core/table/table.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { codeOf, kindOf, type Kind } from '../../core/tiles/kinds.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { cardOf, demoCard, demoTable } from './cards.ts';

const OPEN = cardOf({ id: 'a', pattern: 'FF 111bam 2222bam 333bam 44crak' });
const CONCEALED = cardOf({ id: 'a', pattern: 'FF 111bam 2222bam 333bam 44crak', concealed: true });
const PAIRS = cardOf({ id: 'a', pattern: 'FF 11bam 22bam 33bam 44bam 55bam 66bam' });
const SAME = cardOf({ id: 'a', pattern: '11bam 1111bam 2222bam 33bam 44bam' });

/** A player who aims at the only way of a card, with this rack. */
function aimed(compiled: CompiledCard, rack: string): { readonly player: Steadfast; readonly view: SeatView } {
  const card = makeTableCard(compiled);
  const player = new Steadfast(card, soft(card));
  const { hand, view } = playerAt(makeTable(card, Array(4).fill(player)), 0);
  for (const kind of expectValue(parseTiles(rack)).toKinds()) hand.add(kind);
  player.aimAt(0);
  return { player, view };
}

describe('MD-C1. steadfast aims at one way and never leaves it', () => {
  test('it discards what the way does not use', () => {
    const { player, view } = aimed(OPEN, 'FF 111b 2222b 33b 44c 9d');
    expect(codeOf(player.discard(view))).toBe('9d');
  });

  test('with a joker too many it discards a tile whose place the joker can take, no single, no pair, no joker', () => {
    const { player, view } = aimed(OPEN, 'FJ 111b 2222b 333b 44c');
    expect(['1b', '2b', '3b']).toContain(codeOf(player.discard(view)));
  });

  test('when all else serves singles and pairs, it discards the joker', () => {
    const { player, view } = aimed(PAIRS, 'J FF 11b 22b 33b 44b 55b 6b');
    expect(codeOf(player.discard(view))).toBe('J');
  });

  const call = (compiled: CompiledCard, rack: string, code: '1b' | '2b' | '3b' | '4c' | '9d'): Offer | null => {
    const { player, view } = aimed(compiled, rack);
    const offer = { size: 0, jokers: 0 };
    return player.call(view, kindOf(code), offer) ? offer : null;
  };

  test.each([
    ['two of three held', 'FF 11b 2222b 33b 44c 9d', '1b', { size: 3, jokers: 0 }],
    ['three of four held', 'FF 111b 222b 33b 44c 9d', '2b', { size: 4, jokers: 0 }],
    ['one held, with a joker', 'FFJ 1b 2222b 33b 44c 9d', '1b', { size: 3, jokers: 1 }],
    ['a group that is whole', 'FF 11b 2222b 33b 44c 9d', '2b', null],
    ['a group too far off', 'FF 1b 2222b 333b 44c 9d', '1b', null],
    ['a pair', 'FF 11b 2222b 33b 4c 99d', '4c', null],
    ['a tile of no use', 'FF 11b 2222b 33b 44c 9d', '9d', null],
    ['jokers already fill all that is missing', 'FFJ 11b 2222b 333b 4c', '1b', null],
  ] as const)('a discard is called: %s', (_, rack, code, offer) => {
    expect(call(OPEN, rack, code)).toEqual(offer);
  });

  test('a concealed hand calls nothing', () => {
    expect(call(CONCEALED, 'FF 11b 2222b 33b 44c 9d', '1b')).toBeNull();
  });

  test('a pair of the same tile is kept back from the group', () => {
    expect(call(SAME, 'JJ 111b 222b 33b 44b 9d', '1b')).toEqual({ size: 4, jokers: 2 });
  });

  test.each([
    ['44c', false],
    ['444c', true],
    ['44c 9d', true],
  ])('for a joker it swaps a tile beyond its singles and pairs: %s', (rack, swaps) => {
    const { player, view } = aimed(OPEN, rack);
    expect(player.swap(view, kindOf(rack.endsWith('9d') ? '9d' : '4c'))).toBe(swaps);
  });

  test('before play it decides as the other policy', () => {
    const other = soft(demoTable);
    const player = new Steadfast(demoTable, other);
    const table = makeTable(demoTable, [player, player, player, player]);
    layTable(table, randomFromSeed(3));
    const { view } = playerAt(table, 1);
    const [mine, theirs]: [Kind[], Kind[]] = [[], []];
    expect(player.pass(view, 'left', true, mine)).toBe(other.pass(view, 'left', true, theirs));
    expect(mine).toEqual(theirs);
    expect(player.goesOn(view)).toBe(other.goesOn(view));
    expect(player.courtesy(view, mine)).toBe(other.courtesy(view, theirs));
    expect(mine).toEqual(theirs);
  });
});

describe('MD-C1. over whole games it never leaves its way', () => {
  const usual = [0, 1, 2, 3].map(() => soft(demoTable));
  const player = new Steadfast(demoTable, soft(demoTable));
  const table = makeTable(demoTable, usual);

  test('all that it lays open are groups of that way, and it never discards a tile that the way uses', () => {
    let exposures = 0;
    let discards = 0;
    for (let game = 0; game < 150; game += 1) {
      const random = randomFromSeed(600 + game);
      playerAt(table, 1).policy = usual[1] as (typeof usual)[number];
      layTable(table, random);
      playExchange(table);
      const way = nearestWay(1);
      player.aimAt(way);
      playerAt(table, 1).policy = player;
      let awayBefore = playerAt(table, 1).hand.awayOf(way);
      playOut(table, {
        beforeDiscard: (_, seat) => {
          const away = playerAt(table, 1).hand.awayOf(way);
          if (seat !== 1) return;
          discards += 1;
          expect(away).toBeLessThanOrEqual(awayBefore);
          awayBefore = away;
        },
      });
      const { hand } = playerAt(table, 1);
      exposures += hand.exposures.length;
      expect(isOpen(hand.awayOf(way))).toBe(true);
      expect(hand.awayOf(way)).toBeLessThanOrEqual(awayBefore);
      if (demoCard.concealed[way] === 1) expect(hand.exposures).toHaveLength(0);
    }
    expect(exposures).toBeGreaterThan(60);
    expect(discards).toBeGreaterThan(1_000);
  });

  function nearestWay(seat: number): number {
    const { hand } = playerAt(table, seat);
    let best = 0;
    for (let way = 1; way < demoCard.wayCount; way += 1) if (hand.awayOf(way) < hand.awayOf(best)) best = way;
    return best;
  }
});
