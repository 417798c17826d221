/** A way to lay out the first items: what begins each page, and how unevenly the pages are filled. */
interface Layout {
  readonly starts: readonly number[];
  readonly unevenness: number;
}

/**
 * Spreads items over pages in their order: on as few pages as have room for them, and on these as evenly as that
 * goes, later pages rather emptier. An item taller than a page has one to itself. Answers with the places, from 0,
 * that stand on each page.
 */
export function spreadOverPages(heights: readonly number[], room: number, most: number): number[][] {
  const layouts: Layout[] = [{ starts: [], unevenness: 0 }];
  for (let end = 1; end <= heights.length; end += 1) layouts.push(bestUpTo(end));
  const starts = layouts.at(-1)?.starts ?? [];
  return starts.map((start, page) => placesBetween(start, starts[page + 1] ?? heights.length));

  function bestUpTo(end: number): Layout {
    let best: Layout | null = null;
    let height = 0;
    for (let start = end - 1; start >= Math.max(0, end - most); start -= 1) {
      height += heights[start] as number;
      if (height > room && start < end - 1) break;
      const before = layouts[start] as Layout;
      const layout = { starts: [...before.starts, start], unevenness: before.unevenness + height * height };
      if (best === null || isBetter(layout, best)) best = layout;
    }
    return best as Layout;
  }
}

function isBetter(one: Layout, other: Layout): boolean {
  if (one.starts.length !== other.starts.length) return one.starts.length < other.starts.length;
  return one.unevenness < other.unevenness - 1e-6;
}

function placesBetween(start: number, end: number): number[] {
  return Array.from({ length: end - start }, (_, at) => start + at);
}
