import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { keptCard } from '../../core/game/kept-card.ts';
import { legalEvents } from '../../core/game/legal.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { unseenTiles } from '../../core/game/hand-view.ts';
import { stageOf } from '../../core/game/stage.ts';
import { EAST, gave, play, received, refusal, SOUTH } from './helpers.ts';

const threw = (seat: 'East' | 'South' | 'West' | 'North', tile: string): GameEvent => ({
  type: 'discarded',
  seat,
  tile,
});

describe('a tile that can not be read is refused in every event that names one', () => {
  const events: GameEvent[] = [
    gave('N E Q'),
    { type: 'drew', tile: 'Q' },
    threw('West', 'Q'),
    { type: 'called', seat: 'West', tile: 'Q', group: 'NNN' },
    { type: 'called', seat: 'West', tile: 'N', group: 'QQQ' },
    { type: 'swapped', seat: 'West', owner: 'South', tile: 'Q' },
    { type: 'ended', result: 'won', winner: 'West', tile: 'Q' },
    { type: 'drew', tile: 'N E' },
    { type: 'drew', tile: '' },
  ];
  test.each(events)('%j', (event) => {
    expect(refusal(SOUTH, event)[0]).toBe('bad-tiles');
  });
  test('among the tiles received', () => {
    expect(refusal(SOUTH, gave('N E 0'), received('Q'))[0]).toBe('bad-tiles');
  });
});

describe('before the deal', () => {
  test.each<GameEvent>([
    { type: 'drew', tile: 'N' },
    { type: 'stopped', before: 'left2' },
    { type: 'received', step: 'right', tiles: 'N' },
    { type: 'swapped', seat: 'West', owner: 'South', tile: 'N' },
  ])('%j is refused', (event) => {
    expect(refusal(event)[0]).toBe('not-dealt');
  });
  test('the whole set is unseen and may come, and only a deal is legal', () => {
    const state = play();
    expect([unseenTiles(state).size, legalEvents(state).canCome.size]).toEqual([152, 152]);
    expect(legalEvents(state)).toMatchObject({ deal: true, give: null, draw: false, discard: [], end: true });
  });
});

describe('numbers in sentences', () => {
  test('two tiles too many', () => {
    expect(refusal({ ...SOUTH, tiles: 'JJ FF NE 0 1389b 255c 7d' } as GameEvent)[1]).toBe(
      'South is dealt 13 tiles, but these are 15: take 2 tiles away.',
    );
  });
  test('one tile still to come', () => {
    expect(refusal(SOUTH, gave('N E 0'), received('44d'), gave('44d 1b', 'across'))[1]).toBe(
      'One tile of the first right pass is still to come: enter what you received first.',
    );
  });
  test('two of a kind in the rack, three wanted', () => {
    expect(refusal(SOUTH, gave('FFF'))[1]).toBe('Your rack has 2 flowers, not 3: choose fewer.');
  });
  test('a blind pass of too many', () => {
    const left: GameEvent[] = [
      SOUTH,
      gave('N E 0'),
      received('444d'),
      gave('444d', 'across'),
      received('666d', 'across'),
    ];
    expect(refusal(...left, { type: 'gave', step: 'left', tiles: '66d', blind: 2 })[1]).toBe(
      'A pass has three tiles: you chose 2 and 2 unseen.',
    );
  });
  test('leaving the courtesy out too early', () => {
    expect(refusal(SOUTH, { type: 'stopped', before: 'courtesy' })[1]).toBe(
      'The courtesy pass can only be left out when it is due.',
    );
  });
});

describe('more stages in plain words', () => {
  const round: GameEvent[] = [
    SOUTH,
    gave('N E 0'),
    received('444d'),
    gave('444d', 'across'),
    received('666d', 'across'),
    gave('666d', 'left'),
    received('777d', 'left'),
    { type: 'stopped', before: 'left2' },
    { type: 'stopped', before: 'courtesy' },
  ];
  test.each<[readonly GameEvent[], string]>([
    [round, 'Passes done'],
    [round.slice(0, -1), 'Courtesy pass: choose what to give'],
    [[{ type: 'ended', result: 'won', winner: 'West', by: 'discard' }], 'West won by a discard'],
    [[{ type: 'ended', result: 'won', winner: 'West' }], 'West won'],
  ])('%#', (events, stage) => {
    expect(stageOf(play(...events))).toBe(stage);
  });
  test('nothing may be given then, but the dealer may discard', () => {
    const legal = legalEvents(play(...round));
    expect([legal.give, legal.stop, legal.receive]).toEqual([null, null, null]);
    expect(legalEvents(play(EAST)).draw).toBe(false);
    expect(legalEvents(play(EAST)).call).toEqual(['South', 'West', 'North']);
  });
});

describe('play', () => {
  test('a tile not in the rack can not be discarded from 14, nor swapped', () => {
    expect(refusal(EAST, threw('East', 'W'))[0]).toBe('not-in-rack');
    const shown: GameEvent = { type: 'called', seat: 'West', tile: '7c', group: '77c J' };
    expect(refusal(SOUTH, shown, { type: 'swapped', seat: 'South', owner: 'West', tile: '7c' })[0]).toBe('not-in-rack');
  });
  test('a call names another discarder than the last: that discard stays on the table', () => {
    const call: GameEvent = { type: 'called', seat: 'North', tile: '7c', group: '77c J', from: 'East' };
    expect(play(SOUTH, threw('West', '7c'), call).discards).toHaveLength(1);
  });
  test('a swap takes the joker of that group alone', () => {
    const shown = ['7c', '8c'].map((tile): GameEvent => ({
      type: 'called',
      seat: 'West',
      tile,
      group: `${tile}${tile}J`,
    }));
    const state = play(SOUTH, ...shown, { type: 'swapped', seat: 'North', owner: 'West', tile: '8c' });
    expect(state.exposures.map(({ jokers }) => jokers)).toEqual([1, 0]);
  });
});

test('the card kept with a game is read anew', () => {
  const card = { format: 'windrow.card', version: 1, title: 'Kept', season: '2026', sections: [] };
  expect(expectValue(keptCard({ card } as unknown as GameRecord)).card.title).toBe('Kept');
  expect(keptCard({ card: {} } as unknown as GameRecord).ok).toBe(false);
});
