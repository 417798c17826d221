import { describe, expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { EAST, gave, received, refusal, SOUTH } from './helpers.ts';

const dealt = (deal: GameEvent, tiles: string): GameEvent[] => [{ ...deal, tiles } as GameEvent];

/** What a person may mistype, each with the one sentence that answers it. */
const CASES: [string, GameEvent[], string, string][] = [
  [
    'five of a kind',
    dealt(SOUTH, 'NNNNN FF 0 1389b 2c'),
    'bad-tiles',
    'There are 5 north winds (N), but the set has only 4: take 1 away.',
  ],
  [
    '12 tiles',
    dealt(SOUTH, 'JJ FF NE 0 1389b 2c'),
    'wrong-count',
    'South is dealt 13 tiles, but these are 12: add 1 tile.',
  ],
  [
    '15 tiles',
    dealt(EAST, 'JJ FF NE 0 1389b 25c 78d'),
    'wrong-count',
    'East is dealt 14 tiles, but these are 15: take 1 tile away.',
  ],
  [
    'an unknown symbol',
    dealt(SOUTH, 'JJ X'),
    'bad-tiles',
    '"X" at place 4 is not a tile: use 1 to 9 with b, c or d, and N E W S, G R 0, F or J.',
  ],
  ['a joker in a pass', [SOUTH, gave('J N E')], 'joker-passed', 'A joker is never passed: choose another tile.'],
  [
    'tiles given that are not there',
    [SOUTH, gave('NN E')],
    'not-in-rack',
    'Your rack has 1 north wind, not 2: choose fewer.',
  ],
  ['two tiles given', [SOUTH, gave('N E')], 'wrong-count', 'A pass has three tiles: you chose 2.'],
  [
    'a tile received that the set no longer has',
    [...dealt(SOUTH, 'NNN FF E 0 1389b 25c'), gave('N E 0'), received('N'), received('N')],
    'not-in-set',
    'The set has only 4 north winds, and the others are accounted for: check this tile.',
  ],
  ['a second deal', [SOUTH, SOUTH], 'already-dealt', 'The deal is already logged: undo it, or begin a new game.'],
  ['a pass before the deal', [gave('N E 0')], 'not-dealt', 'No deal is logged yet: enter the tiles dealt first.'],
];

describe('what is typed wrongly is refused with one clear sentence', () => {
  test.each(CASES)('%s', (_, events, code, message) => {
    expect(refusal(...events)).toEqual([code, message]);
  });
});

const ROUND: GameEvent[] = [
  SOUTH,
  gave('N E 0'),
  received('444d'),
  gave('444d', 'across'),
  received('66d 7d', 'across'),
  gave('66d 7d', 'left'),
  received('9c 99d', 'left'),
];

describe('the exchange inside a game', () => {
  test('a second round after a stop is refused', () => {
    const events: GameEvent[] = [
      ...ROUND,
      { type: 'stopped', before: 'left2' },
      { type: 'gave', step: 'left2', tiles: '9c 99d' },
    ];
    expect(refusal(...events)).toEqual([
      'stopped',
      'The second round was stopped, so there is no second left pass: undo the stop first.',
    ]);
  });
  test('a courtesy of four is refused', () => {
    const events: GameEvent[] = [
      ...ROUND,
      { type: 'stopped', before: 'left2' },
      { type: 'gave', step: 'courtesy', tiles: '9c 99d 2c' },
    ];
    expect(refusal(...events)).toEqual(['courtesy-count', 'A courtesy pass has none to three tiles, not 4.']);
  });
  test('a blind pass where there is none is refused', () => {
    expect(refusal(SOUTH, { type: 'gave', step: 'right', tiles: 'N E', blind: 1 })).toEqual([
      'no-blind',
      'A blind pass is only for the first left and the second right: choose three of your tiles.',
    ]);
  });
  test('passing after play has begun is refused', () => {
    const events: GameEvent[] = [
      ...ROUND,
      { type: 'discarded', seat: 'East', tile: 'W' },
      { type: 'stopped', before: 'left2' },
    ];
    expect(refusal(...events)[0]).toBe('play-begun');
  });
});
