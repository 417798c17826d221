import { shellWords } from '../../renderer/words/shell.ts';
import { tableWords } from '../../renderer/words/table.ts';
import { expect, test } from './windrow.ts';

test('CR-O6: a calculation that fails says what is safe, and its button does it again', async ({ windrow, page }) => {
  await page.route(
    /\/assets\/entry.*\.js$/,
    async (route) => await route.fulfill({ body: 'throw new Error("out of chalk")', contentType: 'text/javascript' }),
  );
  await windrow.open();
  await page.getByLabel('Type your tiles').fill('J FF N 0 13b 4578c 22d 1d');
  await page.keyboard.press('Enter');
  const trouble = page.locator('wr-reading-panel wr-notice');
  await expect(trouble).toContainText(tableWords.reading.failed);
  await expect(trouble).toContainText('What you entered is safe.');
  await expect(page.locator('wr-plan-panel wr-notice')).toContainText(tableWords.plan.failed);
  await page.unroute(/\/assets\/entry.*\.js$/);
  await trouble.getByRole('button', { name: shellWords.retry }).click();
  await expect(page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
  await expect(trouble).toHaveCount(0);
});
