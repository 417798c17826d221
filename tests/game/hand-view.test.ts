import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { deadKinds, fitsGroups, handView } from '../../core/game/hand-view.ts';
import { withoutNames } from '../../core/game/names.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { codeOf, kindOf } from '../../core/tiles/kinds.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { gave, play, received, SOUTH } from './helpers.ts';

const call: GameEvent = { type: 'called', seat: 'South', tile: '8b', group: '88b J' };
const threw = (seat: 'East' | 'West', tile: string): GameEvent => ({ type: 'discarded', seat, tile });

test('hand, gone and unseen are always the whole set', () => {
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
    const { hand, gone, unseen } = handView(play(...events.slice(0, length + 1)));
    expect(hand.plus(gone).plus(unseen).equals(Tiles.fullSet)).toBe(true);
  }
});

test('own exposed groups belong to the hand and are fixed', () => {
  const { hand, fixed } = handView(play(SOUTH, call));
  expect(formatTiles(hand)).toBe('JJ FF NE 0 13889b 25c');
  expect(fixed).toEqual([{ kind: kindOf('8b'), size: 3, jokers: 1 }]);
});

test('a kind is dead when all of it is seen', () => {
  const events = ['N', 'N', 'N'].map((tile) => threw('West', tile));
  expect(deadKinds(play(SOUTH, ...events)).map(codeOf)).toEqual(['N']);
});

test('a way fits exposed groups only if it has each of them, size and kind', () => {
  const line = { id: 'x', pattern: '888bam 888bam FFFF 2222crak' };
  const text = JSON.stringify({
    format: 'windrow.card',
    version: 1,
    title: '',
    season: '',
    sections: [{ name: 'A', lines: [line] }],
  });
  const way = expectValue(readCardFile(text)).card.sections[0]?.lines[0]?.ways[0];
  if (way === undefined) throw new Error('the line has one way');
  const pung = { kind: kindOf('8b'), size: 3, jokers: 1 };
  expect(fitsGroups(way, [])).toBe(true);
  expect(fitsGroups(way, [pung])).toBe(true);
  expect(fitsGroups(way, [{ ...pung, size: 4 }])).toBe(false);
  expect(fitsGroups(way, [{ ...pung, kind: kindOf('7b') }])).toBe(false);
  expect(fitsGroups(way, [pung, pung, pung])).toBe(false);
});

test('names of players are removed and nothing else', () => {
  const rest = { id: 'a', place: 'lakeside library' };
  expect(withoutNames({ ...rest, players: { North: 'the host' } } as unknown as GameRecord)).toEqual(rest);
});
