import { describe, expect, test } from 'vitest';
import { rateOf } from '../../core/base/statistics.ts';
import {
  type JudgedPass,
  moveProblem,
  problemBefore,
  seatsOf,
  type Sheet,
  type SheetProblem,
  spreadOf,
} from '../../core/warmup/sheet.ts';
import { classSheet as sheet } from './demo.ts';

describe('a sheet', () => {
  test('problems move up and down, and stay at the ends', () => {
    const ids = (one: Sheet): string[] => one.problems.map(({ code }) => code ?? '');
    const [a, b, c] = ids(sheet());
    expect(ids(moveProblem(sheet(), 0, 1))).toEqual([b, a, c]);
    expect(ids(moveProblem(sheet(), 2, -1))).toEqual([a, c, b]);
    expect(moveProblem(sheet(), 0, -1).problems).toEqual(sheet().problems);
    expect(moveProblem(sheet(), 2, 1).problems).toEqual(sheet().problems);
  });
});

describe('a problem at another seat or pass', () => {
  const [problem] = sheet().problems as [SheetProblem];

  test('keeps its words and answers, and drops the code, which names a first pass', () => {
    const later = problemBefore(problem, { seat: 'West', step: 'left2' });
    expect(later).toMatchObject({ seat: 'West', step: 'left2', rack: problem.rack, question: problem.question });
    expect('code' in later).toBe(false);
    expect(problemBefore(problem, problem)).toBe(problem);
  });

  test('nothing was given away before a first pass', () => {
    const later = { ...problem, step: 'across', gone: '1b 2b 3b' } as const;
    expect(problemBefore(later, { seat: 'North', step: 'left' }).gone).toBe('1b 2b 3b');
    expect(problemBefore(later, { seat: 'North', step: 'right' }).gone).toBe('');
  });

  test('goes only to seats that hold so many tiles', () => {
    expect(seatsOf({ rack: 'J FF N 0 113b 4578c 22d' })).toEqual(['East']);
    expect(seatsOf({ rack: 'J FF N 0 13b 4578c 22d' })).toEqual(['South', 'West', 'North']);
  });
});

describe('the answers of a class', () => {
  const judged: JudgedPass[] = [
    { give: 'N 1b 9c', cost: 0, halfWidth: 0.004, verdict: 'best' },
    { give: 'N 1b 2b', cost: 0.004, halfWidth: 0.006, verdict: 'equal' },
    { give: 'FF 1b', cost: 0.06, halfWidth: 0.02, verdict: 'costly' },
    { give: 'GR 1b', cost: 0.07, halfWidth: null, verdict: 'costly' },
  ];

  test('ties count as right, passes nobody chose are left out, and the best one is always there', () => {
    const spread = spreadOf(
      [
        { give: '2b N 1b', people: 5 },
        { give: 'F 1b F', people: 3 },
      ],
      judged,
    );
    expect(spread.people).toBe(8);
    expect(spread.right).toEqual(rateOf(5, 8));
    expect(spread.rows.map(({ give, people }) => [give, people])).toEqual([
      ['N 1b 2b', 5],
      ['FF 1b', 3],
      ['N 1b 9c', 0],
    ]);
  });

  test('no answers, no share', () => {
    expect(spreadOf([], judged)).toMatchObject({ people: 0, right: { share: null } });
  });

  test('of passes that as many people chose the cheaper one comes first', () => {
    const answers = [
      { give: '1b FF', people: 4 },
      { give: 'N 1b 2b', people: 4 },
    ];
    expect(spreadOf(answers, judged).rows.map(({ give, share }) => [give, share])).toEqual([
      ['N 1b 2b', 0.5],
      ['FF 1b', 0.5],
      ['N 1b 9c', 0],
    ]);
  });

  test('who stopped gave nothing, so is in no row of the passes', () => {
    expect(spreadOf([{ give: '', people: 2, stops: true }], judged)).toMatchObject({ people: 0 });
  });
});
