import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

const DEAL = 'J FF N 0 13b 4578c 22d';

test('a tile that is dragged from the tray lies over the whole window until it is back in the rack', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await page.locator('wr-rack [role=option][aria-label^="north wind"]').click();
  await page.getByRole('button', { name: 'Set aside' }).click();
  const from = await page.locator('wr-slots [data-slot]').boundingBox();
  const rack = await page.locator('wr-rack').boundingBox();
  if (from === null || rack === null) throw new Error('nothing there to drag');
  await page.mouse.move(from.x + 20, from.y + 20);
  await page.mouse.down();
  await page.mouse.move(from.x + 40, from.y + 40);
  await page.mouse.move(rack.x + 200, rack.y + 40, { steps: 4 });
  const moving = page.locator('wr-slots .moving:popover-open');
  await expect(async () => {
    const box = await moving.boundingBox();
    expect(Math.abs((box?.x ?? 0) - (rack.x + 180))).toBeLessThan(2);
    expect(Math.abs((box?.y ?? 0) - (rack.y + 20))).toBeLessThan(2);
  }).toPass();
  await page.mouse.up();
  await expect(moving).toHaveCount(0);
  await expect(page.locator('wr-rack [role=option][aria-label^="north wind"]')).toHaveCount(1);
});
