import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { part } from './journal-helpers.ts';
import { fillFolder, manyGames } from './many-games.ts';
import { type Tasks, tasksWhile } from './tasks.ts';
import { expect, test, Windrow } from './windrow.ts';

test.setTimeout(180_000);

const GAMES = 10_000;
/** The same page with few games, to tell a slow machine from slow work. */
const FEW = 64;
/** How long the page is watched, in ms: games are measured all the while. */
const WATCHED = 4000;

/** All nodes of the page, those in the parts' own trees too. */
async function nodes(page: Page): Promise<number> {
  return await page.evaluate(() => {
    const count = (root: Node): number => {
      const inside = root instanceof Element && root.shadowRoot !== null ? count(root.shadowRoot) : 0;
      return [...root.childNodes].reduce((sum, child) => sum + count(child), 1 + inside);
    };
    return count(document);
  });
}

/** Goes from the list to the season, and stays there while games are measured. */
async function openSeason(page: Page): Promise<Tasks> {
  return await tasksWhile(page, async () => {
    await part(page, 'Season');
    await expect(page.getByRole('heading', { name: 'What your choices cost' })).toBeVisible();
    await page.waitForTimeout(WATCHED);
  });
}

/** How often the sentence of the progress changes in a second. */
async function stepsShown(page: Page): Promise<number> {
  return await page.getByText(/^Measuring your games/).evaluate(async (sentence) => {
    let steps = 0;
    new MutationObserver((changes) => (steps += changes.length)).observe(sentence, {
      characterData: true,
      childList: true,
      subtree: true,
    });
    const began = performance.now();
    await new Promise((resolve) => setTimeout(resolve, 3000));
    return (1000 * steps) / (performance.now() - began);
  });
}

/** The season of few games, in a window of its own. */
async function seasonOfFew(context: BrowserContext): Promise<Tasks> {
  const folder = await mkdtemp(join(tmpdir(), 'windrow-few-'));
  const page = await context.newPage();
  const few = new Windrow(page, folder);
  await fillFolder(folder, manyGames(FEW));
  await few.open('Journal');
  await expect(page.getByRole('status').filter({ hasText: `${FEW} games` })).toBeVisible();
  await page.waitForLoadState('networkidle');
  const tasks = await openSeason(page);
  await page.close();
  await few.close();
  await rm(folder, { recursive: true, force: true });
  return tasks;
}

test('CR-J8: the season of 10,000 games is a small page, drawn in short pieces while the games are measured', async ({
  windrow,
  page,
  context,
}) => {
  await fillFolder(windrow.folder, manyGames(GAMES));
  await windrow.open('Journal');
  await expect(page.getByRole('status').filter({ hasText: `${GAMES} games` })).toBeVisible({ timeout: 60_000 });
  // What else asks for the list of games has it by then.
  await page.waitForLoadState('networkidle');
  const many = await openSeason(page);
  await expect(page.getByText(`These figures are from ${GAMES} games.`)).toBeVisible();
  expect(await nodes(page)).toBeLessThan(5000);
  const steps = await stepsShown(page);
  expect(steps).toBeGreaterThan(0);
  expect(steps).toBeLessThan(5);
  await page.getByText('Points over time as a table').click();
  await expect(page.getByRole('region', { name: 'Points over time, table' }).locator('tbody tr')).toHaveCount(50);
  expect(await nodes(page)).toBeLessThan(5000);
  await page.goto('about:blank');
  const few = await seasonOfFew(context);
  console.log(
    `season of ${GAMES} games: ${many.count} tasks, the longest ${Math.round(many.longest)} ms of the processor (${many.doing}), ` +
      `${many.longByClock} long by the clock; of ${FEW} games: ${Math.round(few.longest)} ms, ${few.longByClock} long`,
  );
  // A machine on which the page of few games takes longer than that is slow at drawing the page itself.
  expect(many.longest).toBeLessThan(Math.max(50, 1.5 * few.longest));
});

test('a long table is turned page by page with the keyboard, and the focus stays on the button', async ({
  windrow,
  page,
}) => {
  await fillFolder(windrow.folder, manyGames(120));
  await windrow.open('Journal');
  await part(page, 'Season');
  await page.getByText('Points over time as a table').focus();
  const table = page.getByRole('region', { name: 'Points over time, table' });
  const pages = page.getByRole('navigation', { name: 'Pages of Points over time' });
  await expect(table).toHaveCount(0);
  await page.keyboard.press('Enter');
  const first = await table.locator('tbody tr').allInnerTexts();
  expect(first).toHaveLength(50);
  // From the fold: the table, which scrolls, then the two buttons.
  for (let stop = 0; stop < 3; stop += 1) await page.keyboard.press('Tab');
  const earlier = pages.getByRole('button', { name: 'Earlier games' });
  await expect(earlier).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(pages).toContainText(/Rows 51 to 100 of 1\d\d/);
  const second = await table.locator('tbody tr').allInnerTexts();
  expect(new Set([...first, ...second]).size).toBeGreaterThan(50);
  await page.keyboard.press('Space');
  await expect(pages).toContainText(/Rows 101 to (1\d\d) of \1/);
  await expect(earlier).toBeFocused();
  await expect(earlier).toHaveAttribute('aria-disabled', 'true');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(pages).toContainText(/Rows 1 to 50 of/);
  expect(await table.locator('tbody tr').allInnerTexts()).toEqual(first);
});
