import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { cardText, event, gameRecord } from '../main/support/desks.ts';
import { copyWords, settingsWords } from '../../renderer/words/settings.ts';
import { cardWords } from '../../renderer/words/card.ts';
import { filesWords } from '../../renderer/words/journal.ts';
import { part } from './journal-helpers.ts';
import { expect, test } from './windrow.ts';

test('CR-D7: a game and a card in two files are told of, and a person chooses what stays', async ({
  windrow,
  page,
}) => {
  const { folder } = windrow;
  for (const [month, place] of [
    ['11', 'Lakeside library'],
    ['12', 'Elsewhere'],
  ] as const) {
    await mkdir(join(folder, 'games/2026', month), { recursive: true });
    const game = writeGameFile(gameRecord('g-1', { place, events: [event(0)] }));
    await writeFile(join(folder, 'games/2026', month, 'g-1.json'), game);
  }
  await mkdir(join(folder, 'cards'));
  await writeFile(join(folder, 'cards/mine.card.json'), cardText('Mine'));
  await writeFile(join(folder, 'cards/mine (1).card.json'), cardText('Theirs'));
  await windrow.open('Settings');
  await expect(page.locator('wr-shell > wr-notice, wr-shell wr-notice').first()).toContainText(
    'Choose in the Settings',
  );
  const choices = page.locator('wr-copies');
  await expect(choices.getByRole('listitem')).toHaveCount(2);
  await expect(choices).toContainText('games/2026/12/g-1.json');
  await choices.getByRole('button', { name: `${copyWords.keepCopy}: games/2026/12/g-1.json` }).click();
  // Nothing goes on with the version that was in use: the page is opened anew.
  await expect(choices.getByRole('listitem')).toHaveCount(1);
  await choices.getByRole('button', { name: `${copyWords.keepBoth}: cards/mine (1).card.json` }).dblclick();
  await expect(choices.getByRole('status')).toHaveText(copyWords.done.both);
  await expect(choices.getByRole('status')).toBeFocused();
  await expect(choices.getByRole('button')).toHaveCount(0);
  // What is settled is not told of any more.
  await expect(page.locator('wr-shell wr-notice')).toHaveCount(0);
  await windrow.go('Journal');
  await expect(page.locator('wr-games-view')).toContainText('Elsewhere');
  expect(await readdir(join(folder, 'games/2026/11'))).toEqual([expect.stringMatching(/^g-1\.json\.other-/)]);
  await windrow.go('Card');
  await page.getByRole('tab', { name: cardWords.views.cards }).click();
  await expect(page.locator('wr-card-list')).toContainText('Mine');
  await expect(page.locator('wr-card-list')).toContainText('Theirs');
});

/** Whether a dialog for files offers a name, by the field's `accept` as HTML has it: endings, or kinds by the ending. */
function offers(accept: string | null, name: string): boolean {
  const wanted = (accept ?? '')
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');
  return wanted.length === 0 || wanted.some((each) => each.startsWith('.') && name.toLowerCase().endsWith(each));
}

test('what was kept aside can be chosen, and is brought in beside what is here', async ({ windrow, page }) => {
  await windrow.open('Journal');
  await part(page, 'Files');
  const names = ['g-1.json.other-2026-11-25T09-15-30Z', 'g-1.earlier-2026-11-25T09-15-30Z.json'];
  for (const [at, name] of names.entries()) {
    const choosing = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: filesWords.choose }).click();
    const chooser = await choosing;
    expect(offers(await chooser.element().getAttribute('accept'), name)).toBe(true);
    const game = gameRecord('g-1', { place: `Version ${at}`, events: [event(0)] });
    await chooser.setFiles({ name, mimeType: '', buffer: Buffer.from(writeGameFile(game)) });
    await expect(page.getByText(at === 0 ? filesWords.brought(1, 0, 0) : filesWords.brought(0, 1, 0))).toBeVisible();
  }
  for (const place of ['Card', 'Settings']) {
    await windrow.go(place);
    const field = page.locator(place === 'Card' ? 'wr-card-place input[type=file]' : 'wr-backup input[type=file]');
    expect(offers(await field.first().getAttribute('accept'), 'mine.card.json.other-2026-11-25T09-15-30Z')).toBe(true);
  }
  await expect(page.getByText(settingsWords.noticesNone)).toBeVisible();
});
