import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { Hand } from '../../core/table/hand.ts';
import { leastWorth } from '../../core/table/policies/by-weight.ts';
import { POLICIES, POLICY_NAMES, type PolicyName } from '../../core/table/policies/names.ts';
import type { Offer, Policy, SeatView } from '../../core/table/policy.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { codeOf, JOKER, KIND_COUNT, type Kind, kindOf } from '../../core/tiles/kinds.ts';
import { formatTiles, parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoTable } from './cards.ts';

const SUPPLY = Tiles.fullSet.toCounts();

function seatWith(
  card: TableCard,
  text: string,
  options: { wallLeft?: number; gone?: string; likings?: (kind: number) => number } = {},
): SeatView {
  const hand = new Hand(card);
  for (const kind of expectValue(parseTiles(text)).toKinds()) hand.add(kind);
  const gone = expectValue(parseTiles(options.gone ?? '')).toCounts();
  return {
    card,
    seat: 0,
    hand,
    exposuresOf: () => [],
    thrownBy: () => [],
    passedBy: () => [],
    gone,
    given: new Uint8Array(KIND_COUNT),
    unseen: (kind) => SUPPLY[kind]! - hand.counts[kind]! - gone[kind]!,
    wallLeft: options.wallLeft ?? 60,
    likings: Float64Array.from({ length: KIND_COUNT }, (_, kind) => options.likings?.(kind) ?? kind / KIND_COUNT),
  };
}

function passOf(policy: Policy, view: SeatView, blind = false): string {
  const out: Kind[] = [];
  out.length = policy.pass(view, blind ? 'left' : 'right', blind, out);
  return formatTiles(Tiles.of(out));
}

const bams = makeTableCard(
  cardOf(
    { id: 'run', pattern: 'FF 1111bam 2222bam 3333bam' },
    { id: 'shut', pattern: 'FF 1111bam 2222bam 5555bam', concealed: true },
    { id: 'winds', pattern: 'NNNN EE WW SSSS 11bam' },
  ),
);
const policyOf = (name: PolicyName, card = bams): Policy => POLICIES[name](card);
const weighing = ['nearest', 'soft', 'planner'] as const;

describe('every policy', () => {
  it.each(POLICY_NAMES)('%s: TB-4 passes no joker, and three tiles that it has', (name) => {
    const view = seatWith(demoTable, 'JJJ FF NE 0 123b 99d');
    const out: Kind[] = [];
    out.length = policyOf(name, demoTable).pass(view, 'right', false, out);
    expect(out).toHaveLength(3);
    expect(out).not.toContain(JOKER);
    expect(expectValue(parseTiles('FF NE 0 123b 99d')).contains(Tiles.of(out))).toBe(true);
  });

  it.each(POLICY_NAMES)('%s: only a rack of nothing but jokers discards one', (name) => {
    expect(codeOf(policyOf(name).discard(seatWith(bams, 'JJ')))).toBe('J');
    expect(codeOf(policyOf(name).discard(seatWith(bams, 'J 9d')))).toBe('9d');
  });

  it.each(POLICY_NAMES)('%s: a decision leaves nothing behind that changes the next', (name) => {
    const view = seatWith(demoTable, 'FF NEW 12b 5567c 99d');
    const other = seatWith(demoTable, 'JJ 0 33b 44c 1123456d');
    const fresh = passOf(policyOf(name, demoTable), view);
    const used = policyOf(name, demoTable);
    passOf(used, other, true);
    used.discard(other);
    expect(passOf(used, view)).toBe(fresh);
  });
});

describe('the policies that weigh near hands', () => {
  it.each(weighing)('%s gives away what no near hand uses', (name) => {
    expect(passOf(policyOf(name), seatWith(bams, 'FF 111b 22b 33b J 5c 7c 9d'))).toBe('57c 9d');
  });

  it.each(weighing)('%s hands on unseen rather than break its hand', (name) => {
    expect(passOf(policyOf(name), seatWith(bams, 'FF 111b 222b 333b J 9d'), true)).toBe('9d');
  });

  it.each(weighing)('%s offers only idle tiles in the courtesy', (name) => {
    const out: Kind[] = [];
    expect(policyOf(name).courtesy(seatWith(bams, 'FF 111b 222b 333b 5c 9d'), out)).toBe(2);
  });

  it.each(weighing)('%s stops before the second round when three more tiles would cost the hand', (name) => {
    expect(policyOf(name).goesOn(seatWith(bams, 'FF 111b 222b 333b JJ'))).toBe(false);
    expect(policyOf(name).goesOn(seatWith(bams, 'FF 111b 222b J 579c 9d'))).toBe(true);
  });

  it.each(weighing)('%s exposes a group that brings its hand closer, with as few jokers as will do', (name) => {
    const offer: Offer = { size: 0, jokers: 0 };
    const view = seatWith(bams, 'FF 11b 2222b 33b J 59c', { wallLeft: 40 });
    expect(policyOf(name).call(view, kindOf('1b'), offer)).toBe(true);
    expect(offer).toEqual({ size: 4, jokers: 1 });
  });

  it.each(weighing)('%s does not expose for a concealed hand (TB-14)', (name) => {
    const offer: Offer = { size: 0, jokers: 0 };
    const view = seatWith(bams, 'FF 1111b 222b 555b 9c', { wallLeft: 40 });
    expect(policyOf(name).call(view, kindOf('5b'), offer)).toBe(false);
  });

  it.each(weighing)('%s keeps the tile that a pair needs instead of a joker', (name) => {
    const view = seatWith(bams, 'NNNN EE WW SSS 11b', { wallLeft: 40 });
    expect(policyOf(name).swap(view, kindOf('1b'))).toBe(false);
    expect(policyOf(name).swap(view, kindOf('N'))).toBe(true);
  });

  it.each(weighing)('%s gives up a hand whose pair is gone', (name) => {
    const rack = 'NNNN E WW SSSS 11b 2b';
    expect(codeOf(policyOf(name).discard(seatWith(bams, rack)))).toBe('2b');
    const dead = codeOf(policyOf(name).discard(seatWith(bams, rack, { gone: 'EEE' })));
    expect(['N', 'E', 'W', 'S']).toContain(dead);
  });
});

describe('what weighing policies do at the edges', () => {
  it.each([...weighing, 'beginner'] as const)(
    '%s: TB-4 gives fewer tiles rather than a joker, and offers none in the courtesy',
    (name) => {
      const out: Kind[] = [];
      expect(policyOf(name).pass(seatWith(bams, 'JJJJ 9d'), 'right', false, out)).toBe(1);
      expect(policyOf(name).courtesy(seatWith(bams, 'JJJ'), [])).toBe(0);
    },
  );

  it.each(weighing)('%s takes a joker back when no hand lives any more', (name) => {
    const view = seatWith(bams, '9d', { gone: 'FFFFFFFF NNNN 1111b', wallLeft: 40 });
    expect(policyOf(name).swap(view, kindOf('9d'))).toBe(true);
  });

  it('soft calls for the group that leaves it nearest, not for the largest', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'pungs', pattern: 'FF 111bam 222bam 333bam 444bam' },
        { id: 'kongs', pattern: '1111bam 5555dot 6666dot EE' },
      ),
    );
    const offer: Offer = { size: 0, jokers: 0 };
    const view = seatWith(card, 'FF 111b 22b 333b 44b 9d', { wallLeft: 40 });
    expect(policyOf('soft', card).call(view, kindOf('1b'), offer)).toBe(false);
    const short = seatWith(card, 'FF 11b J 22b 333b 44b 9d', { wallLeft: 40 });
    expect(policyOf('soft', card).call(short, kindOf('1b'), offer)).toBe(true);
    expect(offer).toEqual({ size: 3, jokers: 0 });
  });

  it('nearest stays with the first of its nearest hands, where soft keeps what two others share', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'first', pattern: 'NN 1111bam 2222bam 3333bam' },
        { id: 'second', pattern: 'EE 1111bam 2222bam 4444bam' },
        { id: 'third', pattern: 'EE 1111bam 2222bam 5555bam' },
      ),
    );
    const shared = seatWith(card, '1111b 2222b N E', { wallLeft: 40 });
    expect(codeOf(policyOf('soft', card).discard(shared))).toBe('N');
    expect(codeOf(policyOf('nearest', card).discard(shared))).toBe('E');
  });
});

it('the planner counts a concealed hand for less than an open one that is as near', () => {
  const card = makeTableCard(
    cardOf(
      { id: 'shut', pattern: 'NN 1111bam 2222bam 3333bam', concealed: true },
      { id: 'open', pattern: 'EE 1111bam 2222bam 3333bam' },
    ),
  );
  const seat = seatWith(card, '1111b 2222b 333b N E', { wallLeft: 40, likings: (kind) => 1 - kind / KIND_COUNT });
  expect(codeOf(policyOf('planner', card).discard(seat))).toBe('N');
});

describe('the tile of least worth', () => {
  const counts = Tiles.of([JOKER, kindOf('N'), kindOf('E'), kindOf('W')]).toCounts();
  const ofThree = (n: number, e: number, w: number): Float64Array => {
    const three = new Float64Array(KIND_COUNT);
    for (const [code, value] of [
      ['N', n],
      ['E', e],
      ['W', w],
    ] as const)
      three[kindOf(code)] = value;
    return three;
  };

  it('is the least; TB-23: of equals the one less liked, whichever comes first', () => {
    expect(leastWorth(counts, ofThree(3, 1, 2), ofThree(0.1, 0.9, 0.1))).toBe(kindOf('E'));
    expect(leastWorth(counts, ofThree(1, 1, 1), ofThree(0.5, 0.2, 0.7))).toBe(kindOf('E'));
    expect(leastWorth(counts, ofThree(1, 1, 1), ofThree(0.2, 0.5, 0.7))).toBe(kindOf('N'));
    expect(leastWorth(counts, ofThree(1, 1, 1), ofThree(0.7, 0.5, 0.2))).toBe(kindOf('W'));
    expect(leastWorth(counts, ofThree(1, 1, 1), ofThree(0.5, 0.5, 0.5))).toBe(kindOf('N'));
    expect(leastWorth(counts, ofThree(1, 2, 0), ofThree(0, 0, 0.9))).toBe(kindOf('W'));
  });

  it('is the joker only where there is nothing else', () => {
    const alone = Tiles.of([JOKER]).toCounts();
    expect(leastWorth(alone, new Float64Array(KIND_COUNT), new Float64Array(KIND_COUNT))).toBe(JOKER);
  });
});

describe("the beginner's rule of thumb, worked out by hand", () => {
  const early = (rack: string, likings?: (kind: number) => number): string => {
    const options = likings === undefined ? { wallLeft: 95 } : { wallLeft: 95, likings };
    return codeOf(policyOf('beginner').discard(seatWith(bams, rack, options)));
  };

  it.each([
    ['two winds are worth 5 each, a lone number nothing', 'N E 5b', '5b'],
    ['a lone wind is worth nothing, two numbers of a suit 1 each', 'N 5b 9b', 'N'],
    ['winds and dragons are no fellows', 'N G R', 'N'],
    ['a flower is worth 60', 'F N', 'N'],
    ['and less than a pair', 'F 55b', 'F'],
    ['two flowers are worth more than a pair', 'FF 55b', '5b'],
    ['a neighbour counts 8, the next but one 4', '1b 2b 5d 7d', '5d'],
    ['above the 7 and below the 3, too', '8b 9b 1c 3c', '1c'],
    ['below as above', '7b 9b 1c 2c', '7b'],
    ['both sides add up', '1b 2b 3b 5c 6c', '5c'],
    ['the next but one counts on both sides', '3b 5b 7b 1c 2c', '3b'],
    ['what is farther off counts 1 for the suit alone', '1b 4b 5c 7c', '1b'],
    ['the same suit counts from one end to the other', '1b 9b 5c', '5c'],
    ['so it does in each suit', '1d 9d 5c', '5c'],
    ['suits do not touch', '9b 1c 5d 7d', '9b'],
    ['three of a kind before two', '555b 66c', '6c'],
  ])('%s', (_, rack, discard) => {
    expect(early(rack)).toBe(discard);
  });

  it('a lone number is worth as little as a lone wind: its liking decides', () => {
    expect(early('N 5b')).toBe('N');
    expect(early('N 5b', (kind) => 1 - kind / KIND_COUNT)).toBe('5b');
  });

  it('what is worth 20 is no longer idle: not offered, and a reason to stop', () => {
    const offered = (rack: string): number => policyOf('beginner').courtesy(seatWith(bams, rack), []);
    // 7b: two neighbours, and four fellows of its suit.
    expect(offered('66b 7b 88b')).toBe(0);
    expect(offered('66b 7b 88b N')).toBe(1);
    expect(offered('66b 7b 88b NE 9d')).toBe(3);
    const goesOn = (rack: string): boolean => policyOf('beginner').goesOn(seatWith(bams, rack));
    expect(goesOn('66b 7b 88b NE 9d')).toBe(true);
    expect(goesOn('66b 7b 88b NE')).toBe(false);
  });

  it('gives away tile by tile, each time judging what is left', () => {
    expect(passOf(policyOf('beginner'), seatWith(bams, '12b 5d NN'))).toBe('12b 5d');
    // Once one of a pair is gone, the other stands alone.
    expect(passOf(policyOf('beginner'), seatWith(bams, '1b 55d NN'))).toBe('NN 1b');
  });

  it('looks at the card from 87 tiles in the wall on: discards, calls and jokers alike', () => {
    const rack = 'NNNN E WW SSSS 11b 2b 3b 4b';
    const discardAt = (wallLeft: number): string =>
      codeOf(policyOf('beginner').discard(seatWith(bams, rack, { wallLeft })));
    expect(discardAt(88)).toBe('E');
    expect(['2b', '3b', '4b']).toContain(discardAt(87));
    const callAt = (wallLeft: number): boolean =>
      policyOf('beginner').call(seatWith(bams, 'FF 11b 2222b 33b J 59c', { wallLeft }), kindOf('1b'), {
        size: 0,
        jokers: 0,
      });
    expect([callAt(88), callAt(87)]).toEqual([false, true]);
    // Until then a single tile goes for a joker, a pair does not; afterwards the hand decides.
    const swapAt = (wallLeft: number, text: string): boolean =>
      policyOf('beginner').swap(seatWith(bams, text, { wallLeft }), kindOf('1b'));
    expect([swapAt(88, 'NNNN EE WW SSS 1b'), swapAt(88, 'NNNN EE WW SSS 11b')]).toEqual([true, false]);
    expect([swapAt(87, 'NNNN EE WW SSS 1b'), swapAt(87, 'NNNN EE WW SSS 111b')]).toEqual([false, true]);
  });
});

describe('the beginner', () => {
  it('keeps what repeats and what stands beside it', () => {
    expect(passOf(policyOf('beginner', demoTable), seatWith(demoTable, 'FF N 0 22234b 66c 1c 9d'))).toBe('N 0 9d');
  });

  it('hands on unseen rather than break a pair', () => {
    expect(passOf(policyOf('beginner', demoTable), seatWith(demoTable, 'FF NN 00 222b 55c 9d J'), true)).toBe('9d');
  });

  it('does not call before it has looked at the card', () => {
    const offer: Offer = { size: 0, jokers: 0 };
    const rack = 'FF 11b 2222b 33b J 59c';
    expect(policyOf('beginner').call(seatWith(bams, rack, { wallLeft: 95 }), kindOf('1b'), offer)).toBe(false);
    expect(policyOf('beginner').call(seatWith(bams, rack, { wallLeft: 40 }), kindOf('1b'), offer)).toBe(true);
  });
});
