import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Cost, SIZES } from '../bench/growth.ts';
import { growthPage, growthPlot } from '../bench/growth-report.ts';

/** Costs that rise as the root of the number of ways, so that every line has the slope 1/2. */
const costs: readonly Cost[] = SIZES.map((ways) => {
  const cost = Math.sqrt(ways);
  return { ways, compile: cost, reading: cost / 10, passes: 4 * cost, game: cost / 2, memory: 100 };
});

test('the page has a row for each number of ways, and tells how steeply each cost rises', () => {
  const page = growthPage(costs, 'a quiet machine');
  for (const ways of SIZES) expect(page).toContain(`\n| ${ways.toLocaleString('en')} | `);
  expect(page).toContain('(all passes: 0.50; a game: 0.50; a reading: 0.50)');
  expect(page).toContain('Measured on a quiet machine.');
});

test('the picture draws each cost as a straight line where it is a power of the number of ways', () => {
  const lines = [...growthPlot(costs).matchAll(/<path d="M([^"]+)" fill="none"/g)].map(([, path = '']) =>
    path.split('L').map((point) => point.split(' ').map(Number) as [number, number]),
  );
  expect(lines).toHaveLength(3);
  for (const points of lines) {
    expect(points).toHaveLength(SIZES.length);
    const [[x0, y0], [x1, y1]] = [points[0]!, points.at(-1)!];
    for (const [x, y] of points) expect(y).toBeCloseTo(y0 + ((x - x0) * (y1 - y0)) / (x1 - x0), 0);
    expect(y1).toBeLessThan(y0);
  }
});

test('the page that is shown is one that the command wrote, with every size', () => {
  const page = readFileSync(join(import.meta.dirname, '../bench/GROWTH.md'), 'utf8');
  for (const ways of SIZES)
    expect(page).toMatch(new RegExp(`^\\| ${ways.toLocaleString('en')} \\|( [\\d.,]+ \\|){5}$`, 'm'));
  expect(page).toContain('../../assets/growth.svg');
});
