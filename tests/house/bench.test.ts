import { expect, test } from 'vitest';
import { type Clocks, type Effort, judge, table } from '../bench/judge.ts';
import type { Measure } from '../bench/measure.ts';
import { changes, type Paired, paired, type Work } from '../bench/regress.mjs';

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

const turn = (...ratios: number[]): Paired[] => [{ name: 'reading', ratios }];

test('CR-P9: more than a tenth slower than the baseline, in the median of every process, is a regression', () => {
  const of = (...turns: Paired[][]): unknown => changes(turns);
  expect(of(turn(1.2, 1.3, 1.1), turn(1.15, 1, 1.15), turn(1.2))).toEqual([
    { name: 'reading', times: 1.15, slower: true },
  ]);
  expect(of(turn(1.2, 1.3, 1.2), turn(1.2), turn(1.05, 1.08, 3))).toEqual([
    { name: 'reading', times: 1.2, slower: false },
  ]);
  expect(of(turn(0.5), turn(0.5), turn(0.5))).toEqual([{ name: 'reading', times: 0.5, slower: false }]);
});

test('CR-P9: a measure that the baseline has and this tree has not is told as gone', () => {
  const turn: Paired[] = [
    { name: 'kept', ratios: [1, 1] },
    { name: 'lost', ratios: [], gone: true },
  ];
  const found = changes([turn, turn]);
  expect(found.map(({ name, slower, gone }) => [name, slower, gone ?? false])).toEqual([
    ['kept', false, false],
    ['lost', true, true],
  ]);
});

test('CR-P9: both sides are called equally often, in turn the first, and timed against each other', async () => {
  const { clocks, work } = clockwork();
  const order: string[] = [];
  const side = (name: string, ms: number): { name: string; candidate: () => void } => {
    const sums = work(ms);
    return { name: 'sums', candidate: () => [order.push(name), sums()] };
  };
  const found = await paired(side('before', 10), side('now', 12), { pairs: 4, roundMs: 24, clock: clocks.cpu });
  expect(found).toEqual({ name: 'sums', ratios: [1.2, 1.2, 1.2, 1.2] });
  const twice = (name: string): string[] => [name, name];
  const [first, second] = [
    [...twice('before'), ...twice('now')],
    [...twice('now'), ...twice('before')],
  ];
  expect(order).toEqual(['before', 'now', ...first, ...second, ...first, ...second]);
});

test('CR-P9: work that waits is waited for, and a measure that was never timed is no regression', async () => {
  const { clocks, work } = clockwork();
  const later = (ms: number) => async (): Promise<void> => {
    await Promise.resolve();
    work(ms)();
  };
  const sides = [10, 30].map((ms) => ({ name: 'sums', candidate: later(ms) })) as [Work, Work];
  expect((await paired(...sides, { pairs: 2, roundMs: 1, clock: clocks.cpu })).ratios).toEqual([3, 3]);
  expect(changes([turn()])).toEqual([{ name: 'reading', times: Number.NaN, slower: false }]);
  expect(changes([])).toEqual([]);
});
