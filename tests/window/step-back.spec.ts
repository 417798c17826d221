import { DEAL } from './feel.ts';
import { openWarmUp } from './warmup-helpers.ts';
import { expect, test } from './windrow.ts';

test('what is undone and done again is said, with where the game stands now', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const said = page.locator('#announcer');
  await page.keyboard.press('Control+z');
  await expect(said).toHaveText('Undone: the deal. Not dealt yet.');
  await page.keyboard.press('Control+y');
  await expect(said).toHaveText('Done again: the deal. First right pass: choose what to give.');
  await page.keyboard.press('Control+z');
  await expect(said).toHaveText('Undone: the deal. Not dealt yet.');
  await page.keyboard.press('Control+Shift+Z');
  await expect(said).toHaveText('Done again: the deal. First right pass: choose what to give.');
});

test('tiles that were entered together are taken back together', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await page.getByRole('button', { name: /^Give / }).click();
  await page.getByLabel('Type it, or click it').fill('9d 3c 6c');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Pass three across' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('0 of 3 entered')).toBeVisible();
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect(page.getByRole('heading', { name: 'Pass three across' })).toBeVisible();
});

test('a new sheet by keyboard: the focus goes to its title, and back to the list when it is left', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  await page.getByRole('tab', { name: 'Sheets' }).click();
  const create = page.getByRole('button', { name: 'A new sheet' });
  await create.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('wr-sheets wr-field.title input')).toBeFocused();
  await page.getByRole('button', { name: 'All sheets' }).focus();
  await page.keyboard.press('Enter');
  await expect(create).toBeFocused();
  await page.getByRole('button', { name: /^Remove/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Bring it back' })).toBeFocused();
});

test('the example season by keyboard: the focus goes to the parts of the Journal, not to nowhere', async ({
  windrow,
  page,
}) => {
  await windrow.open('Journal');
  await page.getByRole('button', { name: 'Add the example season' }).focus();
  await page.keyboard.press('Enter');
  const games = page.getByRole('link', { name: 'Games', exact: true });
  await expect(games).toBeFocused();
  await expect(page.getByRole('status').filter({ hasText: '64 games' })).toBeVisible({ timeout: 60_000 });
  await expect(games).toBeFocused();
});

test('a wrong tile of an earlier pass is corrected where the passes are listed, in one step that can be undone', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal('J FF N 0 13b 4578c 22d');
  for (const name of ['north wind', 'white dragon', 'one bam']) {
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).click();
    await page.getByRole('button', { name: 'Set aside', exact: true }).click();
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await page.getByLabel('Type it, or click it').fill('9d 3c 6c');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Pass three across' })).toBeVisible();
  await page.getByText('Passes so far').click();
  await page.getByRole('button', { name: 'Correct three crak' }).click();
  const field = page.getByLabel('What was it instead of the three crak?').first();
  await expect(field).toBeFocused();
  await field.fill('W');
  await page.keyboard.press('Enter');
  await expect(page.locator('#announcer')).toContainText('Corrected: west wind instead of three crak.');
  expect(await windrow.rack()).toContain('west wind');
  expect(await windrow.rack()).not.toContain('three crak');
  // What was given went out of the deal, so that it can't have been another tile there.
  await page.getByRole('button', { name: 'Correct white dragon' }).first().click();
  await page.getByLabel('What was it instead of the white dragon?').first().fill('R');
  await page.keyboard.press('Enter');
  await expect(
    page.getByText('With that tile, what you gave in the first right pass would be impossible.').first(),
  ).toBeVisible();
  await windrow.saved();
  await windrow.restart();
  await expect(page.getByRole('heading', { name: 'Pass three across' })).toBeVisible();
  expect(await windrow.rack()).toContain('west wind');
});
