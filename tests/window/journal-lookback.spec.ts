import type { Page } from '@playwright/test';
import { downloaded, lookBack, openChoices, openCourse, part, storyTold, twin, withSeason } from './journal-helpers.ts';
import { violations } from './violations.ts';
import { choose } from './play.ts';
import { expect, test } from './windrow.ts';

test.setTimeout(180_000);

/** A game of the example season with deal, passes and result. */
const PASSES = 'demo-20261119-3';
/** One of the same, with passes that cost something. */
const COSTLY = 'demo-20261119-2';
/** One with all of its play. */
const PLAYED = 'demo-20261119-1';

test('CR-G5: the ledger adds up exactly, luck and choices apart', async ({ windrow, page }) => {
  await withSeason(windrow);
  await lookBack(page, PASSES);
  await openCourse(page);
  const rows = await twin(page, 'Luck and choices');
  const number = (text = ''): number => Number(text.replace('−', '-'));
  const parts = rows.slice(1, -2).map(([, amount]) => number(amount));
  const start = number(rows[0]?.[1]);
  const end = number(rows.at(-1)?.[2]);
  expect(start + parts.reduce((sum, part) => sum + part, 0)).toBe(end);
  await expect(page.getByText(/^Luck: about [+−]?\d+ games in 100\. Your choices: about [+−]?\d+\./)).toBeVisible();
  expect(await violations(page)).toEqual([]);
});

test('choices are stepped through by mouse and by keyboard, forwards and backwards', async ({ windrow, page }) => {
  await withSeason(windrow);
  await lookBack(page, COSTLY);
  await openChoices(page);
  const heading = (number: number): ReturnType<typeof page.getByRole> =>
    page.getByRole('heading', { name: new RegExp(`^Choice ${number} of 8`) });
  await expect(heading(1)).toBeVisible();
  await page.getByRole('button', { name: 'Next choice' }).click();
  await expect(heading(2)).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(heading(3)).toBeVisible();
  await page.getByRole('button', { name: 'Previous choice' }).focus();
  await page.keyboard.press('Space');
  await expect(heading(2)).toBeVisible();
  await page.getByText('All choices as a table').click();
  await page.getByRole('button', { name: /^7\. Second pass to the right/ }).click();
  await expect(heading(7)).toBeVisible();
  await page.getByRole('radio', { name: 'Those that cost something' }).check();
  await expect(page.getByRole('heading', { name: /^Choice 1 of \d: / })).toBeVisible();
  expect(await violations(page)).toEqual([]);
});

test('every choice of the exchange is looked ahead from, and the choice of a second round is one', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await page.evaluate((game) => (window.location.hash = `#/journal/game/${game}`), PASSES);
  // The exact look-back is there first; the look ahead may be left off and begun again.
  await page.getByRole('button', { name: 'Stop looking ahead' }).click({ timeout: 60_000 });
  await expect(page.getByText('It was not looked ahead to the end of the exchange.')).toBeVisible();
  await openChoices(page);
  await page.getByRole('button', { name: 'Next choice' }).click();
  await expect(page.getByRole('heading', { name: /^Choice 2 of 7: / })).toBeVisible();
  const note = page.getByLabel('Your note about this choice');
  await note.fill('half a thought');
  await page.getByRole('button', { name: 'Look ahead now' }).click();
  await storyTold(page);
  await expect(page.locator('wr-decision [data-ahead]')).toBeVisible();
  await expect(note).toHaveValue('half a thought');
  // What was looked at stays where it is.
  await expect(page.getByRole('heading', { name: 'Choice 2 of 8: First pass across' })).toBeVisible();
  await page.getByText('All choices as a table').click();
  const table = page.getByRole('region', { name: 'All choices as a table' });
  const cells = async (column: number): Promise<string[]> =>
    await table.locator(`tbody tr td:nth-child(${column})`).allTextContents();
  const costs = await cells(4);
  expect(costs).toHaveLength(8);
  for (const cost of costs) expect(cost.trim()).toMatch(/^(–|(under )?\d+ ± (under )?\d+)$/);
  for (const now of await cells(5)) expect(now.trim()).toMatch(/^(–|\d+|under 1)$/);
  await page.getByRole('button', { name: /^4\. A second round or not/ }).click();
  const decision = page.locator('wr-decision');
  await expect(decision).toContainText(/to (stop|go on)/);
  await expect(decision.locator('[data-ahead]')).toHaveText(/give or take (under )?\d+\./);
  await expect(decision.getByText('Try another choice')).toBeHidden();
  expect(await violations(page)).toEqual([]);
});

/** Writes down from the next start on what the window asks of its workers. */
async function noteQuestions(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const asked: unknown[] = [];
    Reflect.set(window, 'asked', asked);
    const Plain = Worker;
    window.Worker = class extends Plain {
      override postMessage(message: { readonly question?: string }): void {
        asked.push(message.question);
        super.postMessage(message);
      }
    };
  });
}

test('another choice is tried: on average, and with the tiles that really came', async ({ windrow, page }) => {
  await noteQuestions(page);
  await withSeason(windrow);
  await lookBack(page, PASSES);
  await openChoices(page);
  await page.getByText('Try another choice').click();
  const look = page.getByRole('button', { name: 'What would have followed?' });
  await expect(look).toHaveAttribute('aria-disabled', 'true');
  await page.locator('wr-tile-toggles button').first().focus();
  for (const key of ['Space', 'ArrowRight', 'Space', 'End', 'Space']) await page.keyboard.press(key);
  await look.click();
  const table = page.getByRole('region', { name: 'Try another choice' });
  await expect(table).toBeVisible({ timeout: 30_000 });
  const rows = await table.locator('tbody tr').allTextContents();
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(row.match(/\d %/g)).toHaveLength(2);
  await expect(page.getByText(/^On average /).first()).toBeVisible();
  // What the choice made is worth is known from the look-back: only the other one is asked for.
  const asked: readonly unknown[] = await page.evaluate(() => Reflect.get(window, 'asked'));
  expect(asked.filter((question) => question === 'try')).toHaveLength(1);
  expect(await violations(page)).toEqual([]);
});

test('what is written stays: notes, place and tags; and nothing is computed twice', async ({ windrow, page }) => {
  await withSeason(windrow);
  await lookBack(page, PASSES);
  await openChoices(page);
  await page.getByLabel('Your note about this choice').fill('I saw only the bams.');
  await page.getByRole('button', { name: 'Keep the note' }).first().click();
  await expect(page.locator('wr-decision').getByText('I saw only the bams.')).toBeVisible();
  await page.getByLabel('Tags', { exact: true }).fill('thursday, learn from this');
  await page.getByLabel('Tags', { exact: true }).blur();
  await page.getByLabel('A note about the whole game').fill('Warm rolls at half-time.');
  const kept = page.waitForResponse(/keepFindings/);
  await page.getByRole('button', { name: 'Keep the note' }).last().click();
  await kept;
  await expect(page.locator('wr-details li').filter({ hasText: 'Warm rolls' })).toBeVisible();
  await noteQuestions(page);
  await windrow.restart();
  await windrow.go('Journal');
  await page.getByLabel('Search').fill('warm rolls');
  await expect(page.locator('.games li')).toHaveCount(1);
  await expect(page.locator('.games li')).toContainText('learn from this');
  await page.getByRole('link', { name: /^Look back at/ }).click();
  // The engine has no part in this: what was computed before is shown.
  await storyTold(page);
  await openChoices(page);
  await expect(page.locator('wr-decision')).toContainText('I saw only the bams.');
  const asked: readonly unknown[] = await page.evaluate(() => Reflect.get(window, 'asked'));
  expect(asked.filter((question) => question === 'lookBack' || question === 'figures')).toEqual([]);
});

test('CR-F4: one game goes out as a file of its own, and comes in again without being doubled', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await lookBack(page, PASSES);
  const { name, text } = await downloaded(page, () =>
    page.getByRole('button', { name: 'Save this game as a file' }).click(),
  );
  expect(name).toBe(`${PASSES}.windrow-game.json`);
  await page.getByRole('link', { name: 'All games' }).click();
  await part(page, 'Files');
  const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('wr-files-view input').setInputFiles(file);
  await expect(page.getByText('1 were here already.')).toBeVisible();
});

test('a look-back can be stopped, and begun again', async ({ windrow, page }) => {
  await withSeason(windrow);
  await page.evaluate((id) => (window.location.hash = `#/journal/game/${id}`), PLAYED);
  await expect(page.getByText('Looking back at your choices…')).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('The look-back was stopped.')).toBeVisible();
  await page.getByRole('button', { name: 'Look back now' }).click();
  await storyTold(page);
});

test('the summary is one page of paper, for a game with all of its play too', async ({ windrow, page }) => {
  await withSeason(windrow);
  for (const id of [PASSES, PLAYED]) {
    await page.evaluate((game) => (window.location.hash = `#/journal/game/${game}`), id);
    await expect(page.getByRole('button', { name: 'Print a summary' })).toHaveAttribute('aria-disabled', 'false', {
      timeout: 90_000,
    });
    const margin = { top: '12mm', bottom: '12mm', left: '12mm', right: '12mm' };
    for (const format of ['Letter', 'A4']) {
      const pdf = (await page.pdf({ format, margin })).toString('latin1');
      expect(pdf.match(/\/Type \/Page\b/g), `${id} on ${format}`).toHaveLength(1);
    }
  }
});

test('a game without a deal says that there is nothing to look back at; it opens at the Table', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await page.evaluate(() => (window.location.hash = '#/journal/game/demo-20260813-4'));
  await expect(page.getByText('No deal was logged in this game.')).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Open at the Table' }).click();
  await expect(page.getByRole('link', { name: 'Table', exact: true })).toHaveAttribute('aria-current', 'page');
});

test('from the result at the Table one button leads to the look-back of this game', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal('J FF N 0 13b 4578c 22d');
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Wall game');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await page.getByRole('button', { name: 'Look back', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Nobody won, a wall game; you were South' })).toBeVisible();
  await storyTold(page);
  await expect(page.getByText('No choice of yours is logged in this game.').first()).toBeVisible();
  expect(await violations(page)).toEqual([]);
});

test('the story tells of a moment what was done, what was better and why, and leads to it in the list', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await lookBack(page, PLAYED);
  await expect(
    page.getByRole('heading', { name: 'South won by own draw, Two Shores, 2nd line; you were East' }),
  ).toBeVisible();
  await expect(page.getByText(/^A game like this starts at \d+ in 100\. /)).toBeVisible();
  await expect(page.getByText(/set against the best one there was, “Your choices” .* steady player/)).toBeVisible();
  const moments = page.locator('wr-story article');
  expect(await moments.count()).toBeGreaterThanOrEqual(1);
  expect(await moments.count()).toBeLessThanOrEqual(3);
  const pass = moments
    .filter({ hasText: /pass (across|to the)/ })
    .filter({ hasText: 'Your best hand then was' })
    .first();
  await expect(pass.getByRole('heading')).toHaveText(/: about \d+ games? in 100$/);
  await expect(pass).toContainText(/You:.*Better:/s);
  await expect(pass).toContainText(/Your best hand then was .+, \d\w\w line/);
  await expect(pass.getByRole('link', { name: 'Practise it' })).toBeVisible();
  expect(await violations(page)).toEqual([]);
  const name = (await pass.getByRole('heading').textContent())?.split(':')[0] ?? '';
  await pass.getByRole('button', { name: 'More about it' }).click();
  await expect(page.getByRole('heading', { name: new RegExp(`^Choice \\d+ of \\d+: ${name}`) })).toBeInViewport();
  await expect(page.getByText('Try another choice')).toBeVisible();
});
