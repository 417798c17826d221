import { downloaded, part, withSeason } from './journal-helpers.ts';
import { violations } from './violations.ts';
import { expect, test } from './windrow.ts';

test.setTimeout(120_000);

test('the example season: added in one click, marked, and taken away in one action', async ({ windrow, page }) => {
  await withSeason(windrow);
  await expect(page.locator('.games li')).toHaveCount(25);
  await expect(page.locator('.games li').first()).toContainText('example');
  expect(await violations(page)).toEqual([]);
  await part(page, 'Files');
  await page.getByRole('button', { name: 'Remove the example season' }).click();
  await expect(page.getByText('The example season is removed: 64 games.')).toBeVisible({ timeout: 60_000 });
  await part(page, 'Games');
  await expect(page.getByText('No game yet. Your first deal will be here.')).toBeVisible();
});

test('search, filters and order by mouse: the list narrows and widens again', async ({ windrow, page }) => {
  await withSeason(windrow);
  const count = page.getByRole('status').filter({ hasText: 'games' });
  await page.getByLabel('Search').fill('both pairs');
  await expect(count).toContainText(/^\d+ of 64 games$/);
  for (const row of await page.locator('.games li').all()) await expect(row).toContainText('both pairs');
  await page.getByRole('button', { name: 'Clear filters' }).click();
  await page.getByRole('button', { name: 'Filters', exact: true }).click();
  await page.getByLabel('Result', { exact: true }).selectOption('Won');
  await page.getByLabel('Seat', { exact: true }).selectOption('East');
  await expect(page.getByRole('button', { name: 'Filters (2 in use)' })).toBeVisible();
  await expect(page.locator('.outcome').first()).toHaveText('Won');
  for (const outcome of await page.locator('.outcome').allTextContents()) expect(outcome).toBe('Won');
  await page.getByLabel('From', { exact: true }).fill('2026-11-01');
  await page.getByLabel('From', { exact: true }).blur();
  await expect(count).toContainText(/^[0-5] of 64 games$/);
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Clear filters' }).click();
  await expect(count).toHaveText('64 games');
  await page.getByLabel('Sort by').selectOption('Points');
  const points = await page.locator('.result').allTextContents();
  const numbers = points.map((text) => Number(/([+−]?\d+) points/.exec(text)?.[1]?.replace('−', '-') ?? 0));
  expect(numbers).toEqual([...numbers].sort((one, other) => other - one));
  expect(numbers[0]).toBeGreaterThan(0);
});

test('the list by keyboard alone: searched, turned, deleted and brought back', async ({ windrow, page }) => {
  await withSeason(windrow);
  await page.getByLabel('Search').focus();
  await page.keyboard.type('thursday');
  await expect(page.locator('.games li')).toHaveCount(25);
  const first = await page.locator('.games li strong').first().textContent();
  const later = page.getByRole('button', { name: 'Earlier games' });
  await later.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('navigation', { name: 'Pages' })).toContainText('Page 2 of 3');
  await page.getByRole('button', { name: 'Later games' }).focus();
  await page.keyboard.press('Enter');
  await page
    .getByRole('button', { name: /^Delete the game of/ })
    .first()
    .focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status').filter({ hasText: '63 games' })).toBeVisible();
  expect(await page.locator('.games li strong').first().textContent()).not.toBe(first);
  await page.getByRole('button', { name: 'Bring it back' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.games li strong').first()).toHaveText(first ?? '');
  await windrow.restart();
  await windrow.go('Journal');
  await expect(page.getByRole('status').filter({ hasText: '64 games' })).toBeVisible();
});

test('an evening: what the chairs gained adds up to nothing', async ({ windrow, page }) => {
  await withSeason(windrow);
  await part(page, 'Evenings');
  const evening = page.getByRole('region', { name: /November 19, 2026, 4 games/ }).locator('table');
  await expect(evening.locator('tbody tr')).toHaveCount(4);
  const totals = await evening.locator('tfoot td').allTextContents();
  const numbers = totals.map((text) => Number(text.replace('−', '-')));
  expect(numbers).toHaveLength(4);
  expect(numbers.reduce((sum, number) => sum + number, 0)).toBe(0);
  expect(await violations(page)).toEqual([]);
});

test('a table for a spreadsheet: numbers as numbers, formulas disarmed, a mark for the spreadsheet', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await page
    .getByRole('link', { name: /^Look back at/ })
    .first()
    .click();
  await page.getByLabel('Place', { exact: true }).fill('=1+1');
  await page.getByLabel('Place', { exact: true }).blur();
  await page.getByRole('link', { name: 'All games' }).click();
  await expect(page.locator('.games li').first()).toContainText('=1+1');
  await part(page, 'Files');
  const { name, text } = await downloaded(page, () =>
    page.getByRole('button', { name: 'Save a table for a spreadsheet' }).click(),
  );
  expect(name).toBe('windrow-games.csv');
  expect(text.startsWith('\u{FEFF}id,started (UTC),place,')).toBe(true);
  const lines = text.trimEnd().split('\r\n');
  expect(lines).toHaveLength(65);
  expect(lines.filter((line) => line.includes("'=1+1"))).toHaveLength(1);
  expect(text).not.toContain(',=1+1');
  expect(lines.some((line) => /,-\d+,/.test(line))).toBe(true);
});

test('everything in one file: brought in on another computer, nothing doubled, a bad file said so', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await part(page, 'Files');
  const { name, text } = await downloaded(page, () =>
    page.getByRole('button', { name: 'Save everything as one file' }).click(),
  );
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('wr-files-view input').setInputFiles(file);
  await expect(page.getByText('0 games added. 0 kept beside another version. 64 were here already.')).toBeVisible({
    timeout: 60_000,
  });
  await page.getByRole('button', { name: 'Remove the example season' }).click();
  await expect(page.getByText('The example season is removed: 64 games.')).toBeVisible({ timeout: 60_000 });
  await page.locator('wr-files-view input').setInputFiles(file);
  await expect(page.getByText('64 games added.')).toBeVisible({ timeout: 60_000 });
  await page.locator('wr-files-view input').setInputFiles({ ...file, buffer: Buffer.from(text.slice(0, 5000)) });
  await expect(page.getByText('This file could not be read. Your games are as they were.')).toBeVisible();
  expect(await violations(page)).toEqual([]);
});

test('CR-F6: names of players are taken out of all games in one action', async ({ windrow, page }) => {
  await withSeason(windrow);
  await page
    .getByRole('link', { name: /^Look back at/ })
    .first()
    .click();
  await page.getByText('Names of players, if you wish').click();
  await page.getByLabel('North', { exact: true }).fill('the host');
  await page.getByLabel('North', { exact: true }).blur();
  await page.getByRole('link', { name: 'All games' }).click();
  await part(page, 'Files');
  await expect(page.getByText('1 game with names.')).toBeVisible();
  await page.getByRole('button', { name: 'Remove all names' }).click();
  await expect(page.getByText('Names are removed from 1 game.')).toBeVisible();
  await expect(page.getByText('0 games with names.')).toBeVisible();
});
