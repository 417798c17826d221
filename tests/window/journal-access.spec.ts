import { lookBack, part, withSeason } from './journal-helpers.ts';
import { tooSmall, tooWide } from './measure-page.ts';
import { expect, test } from './windrow.ts';

test.setTimeout(180_000);

for (const { width, textSize } of [
  { width: 1440, textSize: 18 },
  { width: 390, textSize: 18 },
  { width: 320, textSize: 32 },
]) {
  test(`W2, W6: the Journal at ${width} px with text of ${textSize} px: nothing too wide, nothing too small`, async ({
    windrow,
    page,
  }) => {
    await page.setViewportSize({ width, height: 800 });
    await withSeason(windrow);
    for (let size = 18; size < textSize; size += 2) await page.getByRole('button', { name: 'A+, larger text' }).click();
    const check = async (name: string): Promise<void> => {
      expect(await tooWide(page), name).toEqual([]);
      expect(await tooSmall(page), name).toEqual([]);
    };
    await page.getByRole('button', { name: 'Filters', exact: true }).click();
    await check('the list and its filters');
    await part(page, 'Season');
    await expect(page.getByText('Measuring your games')).toBeHidden({ timeout: 60_000 });
    await check('the season');
    await part(page, 'Files');
    await check('files');
    await lookBack(page, 'demo-20261119-3');
    await page.getByText('Try another choice').click();
    await check('a look-back');
  });
}
