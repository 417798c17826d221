import type { Page } from '@playwright/test';
import { expect, type Windrow } from './windrow.ts';

/** The field in which tiles are typed. */
export function field(page: Page) {
  return page.getByLabel('Type it, or click it');
}

/** Types tiles into the field of play, with Enter at the end. */
export async function type(page: Page, tiles: string): Promise<void> {
  await field(page).fill(tiles);
  await page.keyboard.press('Enter');
}

/** Chooses one of a bar of choices by a click. */
export async function choose(page: Page, group: string, value: string): Promise<void> {
  await page.getByRole('group', { name: group }).getByRole('radio', { name: value, exact: true }).check();
}

/** Deals, and leaves the passes out of the log. */
export async function straightToPlay(windrow: Windrow, tiles: string, seat = 'South'): Promise<void> {
  await windrow.deal(tiles, seat);
  await windrow.page.getByRole('button', { name: 'Go on to play' }).click();
  await expect(field(windrow.page)).toBeFocused();
}

/** Enters a group that somebody lays open. An own one lies there only once it is known whether it leaves a hand. */
export async function layOpen(page: Page, who: string, tiles: string): Promise<void> {
  await choose(page, 'What happened?', 'A group laid open');
  await choose(page, 'Whose tile?', who);
  await type(page, tiles);
}

/** The same for a group that nothing speaks against; waits until it lies there. */
export async function layOpenAtOnce(page: Page, who: string, tiles: string): Promise<void> {
  await layOpen(page, who, tiles);
  await expect(page.locator('wr-group-entry')).toHaveCount(0);
  await expect(field(page)).toBeFocused();
}

/** The rows of a table on the page, by its caption, cells as they are read. */
export async function tableRows(page: Page, caption: string): Promise<string[][]> {
  const table = page.getByRole('table', { name: caption });
  await expect(table).toBeVisible();
  const rows = await table.locator('tbody tr').all();
  return await Promise.all(rows.map(async (row) => (await row.locator('th, td').allTextContents()).map(tidy)));
}

/** The last row of the evening's table: what each chair has in all. */
export async function totals(page: Page): Promise<string[]> {
  const table = page.getByRole('table', { name: 'Points of this evening' });
  return (await table.locator('tfoot td').allTextContents()).map(tidy);
}

function tidy(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim();
}
