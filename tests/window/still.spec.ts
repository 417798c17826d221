import { addSection, startCard } from './card-evening.ts';
import { field, straightToPlay, type } from './play.ts';
import { DEAL } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test('CR-O7: nothing moves where tiles are entered, from one to the next', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  const where = async (): Promise<number[]> =>
    await Promise.all(
      [field(page), page.getByRole('button', { name: /^one bam/ }), page.locator('wr-rack')].map(
        async (part) => (await part.boundingBox())?.y ?? 0,
      ),
    );
  const before = await where();
  for (const tile of ['9c', '8b', '8b', '2d', '2d', '4b']) {
    await type(page, tile);
    await expect(page.locator('[aria-busy=true]')).toHaveCount(0);
    expect(await where()).toEqual(before);
  }
});

test('CR-O7: adding groups moves none of the buttons that add them', async ({ windrow, page }) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Runs');
  await page.locator('summary', { hasText: 'Build it from tiles' }).click();
  const button = page.getByRole('button', { name: '1, first suit', exact: true });
  const row = page.locator('wr-card-lines [role=row].now');
  const place = async (): Promise<number> =>
    ((await button.boundingBox())?.y ?? 0) - ((await row.boundingBox())?.y ?? 0);
  await page.getByRole('radio', { name: '1 single' }).click();
  const before = await place();
  for (let group = 0; group < 14; group += 1) await button.click();
  await expect(page.locator('wr-line-groups [role=option]')).toHaveCount(15);
  expect(await place()).toBe(before);
});
