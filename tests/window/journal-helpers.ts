import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, type Windrow } from './windrow.ts';

/** Opens the Journal of a newcomer and adds the example season. */
export async function withSeason(windrow: Windrow): Promise<void> {
  await windrow.open('Journal');
  await windrow.page.getByRole('button', { name: 'Add the example season' }).click();
  await expect(windrow.page.getByRole('status').filter({ hasText: '64 games' })).toBeVisible({ timeout: 30_000 });
}

/** Goes to a part of the Journal by its link. */
export async function part(page: Page, name: 'Games' | 'Season' | 'Evenings' | 'Files'): Promise<void> {
  await page.getByRole('navigation', { name: 'Parts of the Journal' }).getByRole('link', { name, exact: true }).click();
}

/** Goes to a game's look-back by its address and waits until its story is told. */
export async function lookBack(page: Page, id: string): Promise<void> {
  await page.evaluate((game) => (window.location.hash = `#/journal/game/${game}`), id);
  await storyTold(page);
}

/** Waits until a look-back has looked ahead to the end of the exchange too, and tells its story. */
export async function storyTold(page: Page): Promise<void> {
  await expect(page.locator('wr-story')).toBeVisible({ timeout: 120_000 });
  await expect(page.getByText('Looking ahead to the end of the exchange…')).toBeHidden({ timeout: 120_000 });
}

/** Opens the fold of all choices, one by one and as a table. */
export async function openChoices(page: Page): Promise<void> {
  await page.getByText(/^All \d+ choices, step by step$/).click();
  await expect(page.locator('wr-decision')).toBeVisible();
}

/** Opens the fold of the chance, turn by turn. */
export async function openCourse(page: Page): Promise<void> {
  await page.getByText('Your chance, turn by turn').click();
  await expect(page.getByRole('heading', { name: 'Luck and choices' })).toBeVisible();
}

/** The text of the file that an action hands to the person. */
export async function downloaded(page: Page, act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), act()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

/** The table twin of a chart, opened if need be, as rows of cells. */
export async function twin(page: Page, label: string): Promise<string[][]> {
  const summary = page.getByText(`${label} as a table`);
  const table = page.getByRole('region', { name: `${label}, table` });
  if (!(await table.isVisible())) await summary.click();
  const rows = table.locator('tbody tr');
  // They come once what they show is counted.
  await expect(rows.first()).toBeVisible();
  return await rows.evaluateAll((rows) =>
    rows.map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.textContent ?? '')),
  );
}
