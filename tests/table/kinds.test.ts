import { describe, expect, it } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { HeldBack } from '../../core/table/held-back.ts';
import { FAILINGS, TABLE_KINDS, type TableKind } from '../../core/table/kinds.ts';
import { NearWays } from '../../core/table/near-ways.ts';
import { playOut } from '../../core/table/play.ts';
import { soft } from '../../core/table/policies/by-weight.ts';
import { chanceToGoOn, type Offer, type Policy, type ShownGroup } from '../../core/table/policy.ts';
import { PLAYERS_AT, simulate, traceGame } from '../../core/table/simulate.ts';
import { makeTable, playerAt } from '../../core/table/table.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { addTallies } from '../../core/table/tally.ts';
import { codeOf, KIND_COUNT, type Kind, kindOf, SET_SIZE } from '../../core/tiles/kinds.ts';
import { cardOf, demoCard, demoTable } from './cards.ts';
import { around, bams, begun, countOf, layRacks, seatWith, tiles, TIMES } from './failing-players.ts';

describe('players who fall short of the soft one', () => {
  it('TB-25: without failings decide as it does, in whole games', () => {
    const seated = (policy: Policy): unknown[] => {
      const table = makeTable(demoTable, [policy, policy, policy, policy]);
      table.trace = [];
      const events = [];
      for (let seed = 0; seed < 10; seed += 1) {
        table.trace.length = 0;
        const random = randomFromSeed(seed);
        layRacks(table, random.below(1000));
        playOut(table);
        events.push(...table.trace.map((event) => JSON.stringify(event)));
      }
      return events;
    };
    expect(seated(begun(demoTable, {}))).toEqual(seated(soft(demoTable)));
  });

  it.each([FAILINGS.club, FAILINGS.relaxed])('TB-26: overlook a win as often as is said: $missedWins', (failings) => {
    const policy = begun(bams, failings);
    around(
      countOf(() => !policy.seesWin!()),
      failings.missedWins,
    );
  });

  it('TB-26: a win that is overlooked ends no game, and the tile is not called for less', () => {
    const policy = begun(bams, { missedWins: 1 });
    const table = makeTable(bams, [policy, policy, policy, policy]);
    table.trace = [];
    layRacks(table, 3);
    expect(playOut(table).winner).toBe(-1);
    expect(table.trace.at(-1)).toEqual({ type: 'wallGame' });
    const discarder = { ...begun(bams, {}), begin: () => undefined, discard: () => kindOf('3b') } as unknown as Policy;
    const other = makeTable(bams, [discarder, policy, policy, policy]);
    other.trace = [];
    for (const kind of tiles('FF 1111b 2222b 33b J').toKinds()) playerAt(other, 1).hand.add(kind);
    for (const kind of tiles('3b EE').toKinds()) playerAt(other, 0).hand.add(kind);
    other.next = SET_SIZE;
    expect(playOut(other).winner).toBe(-1);
    expect(other.trace.map(({ type }) => type)).toEqual(['discarded', 'wallGame']);
  });

  it.each([FAILINGS.club, FAILINGS.relaxed])(
    'TB-27: let calls go, and swaps: $missedCalls, $missedSwaps',
    (failings) => {
      const policy = begun(bams, failings);
      const offer: Offer = { size: 0, jokers: 0 };
      const view = seatWith(bams, 'FF 11b J 222b 333b');
      expect(soft(bams).call(view, kindOf('1b'), offer)).toBe(true);
      around(
        countOf(() => !policy.call(view, kindOf('1b'), offer)),
        failings.missedCalls,
      );
      expect(soft(bams).swap(view, kindOf('1b'))).toBe(true);
      around(
        countOf(() => !policy.swap(view, kindOf('1b'))),
        failings.missedSwaps,
      );
    },
  );

  it('TB-27: call and swap for nothing that the soft player would not', () => {
    const policy = begun(bams, { missedCalls: 0.5, missedSwaps: 0.5 });
    const view = seatWith(bams, 'F 11b 222b 333b EEE');
    expect(countOf(() => policy.call(view, kindOf('E'), { size: 0, jokers: 0 }))).toBe(0);
    const pair = seatWith(bams, 'F 1111b 2222b 333b');
    expect(countOf(() => policy.swap(pair, kindOf('F')))).toBe(0);
  });

  it('TB-28: look at the three lines of the heaviest ways', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'first', pattern: 'FF 1111bam 2222bam 3333bam' },
        { id: 'far', pattern: 'FF 1111bam 2222bam 5555dot' },
        { id: 'second', pattern: 'FF 1111bam 222bam 33333bam' },
        { id: 'third', pattern: 'FF 111bam 22222bam 3333bam' },
        { id: 'like-third', pattern: 'FF 111bam 2222bam 33333bam' },
      ),
    );
    const near = new NearWays(card, (way) => [9, 1, 8, 7, 7][way]!);
    near.collect(seatWith(card, 'FF 1111b 2222b 333b'), 9);
    near.keepLines(3);
    expect([...near.ways.subarray(0, near.length)]).toEqual([0, 2, 3]);
    expect([...near.weights.subarray(0, near.length)]).toEqual([9, 8, 7]);
    near.keepLines(1);
    expect([...near.ways.subarray(0, near.length)]).toEqual([0]);
    near.keepLines(3);
    expect(near.length).toBe(1);
  });

  const shown = (...groups: readonly (readonly [Kind, number])[]): ShownGroup[] =>
    groups.map(([kind, size]) => ({ kind, size, jokers: 0 }));

  it('TB-29: hold back what a quarter of the open hands of a seat with two exposures wants', () => {
    const card = makeTableCard(
      cardOf(
        { id: 'one', pattern: '1111bam 2222bam 3333bam 44bam' },
        { id: 'two', pattern: '1111bam 2222bam 3333bam 55bam' },
        { id: 'three', pattern: '1111bam 2222bam 3333bam 66bam' },
        { id: 'four', pattern: '1111bam 2222bam 3333bam 77bam' },
        { id: 'five', pattern: '1111bam 2222bam 3333bam 77bam', points: 50 },
        { id: 'hidden', pattern: '1111bam 2222bam 3333bam 88bam', concealed: true },
      ),
    );
    const marked = (...exposures: ShownGroup[][]): string[] => {
      const held = new Uint8Array(KIND_COUNT).fill(1);
      new HeldBack(card).mark(seatWith(card, 'FF', exposures), held);
      return [...held.keys()].filter((kind) => held[kind] === 1).map((kind) => codeOf(kind as Kind));
    };
    const two = shown([kindOf('1b'), 4], [kindOf('2b'), 4]);
    // Of five open hands all want 3b, two of five 7b, one of five each of the others.
    expect(marked([], two)).toEqual(['3b', '7b']);
    expect(marked([], [], [], two)).toEqual(['3b', '7b']);
    expect(marked([], two.slice(0, 1))).toEqual([]);
    expect(marked(two)).toEqual([]);
    expect(marked([], shown([kindOf('1b'), 4], [kindOf('3b'), 4]), two)).toEqual(['2b', '3b', '7b']);
  });

  it('TB-29: discard another idle tile, but nothing that serves', () => {
    const two = shown([kindOf('4b'), 4], [kindOf('5b'), 4]);
    const keeps = begun(bams, { holdsBack: true });
    const discarded = (rack: string): string => codeOf(keeps.discard(seatWith(bams, rack, [[], two])));
    // The other wants 6b and N.
    expect(codeOf(soft(bams).discard(seatWith(bams, 'FF 1111b 222b 333b N 9d')))).toBe('N');
    expect(discarded('FF 1111b 222b 333b N 9d')).toBe('9d');
    expect(discarded('FF 1111b 2222b 33b N')).toBe('N');
  });

  it.each([FAILINGS.club, FAILINGS.relaxed])(
    'TB-30: discard the second-best tile as often as is said: $secondBest',
    (failings) => {
      const policy = begun(bams, failings);
      const view = seatWith(bams, 'FF 1111b 222b 333b N 9d');
      const best = soft(bams).discard(view);
      const discards = Array.from({ length: TIMES }, () => policy.discard(view));
      expect(new Set(discards.map(codeOf))).toEqual(new Set(['N', '9d']));
      around(discards.filter((kind) => kind !== best).length, failings.secondBest);
      expect(codeOf(begun(bams, { secondBest: 1 }).discard(seatWith(bams, 'JJ 9d')))).toBe('9d');
    },
  );

  it.each([FAILINGS.club, FAILINGS.relaxed])(
    'TB-31: stop the second round, and go on with it, as often as is said: $stops, $goesOn',
    (failings) => {
      const policy = begun(bams, failings);
      const good = seatWith(bams, 'FF 111b 222b 333b JJ');
      const poor = seatWith(bams, 'FF 111b 222b J 579c 9d');
      expect([good, poor].map((view) => soft(bams).goesOn(view))).toEqual([false, true]);
      around(
        countOf(() => policy.goesOn(good)),
        failings.goesOn,
      );
      around(
        countOf(() => !policy.goesOn(poor)),
        failings.stops,
      );
      expect([good, poor].map((view) => chanceToGoOn(policy, view))).toEqual([failings.goesOn, 1 - failings.stops]);
      expect([good, poor].map((view) => chanceToGoOn(soft(bams), view))).toEqual([0, 1]);
    },
  );
});

describe('kinds of table', () => {
  it('TB-25: four alike sit at each, soft players at the quick one', () => {
    expect(TABLE_KINDS.map((kind) => PLAYERS_AT[kind])).toEqual(
      ['soft', 'club', 'relaxed'].map((name) => [name, name, name, name]),
    );
  });

  it.each(['club', 'relaxed'] as const)('TB-25: game g of a seed at a %s table is the same in any shard', (kind) => {
    const task = { compiled: demoCard, seed: 8, policies: PLAYERS_AT[kind] };
    const whole = simulate({ ...task, games: 24 });
    expect(addTallies(simulate({ ...task, games: 11 }), simulate({ ...task, first: 11, games: 13 }))).toEqual(whole);
    expect(traceGame(task, 5)).toEqual(traceGame(task, 5));
  });

  it('TB-25: the deal is that of the quick table', () => {
    const dealt = (kind: TableKind): unknown[] =>
      traceGame({ compiled: demoCard, seed: 8, policies: PLAYERS_AT[kind] }, 3).filter(({ type }) => type === 'dealt');
    expect(dealt('club')).toEqual(dealt('quick'));
    expect(dealt('relaxed')).toEqual(dealt('quick'));
  });
});
