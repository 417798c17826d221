import { describe, expect, it } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { fewerPoints } from '../../renderer/charts/fewer-points.ts';

const random = randomFromSeed(14);
const POINTS = Array.from({ length: 10_001 }, () => ({ value: random.below(1000) - 500 }));

describe('the points of a long course', () => {
  it('are all drawn where there are columns enough', () => {
    expect(fewerPoints(POINTS.slice(0, 300), 300).map(({ place }) => place)).toEqual(
      Array.from({ length: 300 }, (_, place) => place),
    );
    expect(fewerPoints([], 300)).toEqual([]);
  });

  it('are at most four a column else, in order, each once, with both ends, the lowest and the highest', () => {
    const shown = fewerPoints(POINTS, 300);
    const places = shown.map(({ place }) => place);
    expect(shown.length).toBeLessThanOrEqual(4 * 300);
    expect(shown.length).toBeGreaterThan(300);
    expect(places).toEqual([...new Set(places)].toSorted((one, other) => one - other));
    expect([places[0], places.at(-1)]).toEqual([0, 10_000]);
    const values = POINTS.map(({ value }) => value);
    const drawn = shown.map(({ point }) => point.value);
    expect([Math.min(...drawn), Math.max(...drawn)]).toEqual([Math.min(...values), Math.max(...values)]);
    expect(shown.every(({ point, place }) => point === POINTS[place])).toBe(true);
  });
});
