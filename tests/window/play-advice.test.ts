import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import type { AdvisedDocument } from '../../core/engine/documents.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import { stateOf } from '../../core/game/state.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { discardIn, lastDiscard, nextAndDiscard } from '../../renderer/session/play-advice.ts';

const at = '2026-11-25T19:00:00Z';
const START: readonly TimedEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d', at },
  { type: 'drew', tile: '9d', at },
];
const OWN: TimedEvent = { type: 'discarded', seat: 'South', tile: 'N', at };
const OTHERS: readonly TimedEvent[] = [
  { type: 'discarded', seat: 'West', tile: 'E', at },
  { type: 'discarded', seat: 'North', tile: '9c', at },
];

function found(events: readonly TimedEvent[]): ReturnType<typeof lastDiscard> {
  return lastDiscard({ state: expectValue(stateOf(events)), events });
}

describe('the discard that is judged once it is made', () => {
  it('is the player’s last one, also while others play', () => {
    expect(found([...START, OWN])).toEqual({ at: 2, discard: OWN });
    expect(found([...START, OWN, ...OTHERS])).toEqual({ at: 2, discard: OWN });
  });

  it('is none before the first, when the next one is due, and after the result', () => {
    expect(found(START.slice(0, 1))).toBeNull();
    expect(found([...START, ...OTHERS.slice(0, 0)])).toBeNull();
    expect(found([...START, OWN, ...OTHERS, { type: 'drew', tile: '5d', at }])).toBeNull();
    expect(found([...START, OWN, { type: 'ended', result: 'wall', at }])).toBeNull();
  });

  it('is none where the tile was thrown without being entered: that left no choice', () => {
    const thrown: TimedEvent = { type: 'discarded', seat: 'South', tile: '9b', at };
    expect(found([...START, OWN, ...OTHERS, thrown])).toBeNull();
  });
});

describe('the choices that it is compared with', () => {
  const choice = (action: AdvisedDocument['action'], tile: string, verdict: AdvisedDocument['verdict'] = null) =>
    ({ action, tiles: expectValue(parseTiles(tile)).toKinds(), verdict }) as unknown as AdvisedDocument;
  const list = [
    choice('discard', '9d', 'best'),
    choice('discard', 'N'),
    choice('swap', 'J'),
    choice('discard', '0', 'equal'),
    choice('discard', '8c'),
    choice('discard', '7c'),
    choice('discard', 'J'),
  ];

  it('are those next to the first, and it, once', () => {
    expect(nextAndDiscard({ type: 'discarded', seat: 'South', tile: 'J' })(list)).toEqual([1, 2, 4, 6]);
    expect(nextAndDiscard({ type: 'discarded', seat: 'South', tile: 'N' })(list)).toEqual([1, 2, 4]);
  });

  it('are those next to the first alone where games need not tell of it', () => {
    for (const tile of ['9d', '0', '1b']) {
      expect(nextAndDiscard({ type: 'discarded', seat: 'South', tile })(list)).toEqual([1, 2, 4]);
    }
  });

  it('a swap of a joker is not its discard', () => {
    expect(discardIn(list, { type: 'discarded', seat: 'South', tile: 'J' })).toBe(list[6]);
    expect(discardIn(list.slice(0, 3), { type: 'discarded', seat: 'South', tile: 'J' })).toBeUndefined();
  });
});
