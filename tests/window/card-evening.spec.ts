import {
  addSection,
  buildByClicks,
  kept,
  lineRow,
  linesIn,
  saidBy,
  startCard,
  TWENTY,
  typedLine,
  typeLine,
  view,
} from './card-evening.ts';
import { cardFiles } from './card-file.ts';
import { SIXTY } from './sixty-lines.ts';
import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

/** A whole evening: a card entered, proof-read and used. */
test.setTimeout(240_000);

/** What the lines of the only own card say, once they are on disk. */
async function entered(folder: string): Promise<readonly unknown[]> {
  const [text] = [...(await cardFiles(folder)).values()];
  return linesIn(text ?? '').map(saidBy);
}

function mean(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0) / counts.length;
}

test('a card of 20 lines by clicks only, proof-read, and used at the Table', async ({ windrow, page }) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Mine');
  await page.locator('summary', { hasText: 'Build it from tiles' }).click();
  const clicks: number[] = [];
  for (const [at, line] of TWENTY.entries()) {
    if (at > 0) await lineRow(page, 1, at + 1).click();
    clicks.push(1 + (await buildByClicks(page, line)));
  }
  await kept(page);
  expect(await entered(windrow.folder)).toEqual(TWENTY.map(saidBy));

  await view(page, 'Proof-read');
  for (let line = 0; line < TWENTY.length; line += 1) {
    await expect(page.getByText(`${line} of 20 lines confirmed`).first()).toBeVisible();
    await page.getByRole('button', { name: 'Same as printed' }).click();
  }
  await expect(page.getByText('Every line is confirmed.')).toBeVisible();
  await page.getByRole('button', { name: 'Use this card at the Table' }).click();
  await expect(page.getByText('In use at the Table')).toBeVisible();

  await windrow.go('Table');
  await windrow.deal('J FF N 0 13b 4578c 22d');
  await expect(page.getByText(/^Mine, \d+(st|nd|rd|th) line$/).first()).toBeVisible();
  await windrow.saved();
  await windrow.restart();
  await windrow.go('Card');
  await view(page, 'Proof-read');
  await expect(page.getByText('20 of 20 lines confirmed').first()).toBeVisible();
});

test('CR-K6: a card of 60 lines in ten sections, typed by what the screen says: 60 of 60 right, at most 28 strokes a line', async ({
  windrow,
  page,
}, { annotations }) => {
  await windrow.open('Card');
  await startCard(windrow);
  await expect(page.locator('wr-card-lines').getByLabel('Name of the new section')).toBeVisible();
  await page.getByLabel('Name of the new section').focus();
  let section = '';
  const strokes: number[] = [];
  for (const { section: own, printed, line } of SIXTY) {
    if (own !== section) {
      // An empty new line, and Enter: on to the next section.
      if (section !== '') await page.keyboard.press('Enter');
      await expect(page.getByLabel('Name of the new section')).toBeFocused();
      await page.keyboard.type(own);
      await page.keyboard.press('Enter');
      await expect(typedLine(page)).toBeFocused();
      section = own;
    }
    strokes.push(await typeLine(page, line, printed));
  }
  await kept(page);
  expect(await entered(windrow.folder)).toEqual(SIXTY.map(({ line }) => saidBy(line)));
  annotations.push({ type: 'strokes a line', description: mean(strokes).toFixed(1) });
  expect(mean(strokes)).toBeLessThanOrEqual(28);
});

test('ten lines by clicks, one of each section and so of each feature: as intended, at most 10 clicks a line', async ({
  windrow,
  page,
}, { annotations }) => {
  const lines = SIXTY.filter((_, at) => at % 6 === 0).map(({ line }) => line);
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Mine');
  await page.locator('summary', { hasText: 'Build it from tiles' }).click();
  const clicks: number[] = [];
  for (const [at, line] of lines.entries()) {
    if (at > 0) await lineRow(page, 1, at + 1).click();
    clicks.push((at > 0 ? 1 : 0) + (await buildByClicks(page, line)));
  }
  await kept(page);
  expect(await entered(windrow.folder)).toEqual(lines.map(saidBy));
  annotations.push({ type: 'clicks a line', description: clicks.join(' ') });
  expect(mean(clicks)).toBeLessThanOrEqual(10);
});
