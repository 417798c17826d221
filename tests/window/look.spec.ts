import { expect, test } from './windrow.ts';

const DEAL = 'J FF N 0 13b 4578c 22d';
/** A busy machine may take long; how long it takes alone is measured elsewhere. */
const PATIENCE = 60_000;

test.describe.configure({ timeout: 5 * PATIENCE });

test('the look ahead tells of each pass how it does in the end, and how that was found', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const plan = page.getByRole('region', { name: 'All passes' });
  await page.getByText('How this was counted').click();
  await expect(plan.getByRole('button', { name: 'best, explain In the end' })).toBeVisible({ timeout: PATIENCE });
  const found = page.getByRole('button', { name: /^Looked at [\d,]+ ways/ });
  await expect(found).toBeVisible({ timeout: PATIENCE });
  await found.click();
  await expect(page.getByText('All choices met the same tiles', { exact: false })).toBeVisible();
  await expect(page.getByText('The rule was set before', { exact: false })).toBeVisible();
});

test('whole games are played on request, can be stopped, and tell what they found', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await page.getByText('How this was counted').click();
  await page.getByRole('button', { name: 'Play whole games' }).click({ timeout: PATIENCE });
  await page.getByRole('button', { name: /^Played [\d,]+ games/ }).click({ timeout: 2 * PATIENCE });
  await expect(page.getByText(/^The widest gap is known to/)).toBeVisible();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(page.getByText('Playing whole games…')).toBeHidden();
  await page
    .getByRole('button', { name: /^won \d+ %/ })
    .first()
    .click();
  await expect(page.getByText(/^Counted over [\d,]+ games/).filter({ visible: true })).toBeVisible();
});

test('CR-G11: the assumptions stand beside the verdict, and another one is looked through anew', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await page.getByText('How this was counted').click();
  const plan = page.getByRole('region', { name: 'All passes' });
  await page.getByRole('radio', { name: 'All tiles alike' }).check();
  const even = plan.getByText('Every tile that you do not see is equally likely to come in.', { exact: true });
  await expect(even.first()).toBeVisible();
  await page.getByRole('radio', { name: 'As people pass' }).check();
  await expect(page.getByText(/^Flowers: 0\.\d times as often as by chance\.$/)).toBeVisible({ timeout: PATIENCE });
  await expect(page.getByRole('button', { name: /^Looked at [\d,]+ ways/ })).toBeVisible({ timeout: PATIENCE });
  await expect(
    plan.getByText(/^Tiles come in as in [\d,]+ passes of simulated players/).filter({ visible: true }),
  ).toBeVisible();
  const [verdict] = await plan.getByRole('button', { name: /^this pass alone: .* behind/ }).all();
  await verdict!.click();
  await expect(page.getByText(/^If all tiles came in alike, it would cost/).filter({ visible: true })).toBeVisible();
});
