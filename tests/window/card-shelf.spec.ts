import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { changeLine } from '../../core/card/edit.ts';
import { writeCardFile } from '../../core/card/file.ts';
import { settingsWords } from '../../renderer/words/settings.ts';
import { cardText } from '../main/support/desks.ts';
import { copyDemo, startCard, view } from './card-evening.ts';
import { withUs } from './card-file.ts';
import { expect, test, type Windrow } from './windrow.ts';

const COPY = 'Lakeside demo card, my copy';

/** A copy of the demo card, in use at the Table, in the list of cards. */
async function copyInUse(windrow: Windrow): Promise<void> {
  await windrow.open('Card');
  await copyDemo(windrow);
  await windrow.page.getByRole('button', { name: 'Use at the Table' }).click();
  await view(windrow.page, 'Cards');
}

/** Chooses a card file, and agrees to the caution where it comes. */
async function bring(page: Page, name: string, text: string): Promise<void> {
  await view(page, 'Cards');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a card file' }).click();
  const agree = page.getByRole('button', { name: 'I understand' });
  await Promise.race([chooser, agree.waitFor().catch(() => undefined)]);
  if (await agree.isVisible()) await agree.click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await expect(page.getByText('Nothing was changed on this computer.')).toBeVisible();
}

test('the card in use is removed only after a question; brought back, it is in use again', async ({
  windrow,
  page,
}) => {
  await copyInUse(windrow);
  const card = page.locator('.card', { hasText: 'my copy' });
  const dialog = page.getByRole('dialog', { name: `Remove ${COPY}?` });
  await card.getByRole('button', { name: 'Remove' }).click();
  await expect(dialog).toBeVisible();
  await expect(page.getByText('New games would take the demo card.')).toBeVisible();
  await page.getByRole('button', { name: 'Keep the card' }).click();
  await expect(dialog).toBeHidden();
  await expect(card).toContainText('In use at the Table');

  await card.getByRole('button', { name: 'Remove' }).click();
  await page.getByRole('button', { name: 'Remove it' }).click();
  await expect(page.getByText('was removed. A dated copy is kept.')).toBeVisible();
  await expect(page.locator('.card', { hasText: 'In use at the Table' })).toContainText('Lakeside demo card');
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await view(page, 'Cards');
  await expect(card).toContainText('In use at the Table');
});

test('a card that is not in use is removed without a question', async ({ windrow, page }) => {
  await windrow.open('Card');
  await copyDemo(windrow);
  await view(page, 'Cards');
  await page.locator('.card', { hasText: 'my copy' }).getByRole('button', { name: 'Remove' }).click();
  await expect(page.getByText('was removed. A dated copy is kept.')).toBeVisible();
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

test('two cards of one title are told apart in the list, in the Settings and when one is put into use', async ({
  windrow,
  page,
}) => {
  const cards = join(windrow.folder, 'cards');
  await mkdir(cards, { recursive: true });
  await writeFile(join(cards, 'one.card.json'), cardText('Harbour'));
  await writeFile(join(cards, 'two.card.json'), cardText('Harbour'));
  await windrow.open('Card');
  await view(page, 'Cards');
  const shown = await page.locator('.card', { hasText: 'Harbour' }).allInnerTexts();
  expect(shown).toHaveLength(2);
  for (const text of shown) expect(text).toMatch(/1 line · saved .+ \d+:\d\d/);
  await page.locator('.card', { hasText: 'Harbour' }).first().getByRole('button', { name: 'Use at the Table' }).click();
  await expect(page.locator('#announcer')).toHaveText(/^Harbour.*1 line, saved .* is now the card for new games\.$/);
  await windrow.go('Settings');
  const choices = page.getByRole('group', { name: settingsWords.card }).getByRole('radio', { name: /Harbour/ });
  await expect(choices).toHaveCount(2);
  for (const name of await page.locator('wr-choice label', { hasText: 'Harbour' }).allInnerTexts())
    expect(name).toMatch(/1 line, saved .+ \d+:\d\d/);
});

test('a new card under a title and season that is here already is said beside the field, and can be begun', async ({
  windrow,
  page,
}) => {
  await windrow.open('Card');
  await startCard(windrow, 'Harbour card');
  await view(page, 'Cards');
  await page.getByRole('button', { name: 'Start an empty card' }).click();
  const said = page.getByText('You have a card of this title and season: 0 lines');
  await page.locator('wr-card-start').getByLabel('Title of the card').fill('Harbour card');
  await expect(said).toBeHidden();
  await page.locator('wr-card-start').getByLabel('Season').fill('2027');
  await expect(said).toBeVisible();
  await page.locator('wr-card-start').getByLabel('Title of the card').fill('Harbour card 2');
  await expect(said).toBeHidden();
  await page.locator('wr-card-start').getByLabel('Title of the card').fill('harbour card');
  await expect(said).toBeVisible();
  await page.getByRole('button', { name: 'Start the card' }).click();
  await expect(page.getByRole('heading', { name: 'This card has no sections yet.' })).toBeVisible();
});

test('a card that is saved as a file: the window shows its name and where it went', async ({ windrow, page }) => {
  await windrow.open('Card');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'I understand' }).click();
  const name = (await download).suggestedFilename();
  const notice = page.locator('wr-card-place wr-notice');
  await expect(notice).toContainText(`Saved as ${name} in the browser’s folder for downloads.`);
  await notice.getByRole('button', { name: 'Close' }).click();
  await expect(notice).toHaveCount(0);
});

test('a file of a card that is here already leads to that one', async ({ windrow, page }) => {
  await windrow.open('Card');
  await copyDemo(windrow);
  await view(page, 'Cards');
  const own = page.locator('.card', { hasText: 'my copy' });
  await own.getByRole('button', { name: 'Save as a file' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'I understand' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  await page.locator('.card').first().getByRole('button', { name: /^Open/ }).click();
  await bring(page, 'x.card.json', text);
  await expect(page.getByText('This card is here already.')).toBeVisible();
  await page.getByRole('button', { name: 'Open the one that is here' }).click();
  await expect(page.locator('wr-card-place p.now')).toContainText(COPY);
  await view(page, 'Cards');
  await expect(own).toHaveCount(1);

  await bring(page, 'x.card.json', text);
  await page.getByRole('button', { name: 'Keep it as a second card' }).click();
  await view(page, 'Cards');
  await expect(own).toHaveCount(2);
});

test('a file of the same title with other content says in how many lines it differs; problems are named by place', async ({
  windrow,
  page,
}) => {
  await windrow.open('Card');
  await copyDemo(windrow);
  let other = { ...withUs(), title: COPY };
  for (const line of [0, 2]) other = { ...changeLine(other, { section: 0, line }, { points: 90 }), title: COPY };
  const broken = { ...changeLine(other, { section: 1, line: 2 }, { pattern: 'FF 2?' }), title: COPY };
  await bring(page, 'x.card.json', writeCardFile(broken));
  await expect(page.getByText('It differs from yours in 3 lines.')).toBeVisible();
  const where = page.locator('wr-card-arrived .where').first();
  await expect(where).toHaveText(/, 3rd line · place \d+ of the line\s*$/);
  await page.getByRole('button', { name: 'Keep it as a new card' }).click();
  await view(page, 'Cards');
  await expect(page.locator('.card', { hasText: 'my copy' })).toHaveCount(2);
});

test('after a backup was brought in, the Settings list its cards at once', async ({ windrow, page }) => {
  await copyInUse(windrow);
  await windrow.go('Settings');
  const choice = page.getByRole('group', { name: settingsWords.card }).getByRole('radio', { name: /my copy/ });
  await expect(choice).toBeChecked();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: settingsWords.backupSave }).click();
  const path = await (await downloading).path();
  await page.getByRole('button', { name: settingsWords.removeButton }).click();
  await page.getByRole('button', { name: settingsWords.removeNext }).click();
  await page.getByRole('button', { name: settingsWords.removeYes }).click();
  await page.getByRole('button', { name: settingsWords.beginAnew }).click();
  await windrow.go('Settings');
  await expect(choice).toHaveCount(0);
  await page.getByLabel(settingsWords.restoreChoose).and(page.locator('input')).setInputFiles(path);
  await expect(page.getByRole('status').filter({ hasText: 'Added:' })).toBeVisible();
  await expect(choice).toBeChecked();
});
