import { openWarmUp } from './warmup-helpers.ts';
import { expect, test } from './windrow.ts';

test('CR-R1: a problem of play: a tile is thrown, then what each costs, what the others can hold, and how it goes', async ({
  windrow,
  page,
}) => {
  test.setTimeout(180_000);
  await openWarmUp(windrow);
  await page.getByRole('tab', { name: 'Throw' }).click();
  await page.getByRole('button', { name: 'Show me a moment' }).click();
  await expect(page.getByRole('heading', { name: 'What do you throw?' })).toBeFocused({ timeout: 60_000 });
  // Nothing is told before a tile is thrown.
  await expect(page.getByText('What each tile costs')).toHaveCount(0);
  await expect(page.getByText('too early to tell')).toHaveCount(0);
  const button = page.getByRole('button', { name: 'Throw it' });
  await expect(button).toHaveAttribute('aria-disabled', 'true');
  await page.locator('wr-throw wr-rack [role=option]').last().click();
  await page.getByRole('button', { name: /^Throw the / }).click();
  await expect(page.getByText(/^You threw the /)).toBeVisible();
  const list = page.locator('wr-throw ol li');
  await expect(list.first()).toBeVisible({ timeout: 120_000 });
  expect(await list.count()).toBeGreaterThan(4);
  await expect(page.locator('wr-throw li.own')).toHaveCount(1);
  await expect(page.locator('wr-throw .seats').getByText('wants').first()).toBeVisible();
  await page.getByRole('tab', { name: 'Progress' }).click();
  await expect(page.getByText(/^[01] of 1 were as good as the best/)).toBeVisible();
});

test('with the keyboard alone: a tile is chosen and thrown by Enter', async ({ windrow, page }) => {
  test.setTimeout(120_000);
  await openWarmUp(windrow);
  await page.getByRole('tab', { name: 'Throw' }).click();
  await page.getByRole('button', { name: 'Show me a moment' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'What do you throw?' })).toBeFocused({ timeout: 60_000 });
  const tile = page.locator('wr-throw wr-rack [role=option]:focus');
  for (let stop = 0; stop < 12 && (await tile.count()) === 0; stop += 1) await page.keyboard.press('Tab');
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^You threw the /)).toBeVisible();
});
