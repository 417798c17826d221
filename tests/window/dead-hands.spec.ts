import { violations } from './violations.ts';
import { choose, field, layOpen, layOpenAtOnce, straightToPlay } from './play.ts';
import { DEAL } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

const ASK = 'Lay it open all the same?';

test('LG-4: before a call makes her hand dead she is asked, by keys alone; Escape is no', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await layOpen(page, 'You', 'n n J');
  const dialog = page.getByRole('dialog', { name: ASK });
  await expect(page.getByText('No line of your card has these groups. Your hand would be dead.')).toBeVisible();
  await expect(page.getByText('A dead hand can’t win, and it pays the winner like the others.')).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(field(page)).toBeFocused();
  await expect(page.getByText('Nothing is laid open yet.')).toBeVisible();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Keep the tiles' }).focus();
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  await expect(page.getByText('Nothing is laid open yet.')).toBeVisible();
  await field(page).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Lay it open all the same' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('wr-advice-panel').getByText('Dead: your groups fit no line of your card.')).toBeVisible();
  await expect(page.getByText('Chance: 0 in 100')).toBeVisible();
  await expect(field(page)).toBeFocused();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Dead: your groups fit no line of your card.')).toBeHidden();
});

test('LG-4: a group that a line has is laid open without a question', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await layOpenAtOnce(page, 'You', '2d 2d 2d');
  await expect(page.locator('wr-open-groups').getByRole('listitem')).toHaveCount(1);
  await expect(page.getByRole('dialog', { name: ASK })).toBeHidden();
});

test('a group of hers is laid open though she goes on before it is known that it leaves a hand', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await choose(page, 'What happened?', 'A group laid open');
  await choose(page, 'Whose tile?', 'You');
  await field(page).fill('2d 2d 2d');
  const oneTile = await page.getByRole('radio', { name: 'One tile', exact: true }).elementHandle();
  // Both in one moment, sooner than any answer can come.
  await field(page).evaluate((input, radio) => {
    input.dispatchEvent(
      new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, composed: true, cancelable: true }),
    );
    (radio as HTMLElement).click();
  }, oneTile);
  await expect(page.locator('wr-open-groups').getByRole('listitem')).toHaveCount(1);
});

test('LG-4: groups of another that fit no line are said to be dead, if the card is complete', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await layOpenAtOnce(page, 'Across', '3b 3b J');
  await layOpenAtOnce(page, 'Across', '9c 9c 9c');
  await expect(
    page.locator('wr-others summary').getByText('These groups fit no line: dead, if your card is complete.'),
  ).toBeVisible();
  await expect(page.getByRole('dialog', { name: ASK })).toBeHidden();
});

test('a joker that one of her tiles could take is shown beside the rack, with whose it is, and taken by a key', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await layOpenAtOnce(page, 'Across', '3b 3b J');
  const take = page.getByRole('button', { name: 'Take the joker from the group of Across for a three bam' }).first();
  await expect(take).toBeInViewport();
  expect((await take.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await take.focus();
  await page.keyboard.press('Enter');
  await expect(take).toBeHidden();
  expect(await windrow.rack()).toEqual(expect.not.arrayContaining(['three bam']));
  await expect(field(page)).toBeFocused();
});
