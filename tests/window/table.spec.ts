import { adviceWords } from '../../renderer/words/advice.ts';
import { playWords } from '../../renderer/words/play.ts';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test, type Windrow } from './windrow.ts';

const DEAL = 'J FF N 0 13b 4578c 22d';

test('a newcomer reaches a first deal and its reading in one click', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('button', { name: 'Try an example deal' }).click();
  await expect(page.locator('wr-hand').first()).toBeVisible();
  await expect(page.locator('wr-reading-panel wr-explain').first()).toBeVisible();
});

test('CR-K7: a rack of 13 is typed with at most 45 key strokes, none of them a chord', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('radio', { name: 'South' }).check();
  await page.getByLabel('Type your tiles').focus();
  const keys = ['j', 'ff', 'n', '0', '13b', '4578c', '22d'].join('').split('');
  for (const key of keys) await page.keyboard.press(key);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
  expect(keys.length + 1).toBeLessThanOrEqual(45);
  expect(await windrow.rack()).toHaveLength(13);
});

test('CR-O4: a rack of 13 is pointed at with 13 clicks and one more, 14 in all', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('radio', { name: 'South' }).check();
  let clicks = 0;
  const click = async (name: RegExp | string): Promise<void> => {
    await page.getByRole('button', { name }).click();
    clicks += 1;
  };
  for (const name of ['joker', 'flower', 'flower', 'north wind', 'white dragon', 'one bam', 'three bam']) {
    await click(new RegExp(`^${name}`));
  }
  for (const name of ['four crak', 'five crak', 'seven crak', 'eight crak', 'two dot', 'two dot']) {
    await click(new RegExp(`^${name}`));
  }
  await click('That is my deal');
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
  expect(clicks).toBe(14);
});

test('five of a tile: one sentence beside the field, and nothing typed is lost', async ({ windrow, page }) => {
  await windrow.open();
  const field = page.getByLabel('Type your tiles');
  await field.fill('55555b N');
  await expect(
    page.getByText('There are 5 five bams (5b), but the set has only 4: take 1 away.').first(),
  ).toBeVisible();
  await expect(field).toHaveValue('55555b N');
});

test('too few or too many tiles: the button says how many, and does nothing', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('radio', { name: 'South' }).check();
  await page.getByLabel('Type your tiles').fill('J FF N 0 13b 4578c 2d');
  await expect(page.getByText('1 tile to go')).toBeVisible();
  await page.getByRole('button', { name: 'That is my deal' }).click({ force: true });
  await expect(page.getByRole('heading', { name: 'What were you dealt?' })).toBeVisible();
  await page.getByLabel('Type your tiles').fill('J FF N 0 13b 4578c 222d 9d');
  await expect(page.getByText('2 tiles too many')).toBeVisible();
});

test('tiles entered before the deal is complete are there after a restart', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByLabel('Type your tiles').fill('FF 123b');
  await windrow.saved();
  await windrow.restart();
  expect(await windrow.rack()).toEqual(['flower', 'flower', 'one bam', 'two bam', 'three bam']);
});

test('tiles entered before a deal days ago are there still, and the game is of today', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByLabel('Type your tiles').fill('FF 123b');
  await windrow.saved();
  await page.goto('about:blank');
  await windrow.close();
  const file = join(windrow.folder, 'draft.json');
  const draft: Record<string, unknown> = JSON.parse(readFileSync(file, 'utf8'));
  writeFileSync(file, JSON.stringify({ ...draft, startedAt: '2026-01-05T10:00:00Z' }));
  await windrow.open();
  expect(await windrow.rack()).toHaveLength(5);
  await windrow.deal(DEAL);
  await windrow.saved();
  const years = readdirSync(join(windrow.folder, 'games'));
  const months = readdirSync(join(windrow.folder, 'games', years[0] ?? ''));
  expect(`${years.join()}-${months.join()}`).toBe(new Date().toISOString().slice(0, 7));
});

test('tiles entered before the deal is complete make no line in the journal', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByLabel('Type your tiles').fill('FF 123b');
  await windrow.saved();
  await windrow.go('Journal');
  await expect(page.getByText('Not dealt yet')).toHaveCount(0);
  await expect(page.getByText('No game yet.')).toBeVisible();
  await windrow.go('Table');
  expect(await windrow.rack()).toHaveLength(5);
});

test('arrange restores the usual order, and hand-made groups stay until then', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const before = await windrow.rack();
  await page.locator('wr-rack [role=option]').last().focus();
  for (let step = 0; step < 4; step += 1) await page.keyboard.press('Alt+ArrowLeft');
  const moved = await windrow.rack();
  expect(moved).not.toEqual(before);
  await windrow.saved();
  await windrow.restart();
  expect(await windrow.rack()).toEqual(moved);
  await page.getByRole('button', { name: 'Arrange' }).click();
  expect(await windrow.rack()).toEqual(before);
});

test('undo and redo: every step of the table, by button and by key', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await page.locator('wr-rack [role=option]').filter({ hasText: '' }).nth(3).click();
  await page.getByRole('button', { name: 'Set aside' }).click();
  expect(await windrow.rack()).toHaveLength(12);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await windrow.rack()).toHaveLength(13);
  await page.keyboard.press('Control+Shift+z');
  expect(await windrow.rack()).toHaveLength(12);
});

test('CR-W1: a gap is made and closed by clicks, and is there after a restart', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const gaps = page.locator('wr-rack .cell.gap');
  await page.locator('wr-rack [role=option]').nth(5).click();
  await page.getByRole('button', { name: 'Gap before the chosen tile' }).click();
  await expect(gaps).toHaveCount(1);
  await windrow.saved();
  await windrow.restart();
  await expect(gaps).toHaveCount(1);
  await page.locator('wr-rack [role=option]').nth(5).click();
  await page.getByRole('button', { name: 'Gap before the chosen tile' }).click();
  await expect(gaps).toHaveCount(0);
});

test('CR-K3: who has gone on by key while parts were on their way keeps the focus there', async ({ windrow, page }) => {
  await windrow.open();
  const { go } = await holdParts(page);
  await page.getByLabel('Type your tiles').fill(`${DEAL} 9d`);
  await page.keyboard.press('Enter');
  const rack = page.getByRole('listbox', { name: 'Your rack' });
  for (let tabs = 0; tabs < 30 && (await rack.locator(':focus').count()) === 0; tabs += 1) {
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('End');
  await expect(rack.locator('wr-tile').last()).toBeFocused();
  go();
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Give 3 tiles' })).toBeVisible();
  await windrow.quiet();
  await expect(rack.locator('wr-tile').last()).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('wr-slots .slot.tile')).toHaveCount(1);
});

test('CR-K3: who waits while parts are on their way gets the focus where the next step is', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  const { go } = await holdParts(page);
  await page.getByLabel('Type your tiles').fill(`${DEAL} 9d`);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('listbox', { name: 'Your rack' })).toBeVisible();
  go();
  await expect(page.getByRole('button', { name: 'Give 3 tiles' })).toBeFocused();
});

test('after "New game" the focus is in the field for tiles', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal('J FF N 0 13b 4578c 22d');
  await page.getByRole('button', { name: 'New game' }).click();
  await page.getByRole('button', { name: 'Begin a new game' }).click();
  await expect(page.getByLabel('Type your tiles')).toBeFocused();
});

test('the first game asks when advice is welcome, with the caution beside it; once answered it is not asked again', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  const question = page.getByRole('group', { name: adviceWords.ask });
  await expect(page.getByText(adviceWords.caution)).toBeVisible();
  await expect(question.getByRole('radio', { name: 'At once' })).toBeChecked();
  await question.getByRole('radio', { name: 'After I have chosen' }).check();
  await expect(page.getByText(adviceWords.about['after-choice'])).toBeVisible();
  await windrow.deal('J FF N 0 13b 4578c 22d');
  await windrow.saved();
  await page.getByRole('button', { name: 'New game' }).click();
  await page.getByRole('button', { name: 'Begin a new game' }).click();
  await expect(page.getByLabel('Type your tiles')).toBeFocused();
  await expect(question).toHaveCount(0);
});

/** Answers the question about advice, and deals. */
async function dealtWith(windrow: Windrow, advice: string): Promise<void> {
  await windrow.open();
  await windrow.page.getByRole('group', { name: adviceWords.ask }).getByRole('radio', { name: advice }).check();
  await windrow.deal('J FF N 0 13b 4578c 22d');
}

/** Everything at the Table that says something of the rack. */
const AIDS = 'wr-reading-panel, wr-plan-panel .list, wr-slots .offer, wr-advice-list, .chance, wr-rack wr-tile[mark]';

test('not at the table: neither reading nor plan nor marks nor advice in play; the game is logged as ever', async ({
  windrow,
  page,
}) => {
  await dealtWith(windrow, 'Not at the table');
  await expect(page.locator('.hands').getByText(adviceWords.about.none)).toBeVisible();
  await page.locator('wr-rack [role=option]').nth(3).click();
  await page.waitForTimeout(1000);
  await expect(page.locator(AIDS)).toHaveCount(0);
  await expect(page.getByText(/^(Keep|Spare):/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Set aside' }).click();
  for (const name of ['white dragon', 'one bam']) {
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await page.waitForTimeout(500);
  await expect(page.locator(AIDS)).toHaveCount(0);
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await page.getByLabel('Type it, or click it').fill('9d 3c 5d');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Go on to play' }).click();
  await page.getByLabel('Type it, or click it').fill('9c 6c');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'What do you discard?' })).toBeVisible();
  await page.waitForTimeout(1000);
  await expect(page.locator(AIDS)).toHaveCount(0);
});

test('after I have chosen: the reading at once, the cost once three tiles lie in the tray, the best pass once they are given', async ({
  windrow,
  page,
}) => {
  await dealtWith(windrow, 'After I have chosen');
  await expect(page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
  const chosen = ['north wind', 'white dragon', 'one bam'];
  for (const name of chosen) {
    await expect(page.locator('wr-plan-panel .list, wr-rack wr-tile[mark]')).toHaveCount(0);
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).click();
    await expect(page.getByText(/^(Keep|Spare):/)).toHaveCount(0);
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await expect(page.locator('wr-give-panel .said strong')).toHaveText(/^Yours is /, { timeout: 60_000 });
  await expect(page.locator('wr-plan-panel .list, wr-slots .offer, wr-rack wr-tile[mark]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await expect(page.locator('wr-receive-panel')).toContainText(/You gave/);
  await page.getByLabel('Type it, or click it').fill('9d 3c 5d');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Go on to play' }).click();
  await page.getByLabel('Type it, or click it').fill('9c 6c');
  await page.keyboard.press('Enter');
  const band = page.locator('wr-advice-panel .answer');
  await expect(band).toHaveText(playWords.advice.chooseFirst);
  await expect(page.locator('wr-advice-list, wr-rack wr-tile[mark]')).toHaveCount(0);
  await page.getByLabel('Type it, or click it').fill('J');
  await page.keyboard.press('Enter');
  await expect(band).toHaveText(/^That (gave up|spent).* Better was: Discard /, { timeout: 60_000 });
});

/** Holds up the parts of the Table that come once a rack is dealt, until `go`. */
async function holdParts(page: Page): Promise<{ go: () => void }> {
  let go = (): void => undefined;
  const gate = new Promise<void>((done) => (go = done));
  await page.route('**/dealt-parts-*.js', async (route) => {
    await gate;
    await route.continue();
  });
  return { go };
}
