import { describe, expect, it } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import { handOn, playExchange } from '../../core/table/exchange.ts';
import type { Policy, SeatView } from '../../core/table/policy.ts';
import { layTable, makeTable, type Table } from '../../core/table/table.ts';
import { JOKER, type Kind, KINDS, kindOf } from '../../core/tiles/kinds.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { demoTable } from './cards.ts';

const A = [kindOf('1b'), kindOf('2b'), kindOf('3b')];
const B = [kindOf('1c'), kindOf('2c'), kindOf('3c')];
const C = [kindOf('1d'), kindOf('2d'), kindOf('3d')];
const D = [kindOf('N'), kindOf('E'), kindOf('W')];

/** Gives the first tiles of the rack that are no jokers, and so many of them. */
function passive(options: { goesOn?: boolean; blind?: number; courtesy?: number; firstJoker?: boolean } = {}): Policy {
  const first = (view: SeatView, count: number, out: Kind[]): number => {
    const rack = KINDS.flatMap((kind) => Array<Kind>(view.hand.counts[kind] as number).fill(kind));
    const tiles = rack.filter((kind) => options.firstJoker === true || kind !== JOKER).slice(0, count);
    for (const [place, kind] of tiles.entries()) out[place] = kind;
    return tiles.length;
  };
  return {
    pass: (view, _step: PassStep, blind, out) => first(view, blind ? 3 - (options.blind ?? 0) : 3, out),
    goesOn: () => options.goesOn ?? true,
    courtesy: (view, out) => first(view, options.courtesy ?? 0, out),
    discard: (view) => KINDS.find((kind) => (view.hand.counts[kind] as number) > 0) as Kind,
    call: () => false,
    swap: () => false,
  };
}

function exchanged(policies: Policy[], seed = 3): Table {
  const table = makeTable(demoTable, policies);
  layTable(table, randomFromSeed(seed));
  table.trace = [];
  playExchange(table);
  return table;
}

const stepsOf = (table: Table, seat: number): string[] =>
  (table.trace ?? []).flatMap((event) => (event.type === 'gave' && event.seat === seat ? [event.step] : []));

describe('handing on', () => {
  it('TB-3: without blind passes the tiles go so many seats on', () => {
    expect(handOn([A, B, C, D], 1)).toEqual([D, A, B, C]);
    expect(handOn([A, B, C, D], 2)).toEqual([C, D, A, B]);
    expect(handOn([A, B, C, D], 3)).toEqual([B, C, D, A]);
  });

  it('TB-5: who gives one tile hands on two of those that came', () => {
    // South gives 1c alone; West receives that and two of East's three, South keeps the last.
    expect(handOn([A, B.slice(0, 1), C, D], 1)).toEqual([D, [A[2]], [B[0], A[0], A[1]], C]);
  });

  it('TB-5: three blind players hand on the tiles of the fourth, round the table', () => {
    expect(handOn([A, [], [], []], 1)).toEqual([A, [], [], []]);
  });

  it('TB-5: if all four pass three blind, nothing moves', () => {
    expect(handOn([[], [], [], []], 3)).toEqual([[], [], [], []]);
  });

  it('TB-5: whatever is passed, everyone keeps as many tiles as given, and each tile arrives', () => {
    const given = [A, B, C, D];
    for (let code = 0; code < 256; code += 1) {
      const passes = given.map((tiles, seat) => tiles.slice(0, (code >> (2 * seat)) & 3));
      for (const distance of [1, 2, 3]) {
        const kept = handOn(passes, distance);
        // Across, two pairs pass for themselves: both of a pair all blind is a standstill too.
        expect(kept.map((tiles) => tiles.length)).toEqual(passes.map((tiles) => tiles.length));
        expect(Tiles.of(kept.flat()).equals(Tiles.of(passes.flat()))).toBe(true);
      }
    }
  });
});

describe('the exchange', () => {
  it('TB-3, TB-6, TB-7: six passes and the courtesy, in order', () => {
    const table = exchanged([0, 1, 2, 3].map(() => passive()));
    expect(stepsOf(table, 2)).toEqual(['right', 'across', 'left', 'left2', 'across2', 'right2', 'courtesy']);
    expect(table.players.map(({ hand }) => hand.size)).toEqual([14, 13, 13, 13]);
  });

  it('TB-6: any player may stop the second round, and the courtesy still happens', () => {
    const table = exchanged([passive(), passive(), passive({ goesOn: false }), passive()]);
    expect(stepsOf(table, 0)).toEqual(['right', 'across', 'left', 'courtesy']);
    expect(table.trace).toContainEqual({ type: 'stopped', seat: 2, before: 'left2' });
  });

  it('TB-5: on the other steps three tiles are due', () => {
    const short = { ...passive(), pass: () => 2 };
    expect(() => exchanged([short, passive(), passive(), passive()])).toThrow(/pass of 2/);
  });

  it('TB-5, TB-8: blind passes keep 13 and 14 tiles', () => {
    const table = exchanged([passive({ blind: 3 }), passive({ blind: 1 }), passive({ blind: 2 }), passive()]);
    expect(table.players.map(({ hand }) => hand.size)).toEqual([14, 13, 13, 13]);
  });

  it('TB-5: fewer than three may be given on the first left and the second right alone, and the rest goes on unseen', () => {
    const table = exchanged([passive({ blind: 2 }), passive(), passive(), passive({ blind: 3 })]);
    const blind = (seat: number): number[] =>
      (table.trace ?? []).flatMap((event) => (event.type === 'gave' && event.seat === seat ? [event.blind] : []));
    expect(blind(0)).toEqual([0, 0, 2, 0, 0, 2, 0]);
    expect(blind(3)).toEqual([0, 0, 3, 0, 0, 3, 0]);
  });

  it('TB-3, TB-7, TB-4: more than three tiles, and tiles that the rack does not hold, are caught', () => {
    const four = (): number => 4;
    expect(() => exchanged([{ ...passive(), pass: four }, passive(), passive(), passive()])).toThrow(/pass of 4/);
    expect(() => exchanged([{ ...passive(), courtesy: four }, passive(), passive(), passive()])).toThrow(
      /courtesy of 4/,
    );
    const absent: Policy = {
      ...passive(),
      pass: (view, _step, _blind, out) => {
        const missing = KINDS.filter((kind) => kind !== JOKER && view.hand.counts[kind] === 0);
        for (const [place, kind] of missing.slice(0, 3).entries()) out[place] = kind;
        return 3;
      },
    };
    expect(() => exchanged([absent, passive(), passive(), passive()])).toThrow(/not in the rack/);
  });

  it('is the same whether its events are written down or not, and tells who looks on what each seat gave and got', () => {
    const table = makeTable(
      demoTable,
      [0, 1, 2, 3].map(() => passive({ courtesy: 2, goesOn: true })),
    );
    layTable(table, randomFromSeed(3));
    const seen: string[] = [];
    playExchange(table, {
      onPass: (_, seat, step, gave, tiles) => seen.push(`${seat} ${step} ${gave.join()} ${tiles.join()}`),
    });
    const traced = exchanged([0, 1, 2, 3].map(() => passive({ courtesy: 2, goesOn: true })));
    expect(table.players.map(({ hand }) => [...hand.counts])).toEqual(
      traced.players.map(({ hand }) => [...hand.counts]),
    );
    const gave = new Map<string, string>();
    const written: string[] = [];
    for (const event of traced.trace ?? []) {
      if (event.type === 'gave') gave.set(`${event.seat} ${event.step}`, event.tiles.join());
      if (event.type !== 'received') continue;
      const name = `${event.seat} ${event.step}`;
      written.push(`${name} ${gave.get(name)} ${event.tiles.join()}`);
    }
    expect(seen).toEqual(written);
    expect(seen).toHaveLength(28);
  });

  it('TB-6: the first seat, too, may stop', () => {
    const table = exchanged([passive({ goesOn: false }), passive(), passive(), passive()]);
    expect(stepsOf(table, 3)).toEqual(['right', 'across', 'left', 'courtesy']);
  });

  it('TB-7: the smaller number offered counts, pair by pair', () => {
    const table = exchanged([
      passive({ courtesy: 3 }),
      passive({ courtesy: 2 }),
      passive({ courtesy: 1 }),
      passive({ courtesy: 0 }),
    ]);
    const given = (table.trace ?? []).flatMap((event) =>
      event.type === 'gave' && event.step === 'courtesy' ? [event.tiles.length] : [],
    );
    expect(given).toEqual([1, 0, 1, 0]);
  });

  it('TB-4: a policy that passes a joker is caught', () => {
    const greedy = [0, 1, 2, 3].map(() => passive({ firstJoker: true }));
    expect(() => exchanged(greedy)).toThrow(/TB-4/);
  });

  it('TB-21: what a seat gave is known to it', () => {
    const table = exchanged([0, 1, 2, 3].map(() => passive()));
    for (const { given } of table.players) expect(given.reduce((sum, count) => sum + count, 0)).toBe(18);
  });
});
