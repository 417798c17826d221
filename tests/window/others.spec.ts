import { choose, layOpenAtOnce, straightToPlay, type } from './play.ts';
import { DEAL } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test('of tiles none of which is likelier wanted than not, some are said to be maybe wanted, never that none is', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await layOpenAtOnce(page, 'Right', '0 0 0');
  await layOpenAtOnce(page, 'Right', 'g g g g');
  const right = page.locator('wr-others details').first();
  await expect(right).toContainText('may want');
  await expect(right.locator('summary wr-tile')).toHaveCount(7 + 4);
  await expect(right).not.toContainText('wants nothing');
  await right.locator('summary').click();
  await expect(right).toContainText(/five dot: 4 unseen/);
});

test('with little laid open the fold says that it is too early, and names no line', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  const right = page.locator('wr-others details').first();
  await right.locator('summary').click();
  await expect(right).toContainText('It shows too little to tell its lines apart.');
  await expect(right).not.toContainText('in 100');
});

test('where she chooses first, no tile is called hot before; where no aid is welcome, nothing is asked', async ({
  windrow,
  page,
}) => {
  await windrow.open('Settings');
  await choose(page, 'Advice at the Table', 'After I have chosen');
  await windrow.go('Table');
  await straightToPlay(windrow, DEAL);
  await type(page, '9c 5d');
  await expect(page.locator('wr-others summary').first()).toBeVisible();
  await windrow.quiet();
  await expect(page.getByText('Your tiles, the hottest first')).toBeHidden();
  await windrow.go('Settings');
  await choose(page, 'Advice at the Table', 'Not at the table');
  await windrow.go('Table');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await layOpenAtOnce(page, 'You', 'n n J');
  await expect(page.locator('wr-open-groups').getByRole('listitem').first()).toBeVisible();
  await expect(page.getByRole('dialog', { name: 'Lay it open all the same?' })).toBeHidden();
});
