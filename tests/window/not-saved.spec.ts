import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { addSection, startCard } from './card-evening.ts';
import { downloaded } from './journal-helpers.ts';
import { expect, test } from './windrow.ts';

const DEAL = 'J FF N 0 13b 4578c 22d';

test('when saving fails the window says so, keeps everything, and saves it all on a second try', async ({
  windrow,
  page,
  misdeeds,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  const refusal = {
    ok: false,
    problem: { code: 'disk-full', message: 'The disk is full. What was saved before is safe.' },
  };
  await page.route('**/desk/**', async (route) => await route.fulfill({ json: refusal }));
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await expect(page.getByText('The disk is full.')).toBeVisible();
  await expect(page.getByText('Not saved')).toBeVisible();
  const rack = await windrow.rack();
  // Where it can be saved nowhere here, she takes the game along as a file, with the step that is not saved.
  const kept = await downloaded(page, async () => await page.getByRole('button', { name: 'elsewhere' }).click());
  const file = expectValue(readGameFile(kept.text));
  expect(file.damage).toBeNull();
  expect(file.record.events.map(({ type }) => type)).toEqual(['dealt', 'gave']);
  await page.unroute('**/desk/**');
  await page.getByRole('button', { name: 'Try again' }).click();
  await windrow.saved();
  await expect(page.getByRole('button', { name: 'elsewhere' })).toHaveCount(0);
  await windrow.restart();
  expect(await windrow.rack()).toEqual(rack);
  expect(misdeeds.errors).toEqual([]);
});

test('a step that is not saved is asked about before the window goes, and saving is tried once more', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  let tries = 0;
  const refusal = { ok: false, problem: { code: 'missing', message: 'The folder is gone.' } };
  await page.route('**/desk/appendEvent', async (route) => {
    tries += 1;
    await route.fulfill({ json: refusal });
  });
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await expect(page.getByText('Not saved')).toBeVisible();
  const questions: string[] = [];
  page.on('dialog', async (dialog) => {
    questions.push(dialog.type());
    await dialog.dismiss();
  });
  const before = tries;
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => questions).toEqual(['beforeunload']);
  await expect.poll(() => tries).toBeGreaterThan(before);
  // She stays, the folder is back, all is saved: now nothing is asked any more.
  await page.unroute('**/desk/appendEvent');
  await page.getByRole('button', { name: 'Try again' }).click();
  await windrow.saved();
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => page.isClosed()).toBe(true);
  expect(questions).toHaveLength(1);
});

test('a card that can’t be saved is taken along as a file, and saved on a second try', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.go('Card');
  await startCard(windrow, 'Winter');
  const refusal = { ok: false, problem: { code: 'missing', message: 'The folder is gone.' } };
  await page.route('**/desk/saveCard', async (route) => await route.fulfill({ json: refusal }));
  await addSection(windrow, 'Winds');
  const notice = page.locator('wr-notice').filter({ hasText: 'The folder is gone.' });
  await expect(notice).toBeVisible();
  const elsewhere = notice.getByRole('button', { name: shellWords.saveCardElsewhere });
  const kept = await downloaded(page, async () => await elsewhere.click());
  expect(kept.name).toMatch(/^winter.*\.card\.json$/);
  expect(expectValue(readCardFile(kept.text)).document.sections).toHaveLength(1);
  await page.unroute('**/desk/saveCard');
  await notice.getByRole('button', { name: shellWords.retry }).click();
  await expect(notice).toHaveCount(0);
});
