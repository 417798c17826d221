import type { Page } from '@playwright/test';
import { choose } from './play.ts';
import { violations } from './violations.ts';
import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

const DEAL = 'J FF N 0 13b 4578c 22d';
const TEXT = 'Your note, for the look-back';

test.describe.configure({ timeout: 120_000 });

async function giveThree(page: Page): Promise<void> {
  for (const name of ['north wind', 'white dragon', 'one bam']) {
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).click();
    await page.keyboard.press('Enter');
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await expect(page.getByText('0 of 3 entered')).toBeVisible();
}

test('a note about the last choice and one about the game, by mouse; the look-back has both', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  const button = page.getByRole('button', { name: 'Note', exact: true });
  await expect(button).toHaveCount(0);
  await windrow.deal(DEAL);
  await button.click();
  // Before the first choice there is only the game to write about.
  await expect(page.getByRole('group', { name: 'What is it about?' })).toBeHidden();
  await expect(page.getByRole('button', { name: 'Keep the note' })).toBeDisabled();
  await page.getByLabel(TEXT).fill('A fair deal');
  await page.getByRole('button', { name: 'Keep the note' }).click();
  await expect(page.getByLabel(TEXT)).toBeHidden();

  await giveThree(page);
  await button.click();
  await choose(page, 'What is it about?', 'My last choice: first right pass');
  expect(await violations(page)).toEqual([]);
  await page.getByLabel(TEXT).fill('Was that too early?');
  await page.getByRole('button', { name: 'Not now' }).click();
  // What was typed and not kept is still there.
  await button.click();
  await expect(page.getByLabel(TEXT)).toHaveValue('Was that too early?');
  await page.getByRole('button', { name: 'Keep the note' }).click();
  await windrow.saved();

  await windrow.go('Journal');
  await page.getByRole('link', { name: /Look back/ }).click();
  await expect(page.getByText('Was that too early?').first()).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('A fair deal').first()).toBeVisible();
});

test('CR-K1: a note by keys alone; Escape leaves it, undo takes it back', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const button = page.getByRole('button', { name: 'Note', exact: true });
  await button.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByLabel(TEXT)).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.getByLabel(TEXT)).toBeHidden();
  await expect(button).toBeFocused();
  await page.keyboard.press('Enter');
  await page.keyboard.type('Two flowers');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel(TEXT)).toBeHidden();
  await expect(button).toBeFocused();
  await page.keyboard.press('Control+z');
  // The note is gone and the deal is still there.
  expect(await windrow.rack()).toHaveLength(13);
});
