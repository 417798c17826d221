import { expect, test } from './windrow.ts';

test.describe('the explanation of a reach', () => {
  test.beforeEach(async ({ windrow, page }) => {
    await windrow.open();
    await windrow.deal('FF N 0 13b 4578c 223d');
    await page
      .getByRole('button', { name: /explain Away/ })
      .first()
      .click();
    await page.getByText('How well does a reach hold?').first().click();
  });

  test('shows how well it holds: a mark for each tenth of three cards, and the same as a table', async ({ page }) => {
    const check = page.locator('wr-reach-check').first();
    await expect(check.locator('figure > svg .mark')).toHaveCount(30);
    await check.getByText(/as a table/i).click();
    await expect(check.locator('tbody tr')).toHaveCount(30);
    await expect(check.getByText(/60,000 racks from three cards/)).toBeVisible();
  });

  test('stays within a small window and scrolls there', async ({ page }) => {
    await page.setViewportSize({ width: 640, height: 480 });
    const box = await page.locator('wr-explain #words:popover-open').boundingBox();
    expect(box?.height).toBeLessThanOrEqual(480);
    expect(box?.y).toBeGreaterThanOrEqual(0);
  });
});
