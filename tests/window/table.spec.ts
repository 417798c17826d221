import { expect, test } from './windrow.ts';

const DEAL = 'J FF N 0 13b 4578c 22d';

test('a newcomer reaches a first deal and its reading in one click', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('button', { name: 'Try an example deal' }).click();
  await expect(page.locator('wr-hand').first()).toBeVisible();
  await expect(page.getByRole('button', { name: '7, explain Away' }).first()).toBeVisible();
});

test('K7: a rack of 13 is typed with at most 45 key strokes, none of them a chord', async ({ windrow, page }) => {
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

test('O4: a rack of 13 is pointed at with 13 clicks and one more', async ({ windrow, page }) => {
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

test('W1: a gap is made and closed by clicks, and is there after a restart', async ({ windrow, page }) => {
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
