import { textField } from '../../core/card/document.ts';
import { addSection, buildByClicks, kept, linesIn, saidBy, startCard, TWENTY, typeLine, view } from './card-evening.ts';
import { cardFiles } from './card-file.ts';
import { expect, test } from './windrow.ts';

/** A whole evening: a card entered, proof-read and used. */
test.setTimeout(240_000);
test.use({ actionTimeout: 8000 });

test('a card of 20 lines by clicks only, proof-read, and used at the Table', async ({ windrow, page }) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Mine');
  for (const [at, line] of TWENTY.entries()) {
    await page.getByRole('button', { name: at === 0 ? 'Add a line' : 'New line below' }).click();
    await expect(page.getByRole('heading', { name: `Line ${at + 1} of Mine` })).toBeVisible();
    await buildByClicks(page, line);
    await expect(page.getByLabel('The line, typed')).toHaveValue(textField(line, 'pattern'));
  }
  await kept(page);
  const [text] = [...(await cardFiles(windrow.folder)).values()];
  expect(linesIn(text ?? '').map(saidBy)).toEqual(TWENTY.map(saidBy));

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

test('CR-K6: a card of 20 lines by keyboard only; a typical line takes at most 30 key strokes', async ({
  windrow,
  page,
}) => {
  await windrow.open('Card');
  await startCard(windrow);
  const press = async (...keys: readonly string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  // From the tabs: the second view to the right, then Tab to the button of a new section.
  await page.getByRole('tab', { name: 'Lines' }).focus();
  await press('ArrowRight', 'Tab', 'Enter');
  await expect(page.getByLabel('Name of this section')).toBeFocused();
  await page.keyboard.type('Mine');
  await press('Enter');
  const strokes: number[] = [];
  for (const line of TWENTY) strokes.push(await typeLine(page, line));
  await kept(page);
  const [text] = [...(await cardFiles(windrow.folder)).values()];
  expect(linesIn(text ?? '').map(saidBy)).toEqual(TWENTY.map(saidBy));

  // Typical: the middle of the twenty by strokes; the longest lines have ten groups and more.
  const sorted = strokes.toSorted((one, other) => one - other);
  expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(30);
  const typical = TWENTY.findIndex((line) => textField(line, 'pattern') === 'FF 111a 222b 333a 444b');
  expect(strokes[typical]).toBeLessThanOrEqual(30);
});
