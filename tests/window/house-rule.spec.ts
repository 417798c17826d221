import type { Page } from '@playwright/test';
import { choose, layOpenAtOnce, straightToPlay, type } from './play.ts';
import { DEAL } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

const REFUSED = 'At your table no joker is swapped for right after a call: discard first.';

/** Across shows two three bams and a joker; East throws a two dot, and South, who holds two, calls it. */
async function callBesideAJoker(page: Page): Promise<void> {
  await layOpenAtOnce(page, 'Across', '3b 3b J');
  await choose(page, 'Whose tile?', 'Left');
  await type(page, '2d');
  await layOpenAtOnce(page, 'You', '2d 2d 2d');
}

test('LG-3: a swap right after a call is allowed, unless the house bars it; then it is refused until the discard', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await callBesideAJoker(page);
  const swap = page.getByRole('button', { name: 'You take the joker from the three bam group of Across' });
  await choose(page, 'Whose tile?', 'You');
  await windrow.go('Settings');
  await choose(page, 'Joker swap right after a call', 'Not allowed');
  await windrow.go('Table');
  await choose(page, 'Whose tile?', 'You');
  await swap.click();
  await expect(page.getByText(REFUSED)).toBeVisible();
  await windrow.go('Settings');
  await choose(page, 'Joker swap right after a call', 'Allowed');
  await windrow.go('Table');
  await choose(page, 'Whose tile?', 'You');
  await swap.click();
  await expect(page.getByText(REFUSED)).toBeHidden();
  await expect(swap).toBeHidden();
  await windrow.saved();
});
