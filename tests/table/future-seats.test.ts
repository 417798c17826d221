import { describe, expect, it } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Pass } from '../../core/exchange/state.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import { fetchReturned, layKnownDeal } from '../../core/future/known-deal.ts';
import { type History, OtherSeat, OwnSeat } from '../../core/future/seats.ts';
import type { Offer, Policy } from '../../core/table/policy.ts';
import { makeTable, playerAt, type Table } from '../../core/table/table.ts';
import { JOKER, type Kind, kindOf, SET_SIZE } from '../../core/tiles/kinds.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { demoTable } from './cards.ts';
import { tiles } from './positions.ts';

const kinds = (text: string): Kind[] => expectValue(parseTileList(text));

/** A policy that gives what it is told, and writes down what it was asked. */
class Told implements Policy {
  readonly asked: string[] = [];
  readonly #gives: readonly Kind[];
  readonly #goesOn: boolean;

  constructor(gives = '', goesOn = true) {
    this.#gives = kinds(gives);
    this.#goesOn = goesOn;
  }

  pass(_view: unknown, step: PassStep, blind: boolean, out: Kind[]): number {
    this.asked.push(`pass ${step} ${blind ? 'blind' : 'seen'}`);
    return this.#write(out);
  }

  goesOn(): boolean {
    this.asked.push('goesOn');
    return this.#goesOn;
  }

  courtesy(_view: unknown, out: Kind[]): number {
    this.asked.push('courtesy');
    return this.#write(out);
  }

  discard(): Kind {
    return kindOf('9d');
  }

  call(_view: unknown, kind: Kind, offer: Offer): boolean {
    offer.size = 4;
    return kind === kindOf('1b');
  }

  swap(_view: unknown, kind: Kind): boolean {
    return kind === kindOf('2b');
  }

  #write(out: Kind[]): number {
    for (const [place, kind] of this.#gives.entries()) out[place] = kind;
    return this.#gives.length;
  }
}

const passOf = (step: PassStep, given: string): Pass => ({
  step,
  given: tiles(given),
  blind: 3 - tiles(given).size,
  received: Tiles.none,
});

function historyOf(due: PassStep, more: Partial<History> = {}): History & { readonly begun: PassStep[] } {
  const begun: PassStep[] = [];
  return {
    passes: [],
    stopped: false,
    offered: undefined,
    ...more,
    due,
    begun,
    beforeStep: (step) => begun.push(step),
  };
}

/** A table at which each seat holds these tiles. */
function tableOf(...racks: readonly string[]): Table {
  const table = makeTable(demoTable, Array<Policy>(4).fill(new Told()));
  for (const [seat, rack] of racks.entries()) {
    for (const kind of tiles(rack).toKinds()) playerAt(table, seat).hand.add(kind);
  }
  return table;
}

const { view } = playerAt(tableOf('123b 456c 7899d NES'), 0);

function given(seat: Policy, step: PassStep, at = view): Kind[] {
  const out: Kind[] = [];
  out.length = seat.pass(at, step, step === 'left' || step === 'right2', out);
  return out;
}

function offered(seat: Policy, at = view): Kind[] {
  const out: Kind[] = [];
  out.length = seat.courtesy(at, out);
  return out;
}

describe("FU-7: the user's seat", () => {
  it('gives what it gave, then the choice on trial, then what its policy says', () => {
    const policy = new Told('7d 8d 9d');
    const history = historyOf('across', { passes: [passOf('right', '123b')] });
    const own = new OwnSeat(policy, history);
    own.choice = { type: 'give', tiles: kinds('456c') };
    expect(given(own, 'right')).toEqual(kinds('123b'));
    expect(given(own, 'across')).toEqual(kinds('456c'));
    expect(policy.asked).toEqual([]);
    expect(given(own, 'left')).toEqual(kinds('789d'));
    expect(policy.asked).toEqual(['pass left blind']);
    expect(history.begun).toEqual(['right', 'across', 'left']);
  });

  it('goes on or stops as chosen where that is due, as known where it lies behind, else by its policy', () => {
    const goesOn = (
      due: PassStep,
      stopped: boolean,
      choice: OwnSeat['choice'],
      policy = new Told('', false),
    ): boolean => {
      const own = new OwnSeat(policy, historyOf(due, { stopped }));
      own.choice = choice;
      return own.goesOn(view);
    };
    const give = { type: 'give', tiles: [] } as const;
    expect([goesOn('left2', false, give), goesOn('left2', false, { type: 'stop' })]).toEqual([true, false]);
    for (const step of ['across2', 'right2', 'courtesy'] as const) {
      expect([goesOn(step, false, give), goesOn(step, true, give)]).toEqual([true, false]);
    }
    for (const step of ['right', 'across', 'left'] as const) {
      expect([goesOn(step, false, give), goesOn(step, false, give, new Told())]).toEqual([false, true]);
    }
  });

  it('offers the choice in the courtesy that is due, nothing if it stops there, and before that by its policy', () => {
    const due = new OwnSeat(new Told('1b'), historyOf('courtesy'));
    expect(offered(due)).toEqual([]);
    due.choice = { type: 'give', tiles: kinds('9d') };
    expect(offered(due)).toEqual(kinds('9d'));
    const before = new OwnSeat(new Told('1b'), historyOf('left2'));
    before.choice = { type: 'give', tiles: kinds('9d') };
    expect(offered(before)).toEqual(kinds('1b'));
  });

  it('TB-4: passes no joker, whoever tells it to', () => {
    const own = new OwnSeat(new Told(), historyOf('right'));
    own.choice = { type: 'give', tiles: [JOKER] };
    expect(() => given(own, 'right')).toThrow(/joker/);
  });

  it('discards, calls and swaps by its policy', () => {
    const own = new OwnSeat(new Told(), historyOf('right'));
    const offer = { size: 0, jokers: 0 };
    expect(own.discard(view)).toBe(kindOf('9d'));
    expect([own.call(view, kindOf('1b'), offer), own.call(view, kindOf('2b'), offer)]).toEqual([true, false]);
    expect(offer.size).toBe(4);
    expect([own.swap(view, kindOf('1b')), own.swap(view, kindOf('2b'))]).toEqual([false, true]);
  });
});

describe('FU-7: another seat', () => {
  const seat = (policy: Policy, history: History, gifts: readonly (readonly [PassStep, string])[] = []): OtherSeat =>
    new OtherSeat(policy, history, new Map(gifts.map(([step, text]) => [step, kinds(text)])));

  it('gives what it is known to have given, and by its policy where nothing is known', () => {
    const policy = new Told('1b 2b 3b');
    const history = historyOf('left');
    const other = seat(policy, history, [['right', '456c']]);
    expect(given(other, 'right')).toEqual(kinds('456c'));
    expect(policy.asked).toEqual([]);
    expect(given(other, 'across')).toEqual(kinds('123b'));
    expect(policy.asked).toEqual(['pass across seen']);
    expect(history.begun).toEqual(['right', 'across']);
  });

  it('fills up what is known with what its policy would give, the known tiles last, none more often than held', () => {
    // The user handed on the first tiles of this pass unseen and kept 4c alone.
    const policy = new Told('9d 4c 9d');
    expect(given(seat(policy, historyOf('left'), [['left', '4c']]), 'left')).toEqual(kinds('9d 9d 4c'));
    expect(policy.asked).toEqual(['pass left seen']);
    // Its policy would give the one 4c that is known to go: other tiles of the rack fill up, no joker.
    const { view: few } = playerAt(tableOf('JJJ 4c N 1b'), 0);
    expect(given(seat(new Told('4c 4c 4c'), historyOf('left'), [['left', '4c']]), 'left', few)).toEqual(
      kinds('N 1b 4c'),
    );
    expect(given(seat(new Told('1b'), historyOf('left'), [['left', '4c']]), 'left', few)).toEqual(kinds('1b N 4c'));
    expect(given(seat(new Told('1b 4c 9d'), historyOf('left'), [['left', '1b 4c']]), 'left', few)).toEqual(
      kinds('N 1b 4c'),
    );
  });

  it('goes on by its policy while that lies ahead; afterwards it is known', () => {
    for (const step of ['right', 'across', 'left'] as const) {
      expect(seat(new Told('', false), historyOf(step)).goesOn(view)).toBe(false);
    }
    for (const step of ['left2', 'across2', 'right2', 'courtesy'] as const) {
      expect(seat(new Told('', false), historyOf(step)).goesOn(view)).toBe(true);
    }
  });

  it('asks for as many tiles in the courtesy as it is known to, its three least useful first', () => {
    const policy = new Told('7d 8d 9d');
    expect(offered(seat(policy, historyOf('courtesy')))).toEqual(kinds('789d'));
    expect(offered(seat(policy, historyOf('courtesy', { offered: 2 })))).toEqual(kinds('78d'));
    expect(offered(seat(policy, historyOf('courtesy', { offered: 0 })))).toEqual([]);
    expect(policy.asked).toEqual(['courtesy', 'pass courtesy seen', 'pass courtesy seen']);
  });
});

describe('FU-7: a tile that came back', () => {
  const rackOf = (table: Table, seat: number): string => Tiles.fromCounts(playerAt(table, seat).hand.counts).toString();
  const gift = (giver: number, text: string) => ({ step: 'across' as const, giver, tiles: kinds(text), kept: [] });

  it('goes from whoever has it to its giver, for a tile that is no part of the gift and no joker', () => {
    const table = tableOf('9d', 'N 1c', 'N 5b', 'J 7c 8c 3d');
    fetchReturned(table, 1, gift(3, 'N 7c 8c'));
    expect([0, 1, 2, 3].map((seat) => rackOf(table, seat))).toEqual(
      ['9d', 'N 1c', '5b 3d', 'J N 7c 8c'].map((text) => tiles(text).toString()),
    );
  });

  it('stays where it is if the giver has it; a second one is fetched for itself', () => {
    const table = tableOf('N 1b', '1c', '9d', 'N 7c 3d');
    fetchReturned(table, 1, gift(3, 'N 7c'));
    expect(rackOf(table, 3)).toBe(tiles('N 7c 3d').toString());
    fetchReturned(table, 1, gift(3, 'NN 7c'));
    expect(rackOf(table, 3)).toBe(tiles('NN 7c').toString());
    expect(rackOf(table, 0)).toBe(tiles('1b 3d').toString());
  });

  it('can lie nowhere but in another rack, and only for a tile to spare', () => {
    expect(() => fetchReturned(tableOf('1b', 'N', '2b', '3d'), 1, gift(3, 'N'))).toThrow(/came back/);
    expect(() => fetchReturned(tableOf('N', '1b', '2b', 'J'), 1, gift(3, 'N'))).toThrow(/came back/);
  });
});

describe('FU-7: a deal that agrees with what is known', () => {
  it('leaves every other seat three tiles to pass; the wall is what is left, and likings are drawn', () => {
    const pool = kinds('JJJ 123b 456c 789d NE');
    const table = tableOf();
    const likings = new Set<number>();
    for (let seed = 0; seed < 200; seed += 1) {
      layKnownDeal(
        table,
        { seat: 1, ownRack: tiles('FF'), gifts: [], dealt: [3, 0, 4, 3], pool },
        randomFromSeed(seed),
      );
      const racks = table.players.map(({ hand }) => Tiles.fromCounts(hand.counts));
      expect(racks.map(({ size }) => size)).toEqual([3, 2, 4, 3]);
      for (const seat of [0, 2, 3]) expect(racks[seat]!.size - racks[seat]!.count(JOKER)).toBeGreaterThanOrEqual(3);
      const wall = table.wall.slice(table.next);
      expect(table.next).toBe(SET_SIZE - (pool.length - 10));
      expect(racks.reduce((sum, rack) => sum.plus(rack), Tiles.of(wall)).equals(Tiles.of(pool).plus(tiles('FF')))).toBe(
        true,
      );
      for (const player of table.players) for (const liking of player.likings) likings.add(liking);
    }
    expect(likings.size).toBe(200 * 4 * 36);
  });
});
