import { expect, test } from 'vitest';
import { type Clocks, type Effort, judge, table } from '../bench/judge.ts';
import type { Measure } from '../bench/measure.ts';
import { changes } from '../bench/regress.mjs';

const effort: Effort = { rounds: 3, most: 5, budgetMs: 100, roundMs: 10 };

/** A clock that only work moves, so that the figures are exact. */
function clockwork(): { clocks: Clocks; work: (ms: number) => () => void; calls: () => number } {
  let time = 0;
  let calls = 0;
  return {
    clocks: { cpu: () => time, wall: () => 2 * time },
    work: (ms) => () => {
      time += ms;
      calls += 1;
    },
    calls: () => calls,
  };
}

function measure(part: Partial<Measure> & Pick<Measure, 'reference' | 'candidate'>): Measure {
  return { name: 'sums', unit: 'sum', atLeast: 10, check: () => undefined, ...part };
}

test('the ratio is reference time by candidate time, and judged against the limit', async () => {
  const { clocks, work } = clockwork();
  const figure = await judge(measure({ reference: work(50), candidate: work(5) }), effort, clocks);
  expect(figure).toMatchObject({ referenceMs: 50, candidateMs: 5, ratio: 10, spread: [10, 10], holds: true });
  const slower = await judge(measure({ reference: work(49), candidate: work(5) }), effort, clocks);
  expect(slower).toMatchObject({ ratio: 9.8, holds: false });
  expect(table([figure, slower])).toMatch(/holds\n.*FALLS SHORT$/);
});

test('a reference that does only a share of the work is scaled up', async () => {
  const { clocks, work } = clockwork();
  const figure = await judge(measure({ reference: work(20), candidate: work(20), referenceShare: 12 }), effort, clocks);
  expect(figure).toMatchObject({ referenceMs: 240, ratio: 12, holds: true });
});

test('a quick function is repeated within a round; a slow one runs once, for at least the rounds asked', async () => {
  const { clocks, work, calls } = clockwork();
  const figure = await judge(measure({ reference: work(500), candidate: work(1) }), effort, clocks);
  expect(figure.rounds).toBe(3);
  expect(calls()).toBe(3 + 10 * 4);
});

test('the time on the wall counts only where a measure asks for it', async () => {
  const { clocks, work } = clockwork();
  const sums = measure({ reference: work(50), candidate: work(50) });
  expect((await judge(sums, effort, clocks)).referenceMs).toBe(50);
  expect((await judge({ ...sums, clock: 'wall' }, effort, clocks)).referenceMs).toBe(100);
});

test('asynchronous work is waited for', async () => {
  const { clocks, work } = clockwork();
  const later = (ms: number) => async (): Promise<void> => {
    await Promise.resolve();
    work(ms)();
  };
  const figure = await judge(measure({ reference: later(40), candidate: later(2) }), effort, clocks);
  expect(figure.ratio).toBe(20);
});

test('two ways that disagree are never measured', async () => {
  const { clocks, work, calls } = clockwork();
  const check = (): void => {
    throw new Error('the answers differ');
  };
  await expect(judge(measure({ reference: work(1), candidate: work(1), check }), effort, clocks)).rejects.toThrow(
    'differ',
  );
  expect(calls()).toBe(0);
});

test('work of another process tells its own time, and further figures are shown beside the table', async () => {
  const { clocks } = clockwork();
  const own = measure({ clock: 'own', reference: () => 40, candidate: () => 20, more: () => ({ median: 7 }) });
  const figure = await judge(own, effort, clocks);
  expect(figure).toMatchObject({ referenceMs: 40, candidateMs: 20, ratio: 2, more: { median: 7 } });
  expect(table([figure])).toContain(`${figure.name}: median 7.00`);
});

const turn = (ratio: number): { name: string; ratio: number }[] => [{ name: 'reading', ratio }];

test('P9: more than a tenth slower than the baseline, in the median and at best, is a regression', () => {
  const baseline = [turn(50), turn(52), turn(48)];
  const of = (...ratios: number[]): unknown => changes(baseline, ratios.map(turn));
  expect(of(44, 43, 44.9)).toEqual([{ name: 'reading', before: 50, now: 44, slower: true }]);
  expect(of(46, 45.5, 47)).toEqual([{ name: 'reading', before: 50, now: 46, slower: false }]);
  expect(of(20, 21, 49)).toEqual([{ name: 'reading', before: 50, now: 21, slower: false }]);
});

test('P9: a measure that only one side has is not compared', () => {
  expect(changes([turn(50)], [[{ name: 'new', ratio: 1 }]])).toEqual([]);
  expect(changes([], [turn(50)])).toEqual([]);
});
