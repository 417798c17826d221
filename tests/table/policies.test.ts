import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { Hand } from '../../core/table/hand.ts';
import { POLICIES, POLICY_NAMES, type PolicyName } from '../../core/table/policies/names.ts';
import type { Offer, Policy, SeatView } from '../../core/table/policy.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { codeOf, JOKER, KIND_COUNT, type Kind, kindOf } from '../../core/tiles/kinds.ts';
import { formatTiles, parseTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { cardOf, demoTable } from './cards.ts';

const SUPPLY = Tiles.fullSet.toCounts();

function seatWith(card: TableCard, text: string, options: { wallLeft?: number; gone?: string } = {}): SeatView {
  const hand = new Hand(card);
  for (const kind of expectValue(parseTiles(text)).toKinds()) hand.add(kind);
  const gone = expectValue(parseTiles(options.gone ?? '')).toCounts();
  return {
    card,
    seat: 0,
    hand,
    exposuresOf: () => [],
    gone,
    given: new Uint8Array(KIND_COUNT),
    unseen: (kind) => SUPPLY[kind]! - hand.counts[kind]! - gone[kind]!,
    wallLeft: options.wallLeft ?? 60,
    likings: Float64Array.from({ length: KIND_COUNT }, (_, kind) => kind / KIND_COUNT),
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
  it.each(POLICY_NAMES)('%s: T4 passes no joker, and three tiles that it has', (name) => {
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

  it.each(weighing)('%s does not expose for a concealed hand (T14)', (name) => {
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
