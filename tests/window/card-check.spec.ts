import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { emptyCard } from '../../core/card/document.ts';
import { writeCardFile } from '../../core/card/file.ts';
import { kept, linesIn, view } from './card-evening.ts';
import { cardFiles } from './card-file.ts';
import { expect, test, type Windrow } from './windrow.ts';

const LINES = [
  { id: 'x-1', pattern: 'FF 2222b 4444b 6666b' },
  { id: 'x-2', pattern: 'NN EE WW SS DDa DDb DDc' },
  { id: 'x-2', pattern: 'FF 1111a 3333b 5555c' },
];
const SLIP = 'b stands for any second suit. Did you mean bams?';

/** Takes a card with slips in from its file, and goes to its check. */
async function checkSlips({ page }: Windrow): Promise<void> {
  const text = writeCardFile({ ...emptyCard('Mine', ''), sections: [{ name: 'Evens', lines: LINES }] });
  await page.getByRole('button', { name: 'Open a card file' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'I understand' }).click();
  await (await chooser).setFiles({ name: 'mine.card.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Keep it, and fix it here' }).click();
  await view(page, 'Check');
  await expect(page.getByText(SLIP)).toBeVisible();
}

/** What is kept of how far a person has come with the cards. */
async function progressTexts(folder: string): Promise<string[]> {
  const place = join(folder, 'cards', 'progress');
  const names = await readdir(place).catch((): string[] => []);
  return await Promise.all(names.map(async (name) => await readFile(join(place, name), 'utf8')));
}

async function inFile(folder: string): Promise<readonly Record<string, unknown>[]> {
  const [text = ''] = [...(await cardFiles(folder)).values()];
  return linesIn(text);
}

test('what is meant so is not asked again, until the line is changed', async ({ windrow, page }) => {
  await windrow.open('Card');
  await checkSlips(windrow);
  await page.getByRole('button', { name: 'I meant it so: Evens, 1st line' }).click();
  await expect(page.getByText(SLIP)).toBeHidden();
  await page.getByText('Meant so (1)').click();
  await expect(page.getByText(SLIP)).toBeVisible();

  await page.getByRole('button', { name: 'Use at the Table' }).first().click();
  await expect(page.getByText('In use at the Table')).toBeVisible();
  await expect.poll(async () => (await progressTexts(windrow.folder)).join()).toContain('suit-without-a');
  await windrow.restart();
  await windrow.go('Card');
  await view(page, 'Check');
  await expect(page.getByText('Meant so (1)')).toBeVisible();
  await expect(page.getByText(SLIP)).toBeHidden();

  await view(page, 'Lines');
  await page.locator('summary', { hasText: 'Note' }).click();
  await page.getByLabel('Note').fill('changed');
  await view(page, 'Check');
  await expect(page.getByText(SLIP)).toBeVisible();
  await expect(page.getByText('Meant so (1)')).toHaveCount(0);

  // Ticked and asked again by hand.
  await page.getByRole('button', { name: 'I meant it so: Evens, 1st line' }).click();
  await page.getByText('Meant so (1)').click();
  await page.getByRole('button', { name: 'Ask again: Evens, 1st line' }).click();
  await expect(page.getByText(SLIP)).toBeVisible();
});

test('slips are put right where they are found, each as one step', async ({ windrow, page }) => {
  await windrow.open('Card');
  await checkSlips(windrow);
  const words = 'inner name stands twice in the file; nothing printed is wrong.';
  await expect(page.getByText(words)).toBeVisible();
  await expect(page.locator('wr-card-check')).not.toContainText('x-2');
  await page.getByRole('button', { name: 'Put it right: Evens, 3rd line' }).click();
  await expect(page.getByText(words)).toHaveCount(0);
  await kept(page);
  expect((await inFile(windrow.folder)).map(({ id }) => id)).toEqual(['x-1', 'x-2', 'evens-4']);
  await page.keyboard.press('Control+z');
  await expect(page.getByText(words)).toBeVisible();

  await page.getByRole('button', { name: 'Bams: Evens, 1st line' }).click();
  await expect(page.getByText(SLIP)).toHaveCount(0);
  await kept(page);
  expect((await inFile(windrow.folder))[0]).toMatchObject({ pattern: 'FF 2222bam 4444bam 6666bam' });
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Any suit: Evens, 1st line' }).click();
  await kept(page);
  await expect(page.getByText('Evens, 1st line').first()).toBeVisible();
  expect((await inFile(windrow.folder))[0]).toMatchObject({ pattern: 'FF 2222a 4444a 6666a' });
});
