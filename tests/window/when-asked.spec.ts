import { choose, type } from './play.ts';
import { DEAL } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test('where the person wants to be asked, nothing is weighed before she asks; then all is as ever', async ({
  windrow,
  page,
}) => {
  await windrow.open('Settings');
  await choose(page, 'Weigh passes and moves', 'Only when I ask');
  await windrow.go('Table');
  await windrow.deal(DEAL);
  await expect(page.getByText('Not weighed yet')).toBeVisible();
  await expect(page.locator('[aria-busy=true]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Weigh the passes' }).click();
  await expect(page.getByRole('button', { name: 'Give 3 tiles' })).toBeEnabled({ timeout: 60_000 });
  await expect(page.getByText(/^The best choice|^As good as any/).first()).toBeVisible();
});

test('an own pass can be given unweighed, or weighed first; so can a discard', async ({ windrow, page }) => {
  await windrow.open('Settings');
  await choose(page, 'Weigh passes and moves', 'Only when I ask');
  await windrow.go('Table');
  await windrow.deal(DEAL);
  for (const name of ['north wind', 'white dragon', 'one bam']) {
    await page
      .locator('wr-rack')
      .getByRole('option', { name: new RegExp(`^${name}`) })
      .first()
      .focus();
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('Your own choice.')).toBeVisible();
  await page.getByRole('button', { name: 'What does it cost?' }).click();
  await expect(page.getByText(/^Yours is /)).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Go on to play' }).click();
  // East discards, then she draws.
  await type(page, '9c 5d');
  await page.getByRole('button', { name: 'Weigh what I can do' }).click();
  await expect(page.getByRole('button', { name: /^Discard / }).first()).toBeVisible({ timeout: 60_000 });
});
