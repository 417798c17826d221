import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { fitLogistic, logistic, type LogisticTask, RowList } from '../../core/chance/logistic.ts';
import { emptyRow } from '../../core/chance/state.ts';

/** A task of dense rows, every row of weight 1, nothing held. */
function taskOf(
  lines: readonly (readonly number[])[],
  targets: readonly number[],
  more: Partial<LogisticTask> = {},
): LogisticTask {
  const rows = new RowList();
  const row = emptyRow();
  for (const line of lines) {
    row.length = 0;
    for (const [place, value] of line.entries()) {
      row.places[row.length] = place;
      row.values[row.length] = value;
      row.length += 1;
    }
    rows.add(row);
  }
  const size = lines[0]?.length ?? 0;
  return {
    rows,
    places: Int32Array.from(lines.keys()),
    targets,
    weights: lines.map(() => 1),
    offsets: lines.map(() => 0),
    held: Array<number>(size).fill(0),
    floors: new Map(),
    start: new Float64Array(size),
    ...more,
  };
}

describe('a logistic regression', () => {
  test('of a constant alone is the log odds of the mean', () => {
    const [level = 0] = fitLogistic(taskOf([[1], [1], [1], [1]], [1, 0, 0, 0.5]));
    expect(logistic(level)).toBeCloseTo(1.5 / 4, 9);
  });

  test('of one yes-or-no term is the log odds ratio of the two groups (Agresti, Categorical Data Analysis, 5.1)', () => {
    // 3 of 10 without the term, 6 of 8 with it.
    const lines = Array.from({ length: 18 }, (_, place) => [1, place < 10 ? 0 : 1]);
    const targets = lines.map((_, place) => Number(place < 3 || (place >= 10 && place < 16)));
    const [level = 0, term = 0] = fitLogistic(taskOf(lines, targets));
    expect(level).toBeCloseTo(Math.log(3 / 7), 6);
    expect(term).toBeCloseTo(Math.log(6 / 2) - Math.log(3 / 7), 6);
  });

  test('has a score of nought at its answer, whatever the weights, offsets and ridge', () => {
    const random = randomFromSeed(5);
    const lines = Array.from({ length: 200 }, () => [1, random.fraction() - 0.5, random.fraction()]);
    const targets = lines.map(() => random.fraction());
    const weights = lines.map(() => 0.5 + random.fraction());
    const offsets = lines.map(() => random.fraction() - 0.5);
    const held = [0, 3, 10];
    const found = fitLogistic(taskOf(lines, targets, { weights, offsets, held }));
    for (const term of [0, 1, 2]) {
      let slope = -(held[term] as number) * (found[term] as number);
      for (const [row, line] of lines.entries()) {
        const score = line.reduce(
          (sum, value, place) => sum + value * (found[place] as number),
          offsets[row] as number,
        );
        slope += (weights[row] as number) * (line[term] as number) * ((targets[row] as number) - logistic(score));
      }
      expect(Math.abs(slope)).toBeLessThan(1e-4);
    }
  });

  test('a term that would fall below its floor is there, and the others are as if it were not there', () => {
    const lines = Array.from({ length: 20 }, (_, place) => [1, place / 10]);
    const targets = lines.map((_, place) => (place < 10 ? 0.8 : 0.3));
    const free = fitLogistic(taskOf(lines, targets));
    const held = fitLogistic(taskOf(lines, targets, { floors: new Map([[1, 0]]) }));
    expect(free[1]).toBeLessThan(0);
    expect(held[1]).toBe(0);
    expect(logistic(held[0] as number)).toBeCloseTo(0.55, 6);
  });

  test('leaves terms that no row touches where they were', () => {
    const task = taskOf([[1], [1]], [1, 0], { held: [0, 0], start: Float64Array.of(0, 7) });
    expect([...fitLogistic(task)]).toEqual([0, 7]);
  });
});
