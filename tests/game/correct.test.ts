import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectValue, type Result } from '../../core/base/result.ts';
import { type Corrected, type Correction, correctTile } from '../../core/game/correct.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { stateOf } from '../../core/game/state.ts';
import { type Kind, type KindCode, kindOf, KINDS } from '../../core/tiles/kinds.ts';
import { formatTiles, parseTileList } from '../../core/tiles/text.ts';

const EVENTS: readonly GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d' },
  { type: 'gave', step: 'right', tiles: 'N 0 1b' },
  { type: 'received', step: 'right', tiles: '9d' },
  { type: 'received', step: 'right', tiles: '3c 6c' },
  { type: 'gave', step: 'across', tiles: '9d 3b 3c' },
  { type: 'received', step: 'across', tiles: '6c 2d E' },
];

const RIGHT: Correction['of'] = { type: 'received', step: 'right' };

function corrected(of: Correction['of'], wrong: KindCode, right: KindCode): Result<Corrected<GameEvent>> {
  return correctTile(EVENTS, { of, wrong: kindOf(wrong), right: kindOf(right) });
}

function rackAfter(of: Correction['of'], wrong: KindCode, right: KindCode): string {
  return formatTiles(expectValue(corrected(of, wrong, right)).state.rack);
}

describe('a tile of an earlier step is corrected', () => {
  it('a tile received: all later events stay, and the rack has the other tile', () => {
    const { place, events } = expectValue(corrected(RIGHT, '6c', '9c'));
    expect(place).toBe(3);
    expect(events).toEqual(EVENTS.with(3, { type: 'received', step: 'right', tiles: '39c' }));
    expect(rackAfter(RIGHT, '6c', '9c')).toBe('J FF E 456789c 222d');
  });

  it('a tile given: the one that was not given is in the rack again', () => {
    expect(rackAfter({ type: 'gave', step: 'right' }, '1b', '4c')).toBe('J FF E 1b 56678c 222d');
  });

  it('a tile dealt', () => {
    expect(rackAfter({ type: 'dealt' }, '4c', 'S')).toContain('S');
  });

  it.each<[Correction['of'], KindCode, KindCode, string]>([
    [RIGHT, '3c', '9c', 'With that tile, what you gave in the first across pass would be impossible.'],
    [{ type: 'dealt' }, 'N', 'S', 'With that tile, what you gave in the first right pass would be impossible.'],
    [
      { type: 'gave', step: 'right' },
      '1b',
      '3b',
      'With that tile, what you gave in the first across pass would be impossible.',
    ],
    [RIGHT, '6c', 'J', 'A joker is never passed, so none can come in.'],
    [{ type: 'gave', step: 'right' }, 'N', 'W', 'There is no west wind in your rack: choose a tile that is there.'],
    [RIGHT, '7d', '9c', 'There is no seven dot among these tiles: choose one that is there.'],
  ])('refused with one sentence: %j %s to %s', (of, wrong, right, sentence) => {
    expect(corrected(of, wrong, right)).toMatchObject({ ok: false, problem: { message: sentence } });
  });

  it('correcting and correcting back is nothing, and what is answered can always be replayed', () => {
    const parts = EVENTS.flatMap((event) => ('tiles' in event ? [event] : []));
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.nat(), (part, tile, other) => {
        const event = parts[part % parts.length] ?? EVENTS[0];
        if (event === undefined || !('tiles' in event)) return;
        const list = expectValue(parseTileList(event.tiles));
        const wrong = list[tile % list.length] as Kind;
        const right = KINDS[other % KINDS.length] as Kind;
        const there = correctTile(EVENTS, { of: event, wrong, right });
        if (!there.ok) return;
        expect(expectValue(stateOf(there.value.events))).toEqual(there.value.state);
        const back = expectValue(correctTile(there.value.events, { of: event, wrong: right, right: wrong }));
        expect(formatTiles(back.state.rack)).toBe(formatTiles(expectValue(stateOf(EVENTS)).rack));
      }),
      { seed: 20261129, numRuns: 300 },
    );
  });
});
