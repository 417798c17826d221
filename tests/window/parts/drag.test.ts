import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type DragEffect, type DragEvent, dragged, IDLE, SLOP } from '../../../renderer/parts/drag.ts';
import { isWithin, placeAt, type TileBox } from '../../../renderer/parts/rack/rack-geometry.ts';

function play(events: readonly DragEvent[]): DragEffect[] {
  let state = IDLE;
  return events.map((event) => {
    const next = dragged(state, event);
    state = next.state;
    return next.effect;
  });
}

const press: DragEvent = { type: 'press', id: 'a', pointer: 1, at: { x: 10, y: 10 } };
const move = (x: number, pointer = 1): DragEvent => ({ type: 'move', pointer, at: { x, y: 10 } });
const release = (x: number, pointer = 1): DragEvent => ({ type: 'release', pointer, at: { x, y: 10 } });

it('CR-W7: nothing happens on the press, nor within six px of it: that is a click', () => {
  expect(play([press, move(10 + SLOP), release(10 + SLOP)])).toEqual(['none', 'none', 'none']);
});

it('beyond six px it is a drag, which ends on release', () => {
  expect(play([press, move(17), move(40), release(41)])).toEqual(['none', 'start', 'move', 'drop']);
});

it('CR-W7: cancelling a drag restores; cancelling a press does nothing', () => {
  expect(play([press, move(30), { type: 'cancel' }, release(30)])).toEqual(['none', 'start', 'restore', 'none']);
  expect(play([press, { type: 'cancel' }, move(30)])).toEqual(['none', 'none', 'none']);
});

it('a second finger neither moves nor ends the drag of the first', () => {
  const second: DragEvent = { type: 'press', id: 'b', pointer: 2, at: { x: 0, y: 0 } };
  expect(play([press, move(30), second, move(50, 2), release(50, 2), release(31)])).toEqual([
    'none',
    'start',
    'none',
    'none',
    'none',
    'drop',
  ]);
});

it('whatever comes, a drag that started ends exactly once, by a drop or by being restored', () => {
  const events = fc.array(
    fc.oneof(
      fc.constantFrom<DragEvent>(press, { type: 'cancel' }),
      fc.integer({ min: 0, max: 60 }).map((x) => move(x)),
      fc.integer({ min: 0, max: 60 }).map((x) => release(x)),
    ),
    { maxLength: 40 },
  );
  fc.assert(
    fc.property(events, (list) => {
      const effects = play([...list, { type: 'cancel' }]);
      const count = (...kinds: DragEffect[]): number => effects.filter((effect) => kinds.includes(effect)).length;
      expect(count('drop', 'restore')).toBe(count('start'));
    }),
    { seed: 64 },
  );
});

/** Tiles 60 wide and 80 high, 68 apart, in groups with a gap of 28; `aaa bb/c` gives tiers and groups. */
function boxesOf(text: string): TileBox[] {
  return text.split('/').flatMap((tier, tierAt) => {
    let left = 0;
    return tier.split(' ').flatMap((group, groupAt) => {
      const boxes = [...group].map((_, index) => ({
        box: { left: left + index * 68, right: left + index * 68 + 60, top: tierAt * 120, bottom: tierAt * 120 + 110 },
        spot: { tier: tierAt, group: groupAt, index },
        last: index === group.length - 1,
      }));
      left += group.length * 68 + 20;
      return boxes;
    });
  });
}

const one = [{ left: 0, right: 1000, top: 0, bottom: 110 }];
const two = [...one, { left: 0, right: 1000, top: 120, bottom: 230 }];

it.each([
  ['the left half of a tile: before it', 70, { tier: 0, group: 0, index: 1 }],
  ['the right half of a tile: before the next', 110, { tier: 0, group: 0, index: 2 }],
  ['left of all: the first place', -30, { tier: 0, group: 0, index: 0 }],
  ['the near half of a gap: the end of its group', 205, { tier: 0, group: 0, index: 3 }],
  ['the far half of a gap: the start of the next group', 215, { tier: 0, group: 1, index: 0 }],
  ['just right of the last: the end', 360, { tier: 0, group: 1, index: 2 }],
  ['far right of the last: a group of its own', 450, { tier: 0, group: 2, index: null }],
])('%s', (_, x, place) => {
  expect(placeAt(boxesOf('aaa bb'), one, { x, y: 100 })).toEqual(place);
});

it('the height chooses the tier, an empty one too', () => {
  expect(placeAt(boxesOf('aa/b'), two, { x: 10, y: 200 })).toEqual({ tier: 1, group: 0, index: 0 });
  expect(placeAt(boxesOf('aa'), two, { x: 10, y: 200 })).toEqual({ tier: 1, group: 0, index: null });
  expect(placeAt([], [], { x: 0, y: 0 })).toBeNull();
});

it('a wrapped row is a row of its own, and beyond its end is no new group', () => {
  const tiles = boxesOf('aaaa').map((tile, at) =>
    at < 2
      ? tile
      : { ...tile, box: { ...tile.box, left: (at - 2) * 68, right: (at - 2) * 68 + 60, top: 120, bottom: 230 } },
  );
  const tall = [{ left: 0, right: 1000, top: 0, bottom: 230 }];
  expect(placeAt(tiles, tall, { x: 400, y: 60 })).toEqual({ tier: 0, group: 0, index: 2 });
  expect(placeAt(tiles, tall, { x: 70, y: 150 })).toEqual({ tier: 0, group: 0, index: 3 });
});

it('a margin widens a box on all sides', () => {
  const box = { left: 0, right: 10, top: 0, bottom: 10 };
  expect([
    isWithin(box, { x: 11, y: 5 }),
    isWithin(box, { x: 11, y: 5 }, 1),
    isWithin(box, { x: 5, y: -2 }, 1),
  ]).toEqual([false, true, false]);
});
