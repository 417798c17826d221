import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DEMO_CARD_TEXT } from '../../main/demo-card.ts';
import { BROUGHT_IN } from '../../renderer/desk/connect.ts';
import { adviceWords } from '../../renderer/words/advice.ts';
import { settingsWords as words } from '../../renderer/words/settings.ts';
import { withUs } from './card-file.ts';
import { expect, test, type Windrow } from './windrow.ts';

const DEAL = 'J FF N 0 13b 4578c 22d';

/** Files in the folder, those in folders below too; the lock of the running app is not a person's. */
async function filesIn(folder: string): Promise<string[]> {
  const found = await readdir(folder, { recursive: true, withFileTypes: true });
  return found.filter((entry) => entry.isFile() && entry.name !== 'in-use.json').map(({ name }) => name);
}

test('CR-F7: "Show my files" tells the folder and its path where the browser can not open it', async ({
  windrow,
  page,
}) => {
  await windrow.open('Settings');
  await page.getByRole('button', { name: words.show }).click();
  const status = page.getByRole('status').filter({ hasText: words.notShown });
  await expect(status).toContainText(windrow.folder);
  await expect(page.getByText(words.noticesNone)).toBeVisible();
});

test('CR-F2: everything goes into one file and comes back from it; what is here stays, and a second time adds nothing', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  await windrow.go('Settings');
  await page.getByRole('radio', { name: 'Large' }).check();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: words.backupSave }).click();
  const path = await (await downloading).path();
  expect(JSON.parse(await readFile(path, 'utf8'))).toMatchObject({
    kind: 'windrow.collection',
    games: [{ place: expect.any(String) }],
    preferences: { tiles: 'large' },
  });

  await page.getByRole('button', { name: words.removeButton }).click();
  await page.getByRole('button', { name: words.removeNext }).click();
  await page.getByRole('button', { name: words.removeYes }).click();
  await page.getByRole('button', { name: words.beginAnew }).click();
  await windrow.go('Settings');
  const bring = page.getByLabel(words.restoreChoose).and(page.locator('input'));
  await bring.setInputFiles(path);
  const said = page.getByRole('status').filter({ hasText: 'Added:' });
  await expect(said).toHaveText(`${words.brought(1, 0, 0, 0)} ${words.broughtSettings}`);
  await expect(page.getByRole('radio', { name: 'Large' })).toBeChecked();
  await bring.setInputFiles(path);
  await expect(said).toHaveText(words.brought(0, 0, 0, 0));
  await windrow.go('Journal');
  await expect(page.getByText('1 game', { exact: true })).toBeVisible();
});

test('a file that is none of ours is refused in words, and nothing changes', async ({ windrow, page }) => {
  await windrow.open('Settings');
  const before = await filesIn(windrow.folder);
  await page
    .getByLabel(words.restoreChoose)
    .and(page.locator('input'))
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"kind":"letter"}') });
  await expect(page.locator('wr-backup wr-notice')).toContainText(words.cannotRead);
  expect(await filesIn(windrow.folder)).toEqual(before);
});

test('CR-F7: delete everything asks twice, leaves 0 files, and begins anew', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  await windrow.go('Settings');
  expect((await filesIn(windrow.folder)).length).toBeGreaterThan(0);
  await page.getByRole('button', { name: words.removeButton }).click();
  await expect(page.getByText(words.removeBody(1, 0))).toBeVisible();
  await page.getByRole('button', { name: words.removeNo }).and(page.locator(':visible')).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect((await filesIn(windrow.folder)).length).toBeGreaterThan(0);

  await page.getByRole('button', { name: words.removeButton }).click();
  await page.getByRole('button', { name: words.removeNext }).click();
  await page.getByRole('button', { name: words.removeYes }).click();
  await expect(page.getByRole('heading', { name: words.removed })).toBeFocused();
  expect(await filesIn(windrow.folder)).toEqual([]);
  await page.getByRole('button', { name: words.beginAnew }).click();
  await expect(page.getByLabel('Type your tiles')).toBeVisible();
  await expect(page.locator('wr-rack [role=option]')).toHaveCount(0);
});

test('CR-F7: after it, closing leaves 0 files behind', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  await windrow.go('Settings');
  await page.getByRole('button', { name: words.removeButton }).click();
  await page.getByRole('button', { name: words.removeNext }).click();
  await page.getByRole('button', { name: words.removeYes }).click();
  await expect(page.getByRole('heading', { name: words.removed })).toBeFocused();
  await page.goto('about:blank');
  await windrow.close();
  const left = await readdir(windrow.folder, { recursive: true, withFileTypes: true });
  expect(left.filter((entry) => entry.isFile()).map(({ name }) => join(name))).toEqual([]);
});

test('the kind of table is chosen with what comes out for the card, holds at the Table and is kept', async ({
  windrow,
  page,
}) => {
  const chance = page.getByRole('button', { name: /explain Chance/ });
  await windrow.open();
  await windrow.deal(DEAL);
  await expect(chance).toHaveText(/^\s*Chance: about \d+ in 100\s*$/);
  const atClub = await chance.textContent();
  await windrow.go('Settings');
  const kinds = page.getByRole('group', { name: words.kinds.label });
  await expect(kinds.getByRole('radio', { name: words.kinds.names.club })).toBeChecked();
  const figures = page.locator('wr-table-kind').getByRole('status');
  await expect(figures).toContainText(words.kinds.figures('about 11 games in 100', 66));
  await kinds.getByRole('radio', { name: words.kinds.names.relaxed }).check();
  await expect(figures).toContainText(words.kinds.figures('about 24 games in 100', 73));
  await expect(figures).toContainText(words.kinds.counted);
  await windrow.go('Table');
  await expect(chance).not.toHaveText(atClub ?? '');
  await expect(chance).toHaveText(/^\s*Chance: about \d+ in 100\s*$/);
  await chance.click();
  await expect(page.locator('wr-explain', { has: chance })).toContainText('at a relaxed table');
  await windrow.saved();
  await windrow.restart();
  await windrow.go('Settings');
  await expect(kinds.getByRole('radio', { name: words.kinds.names.relaxed })).toBeChecked();
});

test('when advice is welcome is chosen in the Settings, with the caution beside it, and is there after a restart', async ({
  windrow,
  page,
}) => {
  await windrow.open('Settings');
  await expect(page.getByText(adviceWords.caution)).toBeVisible();
  const choice = page.getByRole('group', { name: adviceWords.label });
  await expect(choice.getByRole('radio', { name: 'At once' })).toBeChecked();
  await choice.getByRole('radio', { name: 'Not at the table' }).check();
  await windrow.restart();
  await windrow.go('Settings');
  await expect(choice.getByRole('radio', { name: 'Not at the table' })).toBeChecked();
});

test('the licences of all that is shipped are read on demand, and not before', async ({ windrow, page }) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await windrow.open('Settings');
  expect(asked).not.toContain('/licences.txt');
  await page.getByRole('button', { name: words.licencesShow }).click();
  const text = page.locator('wr-licences pre');
  await expect(text).toContainText('Copyright (c) 2017 Google LLC');
  await expect(text).toContainText('papaparse 5.7.1, MIT');
  await page.getByRole('button', { name: words.licencesHide }).click();
  await expect(text).toHaveCount(0);
});

test('licences that can not be had are told of, and may be asked for again', async ({ windrow, page }) => {
  await windrow.open('Settings');
  await page.route('**/licences.txt', async (route) => await route.fulfill({ body: '' }));
  await page.getByRole('button', { name: words.licencesShow }).click();
  await expect(page.getByText(words.licencesFailed)).toBeVisible();
  await page.unroute('**/licences.txt');
  await page.getByRole('button', { name: words.licencesShow }).click();
  await expect(page.locator('wr-licences pre')).toContainText('Windrow');
  await expect(page.getByText(words.licencesFailed)).toHaveCount(0);
});

test('a card that the desktop shell took in stands in the lists at once', async ({ windrow, page }) => {
  await windrow.open('Settings');
  const cards = page.locator('wr-choice').filter({ hasText: words.card });
  await expect(cards.getByRole('radio')).toHaveCount(1);
  await mkdir(join(windrow.folder, 'cards'), { recursive: true });
  const text = JSON.stringify({ ...JSON.parse(DEMO_CARD_TEXT), title: 'Spring' });
  await writeFile(join(windrow.folder, 'cards', 'spring.card.json'), text);
  const tell = async (): Promise<boolean> =>
    await page.evaluate((name) => window.dispatchEvent(new Event(name)), BROUGHT_IN);
  await tell();
  await expect(cards.getByRole('radio', { name: /^Spring/ })).toBeVisible();
  for (const [place, call] of [
    ['Card', 'listCards'],
    ['Journal', 'listGames'],
  ] as const) {
    await windrow.go(place);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    const asked = page.waitForRequest(`**/desk/${call}`);
    await tell();
    await asked;
  }
});

/** Keeps a card of one line under its own name, chooses it in the Settings, and deals. */
async function dealOnOneLine(windrow: Windrow, pattern: string): Promise<void> {
  const { page } = windrow;
  const cards = join(windrow.folder, 'cards');
  await mkdir(cards, { recursive: true });
  const sections = [{ name: 'Pier', lines: [{ id: 'p-1', pattern, points: 25 }] }];
  const card = { ...withUs(), title: 'Harbour card', season: '2027', sections };
  await writeFile(join(cards, 'pier.card.json'), JSON.stringify(card));
  await windrow.open('Settings');
  const choice = page.getByRole('radio', { name: /^Harbour card/ });
  await choice.check();
  await expect(choice).toBeChecked();
  await windrow.go('Table');
  await windrow.deal(DEAL);
}

test('a card chosen in the Settings is the one that the next deal is read against', async ({ windrow, page }) => {
  await dealOnOneLine(windrow, 'FF 2222a 4444b 6666c');
  await expect(page.getByText('all Pier')).toBeVisible();
});

test('a card none of whose lines can be played says so at the Table, and a game with it is logged', async ({
  windrow,
  page,
}) => {
  await dealOnOneLine(windrow, 'FF 2222a 4444b 66d');
  await expect(page.getByText('No line of your card can be played. Look at its lines under Card.')).toBeVisible();
  await windrow.quiet();
  await page.getByRole('button', { name: 'Go on to play' }).click();
  await windrow.saved();
});
