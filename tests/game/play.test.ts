import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { legalEvents } from '../../core/game/legal.ts';
import { exposedGroups, handSize, unseenTiles } from '../../core/game/hand-view.ts';
import { stageOf } from '../../core/game/stage.ts';
import { stateOf } from '../../core/game/state.ts';
import { kindOf } from '../../core/tiles/kinds.ts';
import { formatTileList, formatTiles } from '../../core/tiles/text.ts';
import { EAST, gave, play, received, refusal, SOUTH } from './helpers.ts';

// How a table plays is common practice, from memory, no source.

const drew = (tile: string): GameEvent => ({ type: 'drew', tile });
const threw = (seat: 'East' | 'South' | 'West' | 'North', tile: string): GameEvent => ({
  type: 'discarded',
  seat,
  tile,
});

describe('own turns', () => {
  test('a draw makes 14, a discard 13 again', () => {
    const state = play(SOUTH, drew('7d'), threw('South', 'N'));
    expect(formatTiles(state.rack)).toBe('JJ FF E 0 1389b 25c 7d');
    expect(formatTileList(state.arrival)).toBe('JJ FF E 0 1389b 25c 7d');
    expect(state.discards).toEqual([{ seat: 'South', kind: kindOf('N') }]);
  });
  test('a second draw before the discard is refused', () => {
    expect(refusal(SOUTH, drew('7d'), drew('7d'))).toEqual([
      'wrong-count',
      'You hold 14 tiles: discard one before you draw.',
    ]);
  });
  test('the dealer discards first, without a draw', () => {
    expect(play(EAST, threw('East', '7d')).rack.size).toBe(13);
  });
  test('with 13 tiles, a discard that is not in the rack counts as drawn and discarded at once', () => {
    const state = play(SOUTH, threw('South', 'W'));
    expect(state.rack.size).toBe(13);
    expect(state.discards).toHaveLength(1);
  });
  test('with 13 tiles, a discard from the rack asks for the draw', () => {
    expect(refusal(SOUTH, threw('South', 'N'))).toEqual([
      'wrong-count',
      'You hold 13 tiles: enter the tile you drew before you discard the north wind.',
    ]);
  });
  test('play waits for the tiles of a pass', () => {
    expect(refusal(SOUTH, gave('N E 0'), received('4d'), threw('West', '1c'))).toEqual([
      'still-to-come',
      'Your rack still waits for two tiles of the first right pass: enter what you received first.',
    ]);
  });
});

describe("others' discards and exposures only thin what is unseen", () => {
  test('a discard is gone from the unseen', () => {
    const before = play(SOUTH);
    const after = play(SOUTH, threw('West', '1c'), threw('North', 'J'));
    expect(unseenTiles(before).minus(unseenTiles(after)).toString()).toBe('J 1c');
    expect(after.rack.equals(before.rack)).toBe(true);
  });
  test('the unseen is the set less rack, given and gone', () => {
    const state = play(SOUTH, gave('N E 0'), received('444d'), threw('West', '1c'));
    expect(unseenTiles(state).size).toBe(152 - 13 - 3 - 1);
  });
  test('a fifth of a kind on the table is refused', () => {
    const four = ['West', 'North', 'East', 'West'].map((seat) => threw(seat as 'West', '1c'));
    expect(refusal(SOUTH, ...four, threw('North', '1c'))).toEqual([
      'not-in-set',
      'The set has only 4 one craks, and the others are accounted for: check this tile.',
    ]);
  });
  test('a tile that was given away may be thrown later and is counted once', () => {
    const state = play(
      SOUTH,
      gave('N E 0'),
      received('444d'),
      ...['East', 'West', 'North'].map((seat) => threw(seat as 'West', 'N')),
      threw('East', 'N'),
    );
    expect(unseenTiles(state).count(kindOf('N'))).toBe(0);
  });
});

describe('calls', () => {
  const call: GameEvent = { type: 'called', seat: 'South', tile: '8b', group: '88b J' };
  test('the call takes the discard off the table and the rest out of the rack', () => {
    const state = play(SOUTH, threw('West', '8b'), call);
    expect(state.discards).toEqual([]);
    expect(formatTiles(state.rack)).toBe('J FF NE 0 139b 25c');
    expect(exposedGroups(state, 'South')).toEqual([{ kind: kindOf('8b'), size: 3, jokers: 1 }]);
    expect(handSize(state)).toBe(14);
    expect(unseenTiles(state).count(kindOf('8b'))).toBe(2);
  });
  test('a discard that was not logged is counted by its call', () => {
    expect(unseenTiles(play(SOUTH, call)).count(kindOf('8b'))).toBe(2);
  });
  const cases: [string, GameEvent[], string][] = [
    ['a pair can only win', [{ ...call, group: '88b' }], 'bad-group'],
    ['a mixed group', [{ ...call, group: '8b 9b J' }], 'bad-group'],
    ['the called tile must be among the group', [{ ...call, group: 'JJ J' }], 'bad-group'],
    ['a discarded joker is dead', [{ ...call, tile: 'J', group: 'JJJ' }], 'bad-group'],
    ['tiles that are not in the rack', [{ ...call, group: '8888b' }], 'not-in-rack'],
    ['an own discard', [drew('8b'), threw('South', '8b'), call], 'own-discard'],
    ['with 14 tiles in hand', [drew('8b'), call], 'wrong-count'],
  ];
  test.each(cases)('%s', (_, events, code) => {
    expect(refusal(SOUTH, ...events)[0]).toBe(code);
  });
  test('a seat can not show more than 14 tiles', () => {
    const shown = ['1', '2', '3', '4'].map((n): GameEvent => ({
      type: 'called',
      seat: 'West',
      tile: `${n}d`,
      group: `${n}${n}${n}${n}d`,
    }));
    expect(refusal(SOUTH, ...shown)).toEqual([
      'bad-group',
      'West would then show 16 tiles, but a hand has 14: check the seat and the group.',
    ]);
    const groups = (...texts: string[]): GameEvent[] =>
      texts.map((group) => ({ type: 'called', seat: 'West', tile: group.replaceAll(/(\d)\1+/g, '$1'), group }));
    const open = groups('1111d', '2222d', '333d');
    expect(play(SOUTH, ...open, ...groups('444d')).exposures).toHaveLength(4);
    expect(refusal(SOUTH, ...open, ...groups('4444d'))[0]).toBe('bad-group');
  });
});

describe('joker swaps', () => {
  const shown: GameEvent = { type: 'called', seat: 'West', tile: '8b', group: '88b JJ' };
  test('own swap: the tile goes there, the joker comes', () => {
    const state = play(SOUTH, shown, { type: 'swapped', seat: 'South', owner: 'West', tile: '8b' });
    expect(formatTiles(state.rack)).toBe('JJJ FF NE 0 139b 25c');
    expect(exposedGroups(state, 'West')).toEqual([{ kind: kindOf('8b'), size: 4, jokers: 1 }]);
  });
  test("another's swap: the joker is known to be in a rack", () => {
    const before = play(SOUTH, shown);
    const after = play(SOUTH, shown, { type: 'swapped', seat: 'North', owner: 'West', tile: '8b' });
    expect(unseenTiles(before).minus(unseenTiles(after)).toString()).toBe('8b');
    expect(unseenTiles(after).count(kindOf('J'))).toBe(unseenTiles(before).count(kindOf('J')));
  });
  test('without such an exposure it is refused', () => {
    expect(refusal(SOUTH, { type: 'swapped', seat: 'South', owner: 'West', tile: '8b' })).toEqual([
      'no-exposure',
      'West shows no eight bam group with a joker: enter that group first.',
    ]);
  });
});

describe('the result', () => {
  const won: GameEvent = { type: 'ended', result: 'won', winner: 'West', by: 'discard', from: 'North' };
  test('a game may be just a result', () => {
    expect(stageOf(play({ ...won, seat: 'South' }))).toBe("West won by North's discard");
  });
  test('after it only notes are welcome', () => {
    expect(refusal(SOUTH, won, drew('1c'))).toEqual([
      'ended',
      'This game has ended: undo the result to go on with it.',
    ]);
    expect(play(SOUTH, won, { type: 'noted', text: 'well played', about: 0 }).notes).toHaveLength(1);
  });
  const cases: [string, GameEvent][] = [
    ['a win without a winner', { type: 'ended', result: 'won' }],
    ['a win by own draw with a discarder', { type: 'ended', result: 'won', winner: 'West', by: 'draw', from: 'East' }],
    ['a win by an own discard', { type: 'ended', result: 'won', winner: 'West', by: 'discard', from: 'West' }],
    ['a wall game with a winner', { type: 'ended', result: 'wall', winner: 'West' }],
    ['points below nothing', { type: 'ended', result: 'won', winner: 'West', points: -1 }],
    ['another seat than dealt', { type: 'ended', result: 'wall', seat: 'East' }],
  ];
  test.each(cases)('%s is refused', (_, event) => {
    expect(refusal(SOUTH, event)[0]).toBe('bad-result');
  });
  test.each([
    ['', undefined],
    ['about nothing', 3],
    ['about itself', 1],
    ['about what was before the first', -1],
    ['about half of an event', 0.5],
  ])('the note "%s" about %s is refused', (text, about) => {
    const event: GameEvent = about === undefined ? { type: 'noted', text } : { type: 'noted', text, about };
    expect(refusal(SOUTH, event)[0]).toBe('bad-note');
  });
});

describe('the stage in plain words', () => {
  const cases: [GameEvent[], string][] = [
    [[], 'Not dealt yet'],
    [[SOUTH], 'First right pass: choose what to give'],
    [[SOUTH, gave('N E 0')], 'First right pass: three tiles to come'],
    [[SOUTH, gave('N E 0'), received('44d')], 'First right pass: one tile to come'],
    [[SOUTH, drew('7d')], 'Play'],
    [[SOUTH, { type: 'ended', result: 'wall' }], 'Wall game'],
    [[SOUTH, { type: 'ended', result: 'abandoned' }], 'Abandoned'],
    [[SOUTH, { type: 'ended', result: 'won', winner: 'East', by: 'draw' }], 'East won by own draw'],
    // To South it is not South who won.
    [[SOUTH, { type: 'ended', result: 'won', winner: 'South', by: 'draw' }], 'You won by own draw'],
    [
      [SOUTH, { type: 'ended', result: 'won', winner: 'South', by: 'discard', from: 'West' }],
      "You won by West's discard",
    ],
    [
      [SOUTH, { type: 'ended', result: 'won', winner: 'West', by: 'discard', from: 'South' }],
      'West won by your discard',
    ],
    [[SOUTH, { type: 'ended', result: 'won', winner: 'South' }], 'You won'],
  ];
  test.each(cases)('%#', (events, stage) => {
    expect(stageOf(play(...events))).toBe(stage);
  });
});

describe('what may happen next, as data', () => {
  test('after the deal: a pass of three, no joker, or play', () => {
    const legal = legalEvents(play(SOUTH));
    expect(legal.give).toMatchObject({ step: 'right', least: 3, most: 3, blindUpTo: 0 });
    expect(legal.give?.givable.count(kindOf('J'))).toBe(0);
    expect([legal.deal, legal.receive, legal.stop, legal.draw, legal.end]).toEqual([false, null, null, true, true]);
  });
  test('while tiles are to come: those, and no joker among them', () => {
    const legal = legalEvents(play(SOUTH, gave('N E 0')));
    expect(legal.receive).toEqual({ step: 'right', toCome: 3 });
    expect([legal.give, legal.draw, legal.discard]).toEqual([null, false, []]);
    expect([legal.canCome.count(kindOf('J')), legal.canCome.count(kindOf('N'))]).toEqual([0, 3]);
  });
  test('own swaps are named', () => {
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '8b', group: '88b JJ' };
    expect(legalEvents(play(SOUTH, shown)).ownSwaps).toEqual([{ owner: 'West', kind: kindOf('8b') }]);
  });
  test('nothing after the end', () => {
    const legal = legalEvents(play(SOUTH, { type: 'ended', result: 'wall' }));
    expect([legal.draw, legal.end, legal.give, legal.discard, legal.call]).toEqual([false, false, null, [], []]);
  });
});

test('undo is dropping the last event: any shorter list of events is a game too', () => {
  const events = [
    SOUTH,
    gave('N E 0'),
    received('44d'),
    received('5d'),
    drew('7d'),
    threw('South', '7d'),
    threw('West', '1c'),
  ];
  for (const length of events.keys()) expect(stateOf(events.slice(0, length)).ok).toBe(true);
});
