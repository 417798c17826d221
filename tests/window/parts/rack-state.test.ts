import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answersTo, rackKey } from '../../../renderer/parts/rack/rack-keys.ts';
import {
  changeTier,
  layoutOf,
  moveTo,
  orderOf,
  placesOf,
  type RackLayout,
  step,
  toggleGap,
} from '../../../renderer/parts/rack/rack-layout.ts';
import { adopted, after, type RackCommand, type RackState } from '../../../renderer/parts/rack/rack-state.ts';
import { placeWords } from '../../../renderer/parts/rack/rack-words.ts';
import { kindOf } from '../../../core/tiles/kinds.ts';

/** `ab cd/ef` is two groups on the upper tier and one on the lower. */
function laid(text: string): RackLayout {
  return text.split('/').map((tier) =>
    tier
      .split(' ')
      .filter(Boolean)
      .map((group) => [...group]),
  );
}

function shown(layout: RackLayout): string {
  return layout.map((tier) => tier.map((group) => group.join('')).join(' ')).join('/');
}

describe('a step', () => {
  it.each([
    ['abc', 'b', 1, 'acb'],
    ['abc', 'b', -1, 'bac'],
    ['ab cd', 'b', 1, 'a bcd'],
    ['ab cd', 'c', -1, 'abc d'],
    ['a b', 'a', 1, 'ab'],
    ['abc', 'c', 1, 'abc'],
    ['abc', 'a', -1, 'abc'],
    ['ab/cd', 'b', 1, 'a/bcd'],
    ['ab/cd', 'c', -1, 'abc/d'],
    ['ab/', 'b', 1, 'a/b'],
    ['/ab', 'a', -1, 'a/b'],
  ] as const)('%s: %s by %i is %s', (from, id, by, to) => {
    expect(shown(step(laid(from), id, by))).toBe(to);
  });
});

it('a gap is made before a tile and closed again; the first of a tier has none', () => {
  expect(shown(toggleGap(laid('abcd'), 'c'))).toBe('ab cd');
  expect(shown(toggleGap(laid('ab cd'), 'c'))).toBe('abcd');
  expect(shown(toggleGap(laid('ab/cd'), 'c'))).toBe('ab/cd');
});

it('a tile changes tier to the end of the other', () => {
  expect(shown(changeTier(laid('ab c/de'), 'a', 1))).toBe('b c/dea');
  expect(shown(changeTier(laid('ab/de'), 'a', -1))).toBe('ab/de');
});

it('several tiles are put down together in their order', () => {
  expect(shown(moveTo(laid('abcdef'), ['e', 'b'], { tier: 0, group: 0, index: 3 }))).toBe('acbedf');
  expect(shown(moveTo(laid('abc def'), ['a', 'f'], { tier: 0, group: 1, index: null }))).toBe('bc af de');
  expect(shown(moveTo(laid('ab/'), ['a'], { tier: 1, group: 0, index: null }))).toBe('b/a');
});

const ids = [...'abcdefghijklm'];
const layouts = fc
  .tuple(
    fc.shuffledSubarray(ids, { minLength: 1 }),
    fc.array(fc.constantFrom('', '', '', ' ', '/'), { minLength: 13, maxLength: 13 }),
  )
  .map(([order, spaces]) => {
    const text = order.map((id, at) => (at > 0 ? (spaces[at] ?? '') : '') + id).join('');
    const [first = '', ...rest] = text.split('/');
    return laid(rest.length === 0 ? `${first}/` : `${first}/${rest.join(' ')}`);
  });

it('what lies before each tile tells the whole layout', () => {
  fc.assert(
    fc.property(layouts, (layout) => {
      expect(layoutOf(placesOf(layout), 2)).toEqual(layout);
    }),
    { seed: 61 },
  );
});

const commands: fc.Arbitrary<RackCommand> = fc.oneof(
  fc.record({ do: fc.constant('focus' as const), id: fc.constantFrom(...ids) }),
  fc.record({
    do: fc.constantFrom('walk' as const, 'climb' as const, 'step' as const, 'tier' as const),
    by: fc.constantFrom(-1 as const, 1 as const),
  }),
  fc.record({ do: fc.constant('end' as const), side: fc.constantFrom('first' as const, 'last' as const) }),
  fc.record({ do: fc.constant('select' as const), id: fc.constantFrom(...ids), limit: fc.constant(3) }),
  fc.constantFrom({ do: 'unselect' as const }, { do: 'gap' as const }),
  fc.record({
    do: fc.constant('put' as const),
    ids: fc.subarray(ids, { minLength: 1, maxLength: 3 }),
    place: fc.record({ tier: fc.nat(1), group: fc.nat(3), index: fc.option(fc.nat(5), { nil: null }) }),
  }),
);

it('after any commands the same tiles are there, each once, no group is empty, and the active one is among them', () => {
  fc.assert(
    fc.property(layouts, fc.array(commands, { maxLength: 30 }), (layout, list) => {
      const here = orderOf(layout);
      let state: RackState = { layout, active: here[0] ?? null, selected: [] };
      for (const command of list) {
        if ('id' in command && !here.includes(command.id)) continue;
        const known = 'ids' in command ? { ...command, ids: command.ids.filter((id) => here.includes(id)) } : command;
        state = after(state, known);
      }
      expect(orderOf(state.layout).toSorted()).toEqual(here.toSorted());
      expect(state.layout).toHaveLength(2);
      expect(state.layout.flat().every((group) => group.length > 0)).toBe(true);
      expect(here).toContain(state.active);
      expect(state.selected.length).toBeLessThanOrEqual(3);
    }),
    { seed: 62, numRuns: 300 },
  );
});

it('a step there and a step back leave everything as it was, within a group', () => {
  fc.assert(
    fc.property(layouts, fc.nat(12), (layout, pick) => {
      const id = orderOf(layout)[pick % orderOf(layout).length] ?? '';
      const there = step(layout, id, 1);
      const group = layout.flat().find((each) => each.includes(id)) ?? [];
      fc.pre(group.indexOf(id) < group.length - 1);
      expect(step(there, id, -1)).toEqual(layout);
    }),
    { seed: 63 },
  );
});

it('when the active tile is gone, the next one takes its place, or the one before', () => {
  const state = { layout: laid('abc'), active: 'b', selected: ['b', 'c'] };
  expect(adopted(state, laid('ac'), state.selected)).toMatchObject({ active: 'c', selected: ['c'] });
  expect(adopted(state, laid('a'), [])).toMatchObject({ active: 'a' });
  expect(adopted(state, laid(''), [])).toMatchObject({ active: null });
});

it('a choice beyond the limit is refused; a limit of one moves the choice', () => {
  const full: RackState = { layout: laid('abcd'), active: 'a', selected: ['a', 'b', 'c'] };
  expect(after(full, { do: 'select', id: 'd', limit: 3 }).selected).toEqual(['a', 'b', 'c']);
  expect(after(full, { do: 'select', id: 'b', limit: 3 }).selected).toEqual(['a', 'c']);
  expect(after({ ...full, selected: ['a'] }, { do: 'select', id: 'd', limit: 1 }).selected).toEqual(['d']);
});

const plain = { altKey: false, ctrlKey: false, metaKey: false };

it('keys of the window are left to it: with Control or the command key nothing is the rack’s', () => {
  for (const key of ['z', 'ArrowLeft', 'Enter', 'a']) {
    expect(rackKey({ ...plain, key, ctrlKey: true })).toBeNull();
    expect(rackKey({ ...plain, key, metaKey: true })).toBeNull();
  }
  expect(rackKey({ ...plain, key: 'Tab' })).toBeNull();
  expect(rackKey({ ...plain, key: 'F5' })).toBeNull();
});

it.each([
  ['5', '5c', true],
  ['f', '5c', true],
  ['c', '5c', true],
  ['b', '5c', false],
  ['0', '0', true],
  ['w', '0', true],
  ['j', 'J', true],
  ['n', 'N', true],
  ['n', '9d', true],
  ['7', '5c', false],
] as const)('CR-K2: the key %s finds %s: %s', (key, code, found) => {
  expect(answersTo(kindOf(code), key)).toBe(found);
});

it('CR-K5: a place is told as "Five dot, place 3 of 13", with the group only when there are several', () => {
  expect(placeWords(kindOf('5d'), 'c', laid('abcdefghijklm'))).toBe('Five dot, place 3 of 13.');
  expect(placeWords(kindOf('5d'), 'c', laid('ab cd/e'))).toBe('Five dot, place 3 of 5, group 2 of 3.');
});
