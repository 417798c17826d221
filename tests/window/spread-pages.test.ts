import { describe, expect, test } from 'vitest';
import { spreadOverPages } from '../../renderer/print/spread-pages.ts';

/** How many items stand on each page. */
function sizes(heights: readonly number[], room: number, most = 4): number[] {
  return spreadOverPages(heights, room, most).map(({ length }) => length);
}

describe('problems on pages', () => {
  test.each([
    [10, 3, [3, 3, 2, 2]],
    [10, 4, [4, 3, 3]],
    [7, 3, [3, 2, 2]],
    [4, 3, [2, 2]],
    [1, 3, [1]],
    [0, 3, []],
  ])('%i alike, %i to a page, are spread evenly', (count, toAPage, pages) => {
    expect(sizes(Array<number>(count).fill(70), toAPage * 70 + 5)).toEqual(pages);
  });

  test('no page has more than its room, and each item stands once, in order', () => {
    const heights = [70, 180, 70, 70, 120, 90, 70, 60, 150, 70];
    const pages = spreadOverPages(heights, 220, 4);
    expect(pages.flat()).toEqual(heights.map((_, place) => place));
    for (const page of pages)
      expect(page.reduce((sum, place) => sum + (heights[place] ?? 0), 0)).toBeLessThanOrEqual(220);
    expect(pages).toHaveLength(6);
  });

  test('however little each takes, a page holds no more than so many', () => {
    expect(sizes([10, 10, 10, 10, 10], 500, 2)).toEqual([2, 2, 1]);
  });

  test('what is taller than a page has one to itself', () => {
    expect(sizes([70, 300, 70], 220)).toEqual([1, 1, 1]);
  });
});
