import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { exposedGroups, handSize } from '../../core/game/hand-view.ts';
import { stateOf } from '../../core/game/state.ts';
import { readOthers } from '../../core/review/read-others.ts';
import { checkPracticeEntry, type PracticeEntry } from '../../core/warmup/history-file.ts';
import { throwProgress } from '../../core/warmup/progress.ts';
import { throwProblem } from '../../core/warmup/throw-problem.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { cardOf, demoTable } from '../table/cards.ts';

test('a problem of play: a tile to discard, two groups of another open, and a tile of the rack that is hot', () => {
  const seats = new Set<string>();
  for (const seed of [1, 2, 3, 4]) {
    const problem = finish(throwProblem(demoTable, 'club', seed));
    if (problem === null) throw new Error('no moment was found');
    const state = expectValue(stateOf(problem.events));
    seats.add(problem.seat);
    expect(state.seat).toBe(problem.seat);
    expect(state.result).toBe(null);
    expect(handSize(state)).toBe(14);
    const shown = (['East', 'South', 'West', 'North'] as const)
      .filter((seat) => seat !== problem.seat)
      .map((seat) => exposedGroups(state, seat).length);
    expect(Math.max(...shown)).toBeGreaterThanOrEqual(2);
    const others = readOthers({ card: demoTable, kind: 'club' }, state, problem.events);
    expect(Math.max(...state.rack.distinct().map((kind) => others.taken(kind).win))).toBeGreaterThanOrEqual(0.02);
  }
  expect(seats.size).toBeGreaterThan(1);
});

test('the same seed gives the same problem, another one another', () => {
  const [one, again, other] = [5, 5, 6].map((seed) => finish(throwProblem(demoTable, 'club', seed)));
  expect(again).toEqual(one);
  expect(other?.events).not.toEqual(one?.events);
});

test('a card on which nobody ever has two groups open has no such problem', () => {
  const closed = makeTableCard(cardOf({ id: 'closed', pattern: 'FF 11a 22a 33a 44a 55a 66a', concealed: true }));
  expect(finish(throwProblem(closed, 'quick', 1))).toBe(null);
});

test('what was thrown is kept, and counted with its interval; what is as good gave up nothing', () => {
  const entry = (cost: number, verdict: string, id: string): PracticeEntry =>
    expectValue(
      checkPracticeEntry({
        type: 'throw',
        id,
        day: 20_000,
        seed: 7,
        card: 'mark',
        table: 'club',
        tile: '3b',
        cost,
        verdict,
      }),
    );
  const history = [entry(0, 'best', 't1'), entry(0.02, 'equal', 't2'), entry(0.06, 'costly', 't3')];
  const { rate, meanCost } = throwProgress(history);
  expect([rate.hits, rate.of]).toEqual([2, 3]);
  expect(meanCost).toBeCloseTo(0.02, 12);
  expect(throwProgress([])).toMatchObject({ meanCost: 0, rate: { of: 0 } });
  const wrong = {
    type: 'throw',
    id: 't4',
    day: 1,
    seed: 1,
    card: '',
    table: 'slow',
    tile: '3b',
    cost: 0,
    verdict: 'best',
  };
  expect(checkPracticeEntry(wrong).ok).toBe(false);
});
