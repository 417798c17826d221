import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { randomFromSeed } from '../../core/base/random.ts';
import { playGame } from '../../core/table/game.ts';
import { POLICIES } from '../../core/table/policies/names.ts';
import { playOut } from '../../core/table/play.ts';
import type { Offer, Policy } from '../../core/table/policy.ts';
import { layTable, makeTable, playerAt, type Table } from '../../core/table/table.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { JOKER, type Kind, kindOf, KINDS, SET_SIZE } from '../../core/tiles/kinds.ts';
import { parseTileList, parseTiles } from '../../core/tiles/text.ts';
import { cardOf, demoTable } from './cards.ts';

const card = makeTableCard(
  cardOf(
    { id: 'bams', pattern: 'FF 1111bam 2222bam 3333bam' },
    { id: 'craks', pattern: 'FF 1111crak 2222crak 3333crak', concealed: true },
    { id: 'winds', pattern: 'NNNN EEE WWW SSSS' },
  ),
);

/** Tiles that no hand of the card holds, for racks that wait for nothing. */
const IDLE = '456789d 456789c GR';
const IDLE_13 = '456789d 45678c GR';

interface Script {
  readonly rack: string;
  /** What the player discards, turn by turn; afterwards the first tile of the rack. */
  readonly discards?: string;
  /** What the player lays open with a discard, by size and jokers, each once. */
  readonly calls?: readonly Offer[];
  readonly swaps?: boolean;
}

function scripted({ discards = '', calls = [], swaps = false }: Script): Policy {
  const turns = [...expectValue(parseTileList(discards))];
  const offers = [...calls];
  return {
    pass: () => 0,
    goesOn: () => false,
    courtesy: () => 0,
    discard: ({ hand }) => turns.shift() ?? (KINDS.find((kind) => (hand.counts[kind] as number) > 0) as Kind),
    call: (_, _kind, offer) => {
      const wanted = offers.shift();
      if (wanted === undefined) return false;
      Object.assign(offer, wanted);
      return true;
    },
    swap: () => swaps,
  };
}

/** A table at the first discard: racks as given, East first, and the tiles of the wall in the order of drawing. */
function tableOf(scripts: readonly Script[], wall = ''): Table {
  const table = makeTable(
    card,
    scripts.map((script) => scripted(script)),
  );
  for (const [seat, { rack }] of scripts.entries()) {
    for (const kind of expectValue(parseTiles(rack)).toKinds()) playerAt(table, seat).hand.add(kind);
  }
  const tiles = expectValue(parseTileList(wall));
  table.next = SET_SIZE - tiles.length;
  table.wall.splice(table.next, tiles.length, ...tiles);
  table.trace = [];
  return table;
}

const idle = (discards: string, size: 13 | 14 = 13): Script => ({ rack: size === 14 ? IDLE : IDLE_13, discards });
const goneOf = (table: Table, code: '5d' | '4d' | '1b' | '2b' | 'J' | 'N'): number =>
  table.gone[kindOf(code)] as number;

describe('turns', () => {
  it('TB-9, TB-18: East discards first, then each draws in turn, until the wall is empty and nobody wins', () => {
    const table = tableOf([idle('5d', 14), idle('1d'), idle('2d'), idle('3d')], '1d 2d 3d');
    expect(playOut(table)).toEqual({ winner: -1, from: -1, way: -1, draws: 3, discards: 4 });
    expect(table.trace).toEqual([
      { type: 'discarded', seat: 0, tile: kindOf('5d') },
      { type: 'drew', seat: 1, tile: kindOf('1d') },
      { type: 'discarded', seat: 1, tile: kindOf('1d') },
      { type: 'drew', seat: 2, tile: kindOf('2d') },
      { type: 'discarded', seat: 2, tile: kindOf('2d') },
      { type: 'drew', seat: 3, tile: kindOf('3d') },
      { type: 'discarded', seat: 3, tile: kindOf('3d') },
      { type: 'wallGame' },
    ]);
    expect(goneOf(table, '5d')).toBe(1);
    expect(table.players.map(({ hand }) => hand.size)).toEqual([13, 13, 13, 13]);
  });

  it('shows those who look on each draw, the moment before each discard and the one after it', () => {
    const seen: string[] = [];
    const table = tableOf([idle('5d', 14), idle('1d'), idle('2d'), idle('3d')], '1d');
    const note =
      (what: string) =>
      (_: Table, seat: number, draws: number): void =>
        void seen.push(`${what} ${seat} ${draws} ${playerAt(table, seat).hand.size}`);
    playOut(table, { beforeDraw: note('draw'), beforeDiscard: note('turn'), afterDiscard: note('left') });
    expect(seen).toEqual(['turn 0 0 14', 'left 0 0 13', 'draw 1 0 13', 'turn 1 1 14', 'left 1 1 13']);
  });

  it('tells who looks on of each discard, and how many tiles were drawn before it', () => {
    const turns: (readonly number[])[] = [];
    const table = tableOf([idle('5d', 14), idle('1d'), idle('2d'), idle('3d')], '1d 2d');
    playOut(table, { beforeDiscard: (_, seat, draws) => turns.push([seat, draws]) });
    expect(turns).toEqual([
      [0, 0],
      [1, 1],
      [2, 2],
    ]);
  });

  it('a discard of a tile that the rack does not hold is caught', () => {
    expect(() => playOut(tableOf([idle('1b', 14), idle(''), idle(''), idle('')]))).toThrow(/not in the rack/);
  });
});

describe('a table', () => {
  const soft = [0, 1, 2, 3].map(() => POLICIES.soft(demoTable));

  it('TB-1, TB-2, TB-23: is laid by its seed alone, whatever was played on it before', () => {
    const fresh = makeTable(demoTable, soft);
    layTable(fresh, randomFromSeed(8));
    const used = makeTable(demoTable, soft);
    playGame(used, randomFromSeed(5));
    layTable(used, randomFromSeed(8));
    expect(used.wall).toEqual(fresh.wall);
    expect(used.next).toBe(53);
    const likings = fresh.players.map((player) => [...player.likings]);
    expect(used.players.map((player) => [...player.likings])).toEqual(likings);
    const all = likings.flat();
    expect(new Set(all).size).toBe(4 * KINDS.length);
    expect(Math.min(...all)).toBeGreaterThan(0);
    expect(Math.max(...all)).toBeLessThan(1);
  });

  it('a game tells the away of each seat after the deal, after the exchange and at the end', () => {
    const table = makeTable(demoTable, soft);
    const aways = (): number[] =>
      table.players.map(({ hand }) => Math.min(...demoTable.compiled.ways.map((_, way) => hand.awayOf(way))));
    for (let seed = 0; seed < 5; seed += 1) {
      const seen: number[][] = [];
      const note = (): void => void seen.push(aways());
      const game = playGame(table, randomFromSeed(seed), { afterDeal: note, afterExchange: note, afterGame: note });
      expect([game.awayDealt, game.awayAfterExchange, game.awayAtEnd]).toEqual(seen);
      expect(game.winner < 0 || game.awayAtEnd[game.winner] === 0).toBe(true);
    }
  });

  it('TB-21: every seat sees the groups that lie open before all others', () => {
    const caller: Script = { rack: '111b 456789d 456c G', discards: '4d', calls: [{ size: 4, jokers: 0 }] };
    const table = tableOf([{ rack: IDLE_13 + ' 1b', discards: '1b' }, caller, idle(''), idle('')]);
    playOut(table);
    for (const { view } of table.players) {
      expect(view.exposuresOf(1)).toEqual([{ kind: kindOf('1b'), size: 4, jokers: 0 }]);
      expect(view.exposuresOf(2)).toEqual([]);
      expect(view.wallLeft).toBe(0);
    }
    // South's own last one is in its group; the others see four of them face up, and their own racks.
    const [east, south] = table.players;
    expect([east!.view.unseen(kindOf('1b')), south!.view.unseen(kindOf('1b'))]).toEqual([0, 0]);
    expect(east!.view.unseen(kindOf('4d'))).toBe(4 - 1 - 1);
    expect(south!.view.unseen(kindOf('2b'))).toBe(4);
  });

  it('plays the same without writing its events down', () => {
    const scripts: Script[] = [
      { rack: IDLE_13 + ' 1b', discards: '1b' },
      { rack: '11b 456789d 456c G J', discards: '4d', calls: [{ size: 4, jokers: 1 }] },
      { rack: '1b NNNN EEE WWW SS', swaps: true },
      idle(''),
    ];
    for (const wall of ['S', '5c', '']) {
      const [traced, silent] = [tableOf(scripts, wall), tableOf(scripts, wall)];
      silent.trace = undefined;
      expect(playOut(silent)).toEqual(playOut(traced));
    }
  });
});

describe('the last tile', () => {
  const WAITING = 'FF 111b 2222b 3333b';

  it('TB-17: fourteen dealt tiles that make a hand win at once', () => {
    const table = tableOf([{ rack: 'FF 1111b 2222b 3333b' }, idle(''), idle(''), idle('')], '1d');
    expect(playOut(table)).toEqual({ winner: 0, from: -1, way: 0, draws: 0, discards: 0 });
  });

  it('TB-17: an own draw wins', () => {
    const table = tableOf([idle('5d', 14), idle('1d'), { rack: WAITING }, idle('')], '1d 1b 1d');
    expect(playOut(table)).toEqual({ winner: 2, from: -1, way: 0, draws: 2, discards: 2 });
    expect(table.trace?.at(-1)).toEqual({ type: 'won', seat: 2, way: 0 });
  });

  it('TB-12, TB-13: of two who can win on a discard the first in turn order does, round the table', () => {
    const table = tableOf([{ rack: WAITING + ' 5d', discards: '5d' }, idle('1b'), idle(''), { rack: WAITING }], '1b');
    expect(playOut(table)).toMatchObject({ winner: 3, from: 1, way: 0 });
    expect(table.trace?.at(-1)).toEqual({ type: 'won', seat: 3, from: 1, tile: kindOf('1b'), way: 0 });
  });

  it('TB-13: a win goes before a group of somebody nearer', () => {
    const caller: Script = { rack: '111b 456789d 456c G', calls: [{ size: 4, jokers: 0 }] };
    const table = tableOf([{ ...idle('1b'), rack: IDLE_13 + ' 1b' }, caller, { rack: WAITING }, idle('')]);
    expect(playOut(table)).toMatchObject({ winner: 2, from: 0 });
  });

  it('TB-14: a concealed hand takes its last tile from a discard', () => {
    const table = tableOf([
      { ...idle('1c'), rack: IDLE_13 + ' 1c' },
      { rack: 'FF 111c 2222c 3333c' },
      idle(''),
      idle(''),
    ]);
    expect(playOut(table)).toMatchObject({ winner: 1, from: 0, way: 1 });
  });

  it('TB-16: a discarded joker is dead, whoever could use it', () => {
    const caller: Script = { rack: '111b 456789d 456c G', calls: [{ size: 4, jokers: 0 }] };
    const table = tableOf([{ rack: IDLE_13 + ' J', discards: 'J' }, { rack: WAITING }, caller, idle('')]);
    expect(playOut(table)).toMatchObject({ winner: -1, discards: 1 });
    expect(goneOf(table, 'J')).toBe(1);
  });
});

describe('groups laid open', () => {
  const FEEDER: Script = { rack: IDLE_13 + ' 1b', discards: '1b' };

  it('TB-11: the caller goes on without a draw, and who sits between is passed over', () => {
    const caller: Script = { rack: '111b 456789d 456c G', discards: '4d 5d', calls: [{ size: 4, jokers: 0 }] };
    const table = tableOf([FEEDER, idle(''), caller, idle('6d')], '6d');
    expect(playOut(table)).toMatchObject({ winner: -1, draws: 1, discards: 3 });
    expect(table.trace?.map((event) => [event.type, 'seat' in event ? event.seat : -1])).toEqual([
      ['discarded', 0],
      ['called', 2],
      ['discarded', 2],
      ['drew', 3],
      ['discarded', 3],
      ['wallGame', -1],
    ]);
    expect(table.trace?.[1]).toMatchObject({ from: 0, tile: kindOf('1b'), group: Array(4).fill(kindOf('1b')) });
    expect(goneOf(table, '1b')).toBe(4);
    expect(playerAt(table, 2).hand.size).toBe(9);
  });

  it('TB-11, TB-19: jokers fill a group; the called tile is always natural', () => {
    const caller: Script = { rack: '1b 456789d 456c G JJ', calls: [{ size: 4, jokers: 2 }] };
    const table = tableOf([FEEDER, caller, idle(''), idle('')]);
    playOut(table);
    const one = kindOf('1b');
    expect(table.trace?.[1]).toMatchObject({ type: 'called', group: [one, one, JOKER, JOKER] });
    expect([goneOf(table, '1b'), goneOf(table, 'J')]).toEqual([2, 2]);
  });

  it('TB-17: what is left of the hand is drawn, and the group counts among its fourteen tiles', () => {
    const caller: Script = { rack: 'FF 111b 2222b 333b 4d', discards: '4d', calls: [{ size: 4, jokers: 0 }] };
    const table = tableOf([FEEDER, caller, idle('5d'), idle('6d')], '5d 6d 9d 3b');
    expect(playOut(table)).toMatchObject({ winner: 1, from: -1, draws: 4, way: 0 });
  });

  it('TB-11, TB-12: East calls and wins like all others', () => {
    const east: Script = { rack: '111b 456789d 456c GR', discards: '4d 5d', calls: [{ size: 4, jokers: 0 }] };
    const called = tableOf([east, idle('1b'), idle(''), idle('')], '1b');
    playOut(called);
    expect(called.trace?.find(({ type }) => type === 'called')).toMatchObject({ seat: 0, from: 1 });
    const waiting: Script = { rack: 'FF 111b 2222b 3333b 4d', discards: '4d' };
    expect(playOut(tableOf([waiting, idle('1b'), idle(''), idle('')], '1b'))).toMatchObject({ winner: 0, from: 1 });
  });

  it('nobody is asked who could lay no group', () => {
    const caller: Script = { rack: '1b 456789d 45678c G', calls: [{ size: 3, jokers: 0 }] };
    expect(playOut(tableOf([FEEDER, caller, idle(''), idle('')]))).toMatchObject({ winner: -1, discards: 1 });
  });

  it.each([
    ['a group of two', { size: 2, jokers: 0 }, /no group/],
    ['fewer than no jokers', { size: 4, jokers: -1 }, /no group/],
    ['jokers alone beside the discard, and more', { size: 3, jokers: 3 }, /no group/],
    ['naturals that are not in the rack', { size: 5, jokers: 0 }, /not in the rack/],
    ['jokers that are not in the rack', { size: 4, jokers: 2 }, /not in the rack/],
    ['a group that no open hand holds', { size: 3, jokers: 0 }, /TB-15/],
  ])('TB-11, TB-15: %s is caught', (_, offer, message) => {
    const caller: Script = { rack: '111b 456789d 456c J', calls: [offer] };
    expect(() => playOut(tableOf([FEEDER, caller, idle(''), idle('')]))).toThrow(message);
  });

  it('TB-14: a group of a concealed hand is caught', () => {
    const feeder: Script = { rack: IDLE_13 + ' 1c', discards: '1c' };
    const caller: Script = { rack: '111c 456789d 4567b', calls: [{ size: 4, jokers: 0 }] };
    expect(() => playOut(tableOf([feeder, caller, idle(''), idle('')]))).toThrow(/TB-15/);
  });
});

describe('jokers taken back', () => {
  const FEEDER: Script = { rack: IDLE_13 + ' 1b', discards: '1b' };
  const CALLER: Script = { rack: '11b 456789d 456c G J', discards: '4d', calls: [{ size: 4, jokers: 1 }] };

  it('TB-10: after the own draw a natural tile takes a joker of any exposure, and the joker is shown no more', () => {
    const swapper: Script = { rack: IDLE_13, discards: '5d', swaps: true };
    const table = tableOf([FEEDER, CALLER, swapper, idle('')], '1b');
    playOut(table);
    expect(table.trace).toContainEqual({ type: 'swapped', seat: 2, owner: 1, tile: kindOf('1b') });
    expect(playerAt(table, 1).hand.exposures).toEqual([{ kind: kindOf('1b'), size: 4, jokers: 0 }]);
    expect(playerAt(table, 2).hand.counts[JOKER]).toBe(1);
    expect(playerAt(table, 2).hand.size).toBe(13);
    expect([goneOf(table, '1b'), goneOf(table, 'J')]).toEqual([4, 0]);
  });

  it('TB-10: nobody must, and without the tile nobody can', () => {
    for (const [swaps, drawn] of [
      [false, '1b'],
      [true, '2b'],
    ] as const) {
      const table = tableOf([FEEDER, CALLER, { rack: IDLE_13, discards: '5d', swaps }, idle('')], drawn);
      playOut(table);
      expect(table.trace?.some(({ type }) => type === 'swapped')).toBe(false);
    }
  });

  it('TB-10, TB-17: a joker taken back may complete the hand, and a hand that is complete takes none', () => {
    const waiting: Script = { rack: 'F 1b 2222b 333b JJJJ', swaps: true };
    const table = tableOf([FEEDER, CALLER, waiting, idle('')], 'F');
    expect(playOut(table)).toMatchObject({ winner: 2, from: -1 });
    expect(table.trace?.some(({ type }) => type === 'swapped')).toBe(false);
    const short: Script = { rack: '1b NNNN EEE WWW SS', swaps: true };
    const other = tableOf([FEEDER, CALLER, short, idle('')], 'S');
    expect(playOut(other)).toMatchObject({ winner: 2, from: -1, way: 2 });
    expect(other.trace?.slice(-2)).toEqual([
      { type: 'swapped', seat: 2, owner: 1, tile: kindOf('1b') },
      { type: 'won', seat: 2, way: 2 },
    ]);
  });

  it('TB-10: a group without jokers gives none, though a fourth tile is there', () => {
    const feeder: Script = { rack: IDLE_13 + ' E', discards: 'E' };
    const caller: Script = { rack: 'EE 456789d 4567c G', discards: '4d', calls: [{ size: 3, jokers: 0 }] };
    const swapper: Script = { rack: IDLE_13.replace('G', 'E'), discards: '5d', swaps: true };
    const table = tableOf([feeder, caller, swapper, idle('')], '1d');
    playOut(table);
    expect(table.trace?.map(({ type }) => type)).not.toContain('swapped');
    expect(playerAt(table, 2).hand.counts[kindOf('E')]).toBe(1);
  });

  it('TB-10: after a call, too, a joker is taken back before the discard', () => {
    const own: Script = { rack: '11b 2b 456789d 45c JJ', calls: [{ size: 4, jokers: 2 }], discards: '2b', swaps: true };
    const table = tableOf([FEEDER, own, idle(''), idle('')]);
    playOut(table);
    expect(table.trace?.map(({ type }) => type)).toEqual(['discarded', 'called', 'swapped', 'discarded', 'wallGame']);
    expect(playerAt(table, 1).hand.exposures).toEqual([{ kind: kindOf('1b'), size: 4, jokers: 1 }]);
    expect([goneOf(table, '1b'), goneOf(table, 'J')]).toEqual([3, 1]);
  });

  it('TB-10, TB-17: such a joker may complete the hand', () => {
    const feeder: Script = { rack: IDLE_13 + ' E', discards: 'E' };
    const caller: Script = { rack: 'EE J 1b 456789d 456c', calls: [{ size: 3, jokers: 1 }], discards: '1b' };
    const own: Script = { rack: 'FF 11b J 2222b 333b E', calls: [{ size: 4, jokers: 1 }], swaps: true };
    const table = tableOf([feeder, caller, idle(''), own]);
    expect(playOut(table)).toMatchObject({ winner: 3, from: -1, way: 0 });
    expect(table.trace?.slice(-3)).toMatchObject([
      { type: 'called', seat: 3, from: 1 },
      { type: 'swapped', seat: 3, owner: 1, tile: kindOf('E') },
      { type: 'won', seat: 3 },
    ]);
  });
});
