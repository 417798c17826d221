import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import type { GameEvent } from '../../core/game/events.ts';
import type { PlayChoice, PlayMeasure } from '../../core/review/play-choices.ts';
import { playedOut } from '../../core/review/play-games.ts';
import type { Yardstick } from '../../core/review/yardstick.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { play } from '../game/helpers.ts';
import { DEMO, FEW_GAMES, SMALL, yardstickOf } from '../review/helpers.ts';

type Asked = Pick<Yardstick, 'compiled'> & Pick<PlayMeasure, 'rule'>;

function adviceOf({ compiled, rule }: Asked, ...events: readonly GameEvent[]): readonly PlayChoice[] {
  const measure = { table: makeTableCard(compiled), chance: provisionalChance('quick'), rule };
  return finish(playedOut(measure, play(...events), events)).choices;
}

/** The line that is won now. */
function wonBy(yardstick: Asked, ...events: readonly GameEvent[]): string | undefined {
  return adviceOf(yardstick, ...events).find(({ action }) => action === 'win')?.hand?.line.id;
}

const STAIRS: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FF 111b 222b 333b N W' };

describe('what to discard', () => {
  test('every kind of the rack is there, once', () => {
    const deal: GameEvent = { type: 'dealt', seat: 'East', tiles: 'JJ FF NE 0 1389b 25c 7d' };
    const choices = adviceOf({ compiled: DEMO.compiled, rule: FEW_GAMES }, deal);
    const kinds = choices.flatMap(({ tiles }) => tiles.toKinds());
    expect(kinds.toSorted((one, other) => one - other)).toEqual(play(deal).rack.distinct());
    expect(choices[0]).toMatchObject({ cost: 0, verdict: 'best' });
  });

  test('a tile that no hand wants costs nothing, one of the hand costs much', () => {
    const discards = adviceOf(SMALL, STAIRS, { type: 'drew', tile: '9d' });
    const costOf = (tile: string): number | undefined =>
      discards.find(({ tiles }) => formatTiles(tiles) === tile)?.cost;
    expect(costOf('9d')).toBe(0);
    expect(costOf('F')).toBeGreaterThan(0.02);
    expect(discards.at(-1)?.verdict).toBe('costly');
  });
});

describe('a discard on the table', () => {
  const waiting: readonly GameEvent[] = [
    { type: 'dealt', seat: 'South', tiles: 'FF 111b 222b 3333b N' },
    { type: 'discarded', seat: 'East', tile: '1b' },
  ];

  test('a call that helps is named with what letting it go leaves', () => {
    const choices = adviceOf(SMALL, ...waiting);
    expect(choices.map(({ tiles }) => formatTiles(tiles))).toContain('1111b');
    expect(choices.map(({ action }) => action)).toContain('let-go');
    expect(choices[0]?.hand?.line.id).toBe('s1');
  });

  test('a discarded joker is dead: it can neither be called nor win', () => {
    expect(adviceOf(SMALL, STAIRS, { type: 'discarded', seat: 'East', tile: 'J' })).toEqual([]);
  });

  test('own discards can not be called', () => {
    expect(adviceOf(SMALL, STAIRS, { type: 'discarded', seat: 'South', tile: '9c' })).toEqual([]);
  });
});

describe('a complete hand', () => {
  test('a pair can be called only as the last tile of the winning hand', () => {
    const thrown: GameEvent = { type: 'discarded', seat: 'West', tile: 'F' };
    expect(wonBy(SMALL, { type: 'dealt', seat: 'South', tiles: 'F 1111b 2222c 3333d' }, thrown)).toBeUndefined();
    expect(wonBy(SMALL, { type: 'dealt', seat: 'South', tiles: 'F 1111b 2222b 3333b' }, thrown)).toBe('s1');
  });

  test('a concealed hand may not expose before it wins', () => {
    const concealed: GameEvent = { type: 'dealt', seat: 'South', tiles: '11b 22b 33b 44b 55b 66b 7b' };
    expect(wonBy(SMALL, concealed, { type: 'drew', tile: '7b' })).toBe('s2');
  });

  test('laid open to the last tile it has won, and there is no tile to discard', () => {
    const laid = yardstickOf({
      format: 'windrow.card',
      version: 1,
      title: 'One hand',
      season: '',
      sections: [{ name: 'Only', lines: [{ id: 'open', pattern: 'FFFF NNNN EEE WWW' }] }],
    });
    const called = (tile: string, group: string): GameEvent => ({ type: 'called', seat: 'South', tile, group });
    const thrown = (tile: string): GameEvent => ({ type: 'discarded', seat: 'South', tile });
    const events: readonly GameEvent[] = [
      { type: 'dealt', seat: 'South', tiles: 'FFF NNN EE WW 123b' },
      called('F', 'FFFF'),
      thrown('1b'),
      called('N', 'NNNN'),
      thrown('2b'),
      called('E', 'EEE'),
      thrown('3b'),
      called('W', 'WWW'),
    ];
    expect(play(...events).rack.size).toBe(0);
    const choices = adviceOf(laid, ...events);
    expect(choices).toHaveLength(1);
    expect(choices[0]).toMatchObject({ action: 'win', chance: 1, hand: { line: { id: 'open' }, away: 0 } });
  });

  test('with a group laid open that no hand wants, no hand is left, whatever is discarded', () => {
    const call: GameEvent = { type: 'called', seat: 'South', tile: 'W', group: 'WWW' };
    const discards = adviceOf(SMALL, { type: 'dealt', seat: 'South', tiles: 'FF WW 111b 222b 333b' }, call);
    expect(discards).toHaveLength(4);
    for (const discard of discards) expect(discard).toMatchObject({ chance: 0, cost: 0, verdict: 'best', hand: null });
  });

  test('after the result there is nothing to advise', () => {
    expect(adviceOf(SMALL, STAIRS, { type: 'ended', result: 'wall' })).toEqual([]);
  });
});
