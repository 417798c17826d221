import { expect, test } from 'vitest';
import {
  agreed,
  mayBeBlind,
  mayBePassed,
  ownSizes,
  PASS_STEPS,
  SEATS,
  STEPS,
  stepsOf,
  STOPS,
} from '../../core/exchange/steps.ts';
import { codeOf, KINDS } from '../../core/tiles/kinds.ts';

// The table of steps against the sentences of core/RULES.md.

test('EX-2, TB-3, TB-6: the steps in their order, round by round', () => {
  expect(stepsOf('first')).toEqual(['right', 'across', 'left']);
  expect(stepsOf('second')).toEqual(['left2', 'across2', 'right2']);
  expect(stepsOf('end')).toEqual(['courtesy']);
  expect(PASS_STEPS).toEqual([...stepsOf('first'), ...stepsOf('second'), ...stepsOf('end')]);
});

test('TB-3: right is the seat that plays next; what one gives to the right came from the left', () => {
  const to = Object.fromEntries(PASS_STEPS.map((step) => [step, STEPS[step].to]));
  expect(to).toEqual({ right: 1, across: 2, left: 3, left2: 3, across2: 2, right2: 1, courtesy: 2 });
  for (const step of PASS_STEPS) expect(STEPS[step].to + STEPS[step].from).toBe(SEATS.length);
});

test('EX-3, EX-6, EX-9: three tiles, any number where some may go unseen, and none to three in the courtesy', () => {
  const sizes = Object.fromEntries(PASS_STEPS.map((step) => [step, ownSizes(step)]));
  const any = [3, 2, 1, 0];
  expect(sizes).toEqual({
    right: [3],
    across: [3],
    left: any,
    left2: [3],
    across2: [3],
    right2: any,
    courtesy: any,
  });
  expect(PASS_STEPS.filter(mayBeBlind)).toEqual(['left', 'right2']);
  expect(mayBeBlind(null)).toBe(false);
});

test('EX-5: the joker alone is never passed', () => {
  expect(KINDS.filter((kind) => !mayBePassed(kind)).map(codeOf)).toEqual(['J']);
});

test('EX-7, EX-8: the exchange may be stopped before the second round and before the courtesy', () => {
  expect(STOPS).toEqual(['left2', 'courtesy']);
});

test('EX-9: the smaller of the two numbers asked for', () => {
  expect([agreed(0, 3), agreed(2, 1), agreed(3, 3)]).toEqual([0, 1, 3]);
});
