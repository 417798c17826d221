import { expect, test } from 'vitest';
import type { GameEvent } from '../../core/game/events.ts';
import { deadKinds, handView } from '../../core/game/hand-view.ts';
import { withoutNames } from '../../core/game/evening.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { codeOf, kindOf } from '../../core/tiles/kinds.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { gave, play, received, SOUTH } from './helpers.ts';

const call: GameEvent = { type: 'called', seat: 'South', tile: '8b', group: '88b J' };
const threw = (seat: 'East' | 'West', tile: string): GameEvent => ({ type: 'discarded', seat, tile });

test('rack, gone and unseen are always the whole set', () => {
  const events = [
    SOUTH,
    gave('N E 0'),
    received('444d'),
    threw('West', 'N'),
    threw('West', '8b'),
    call,
    threw('East', 'N'),
  ];
  for (const length of events.keys()) {
    const { rack, gone, unseen } = handView(play(...events.slice(0, length + 1)));
    expect(rack.plus(gone).plus(unseen).equals(Tiles.fullSet)).toBe(true);
  }
});

test('own exposed groups are out of the rack, gone, and held by every hand to come', () => {
  const { rack, gone, exposed } = handView(play(SOUTH, call));
  expect(formatTiles(rack)).toBe('J FF NE 0 139b 25c');
  expect(formatTiles(gone)).toBe('J 88b');
  expect(exposed).toEqual([{ kind: kindOf('8b'), size: 3, jokers: 1 }]);
});

test('a kind is dead when all of it is seen', () => {
  const events = ['N', 'N', 'N'].map((tile) => threw('West', tile));
  expect(deadKinds(play(SOUTH, ...events)).map(codeOf)).toEqual(['N']);
});

test('names of players are removed and nothing else', () => {
  const rest = { id: 'a', place: 'lakeside library' };
  expect(withoutNames({ ...rest, players: { North: 'the host' } } as unknown as GameRecord)).toEqual(rest);
});
