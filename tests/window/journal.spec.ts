import type { AppContext } from '../../renderer/shell/app-context.ts';
import { expect, test } from './windrow.ts';

const DEAL = 'J FF N 0 13b 4578c 22d';
const OTHER = 'F EE S R 9b 2468c 357d';

test('a game of the Journal reopens where it was', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  for (let tile = 0; tile < 3; tile += 1) {
    await page.locator('wr-rack [role=option]').nth(3).click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  const first = await windrow.rack();
  await page.getByRole('button', { name: 'New game' }).click();
  await page.getByRole('button', { name: 'Begin a new game' }).click();
  await windrow.deal(OTHER, 'West');
  await windrow.saved();
  await windrow.restart();
  await windrow.go('Journal');
  await expect(page.getByRole('button', { name: /^Open the game of/ })).toHaveCount(2);
  await page
    .getByRole('button', { name: /^Open the game of/ })
    .last()
    .click();
  await expect(page.getByRole('heading', { name: 'What came from the left?' })).toBeVisible();
  expect(await windrow.rack()).toEqual(first);
});

test('an empty Journal leads to the Table', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.go('Journal');
  await page.getByRole('button', { name: 'Go to the Table' }).click();
  await expect(page.getByRole('heading', { name: 'What were you dealt?' })).toBeVisible();
});

test('CR-O1: text size and colours chosen are there again after a restart', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('button', { name: 'A+, larger text' }).click();
  await windrow.go('Settings');
  await page.getByRole('radio', { name: 'Dark' }).check();
  await page.getByRole('radio', { name: 'Large' }).check();
  await page.waitForTimeout(300);
  await windrow.restart();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await expect(page.locator('html')).toHaveAttribute('data-tiles', 'large');
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('20px');
});

test('CR-O7: undo, redo and new game keep their place through the steps of a pass', async ({ windrow, page }) => {
  const places: unknown[] = [];
  const note = async (): Promise<void> => {
    for (const name of ['Undo', 'Redo', 'New game'])
      places.push(await page.getByRole('button', { name }).boundingBox());
  };
  await windrow.open();
  await windrow.deal(DEAL);
  await note();
  await page
    .getByRole('button', { name: /Lay it into the tray$/ })
    .first()
    .click({ timeout: 60_000 });
  await note();
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await note();
  await page.getByLabel('Type it, or click it').fill('9d 3c 5d');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Pass three across' })).toBeVisible();
  await note();
  for (let state = 1; state < places.length / 3; state += 1) {
    expect(places.slice(3 * state, 3 * state + 3)).toEqual(places.slice(0, 3));
  }
});

test('the tray offers the best pass; a pass of one’s own takes its place, is judged, and can be taken back', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const band = page.locator('wr-give-panel');
  await expect(band.locator('.offer')).toHaveCount(3, { timeout: 60_000 });
  expect(await windrow.rack()).toHaveLength(13);
  await page
    .getByRole('button', { name: /Lay it into the tray$/ })
    .last()
    .click();
  expect(await windrow.rack()).toHaveLength(10);
  await expect(band.locator('.offer')).toHaveCount(0);
  await expect(band.getByText(/^Yours is /)).toBeVisible();
  await band.getByRole('button', { name: 'Back to the offer' }).click();
  await expect(band.locator('.offer')).toHaveCount(3);
  const offered = await band
    .locator('.offer')
    .evaluateAll((slots) => slots.map((slot) => slot.getAttribute('aria-label')));
  for (const name of ['flower', 'flower', 'one bam']) {
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).first().click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await expect(band.getByText(/^Yours is about \d+ in 100 behind the best\.$/)).toBeVisible({ timeout: 60_000 });
  await band.getByRole('button', { name: 'Back to the offer' }).click();
  expect(
    await band.locator('.offer').evaluateAll((slots) => slots.map((slot) => slot.getAttribute('aria-label'))),
  ).toEqual(offered);
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await expect(page.getByRole('heading', { name: 'What came from the left?' })).toBeVisible();
});

test('a chosen tile says why it is kept or spare', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await expect(page.locator('wr-plan-panel li').first()).toBeVisible();
  await page.locator('wr-rack [role=option]').first().click();
  await expect(page.getByText('Keep: a joker stands for any tile in a group of three or more.')).toBeVisible();
});

test('CR-J3: from a change on, and without waiting for its reading, “Saved” is no longer said', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  const told = await page.evaluate(async () => {
    const shell: (Element & { app?: AppContext; updateComplete?: Promise<boolean> }) | null =
      document.querySelector('wr-shell');
    shell?.app?.session.undo();
    await shell?.updateComplete;
    return shell?.shadowRoot?.querySelector('[data-saved]')?.getAttribute('data-saved');
  });
  expect(told).toBe('saving');
  await windrow.saved();
});
