import { PLACES } from '../../renderer/shell/places.ts';
import { DEAL, firstRound, give } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

test('CR-K4: from the loaded window to the first tile of the rack at most 5 presses of Tab', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  await windrow.restart();
  await expect(page.locator('wr-rack [role=option]').first()).toBeVisible();
  let presses = 0;
  const onTile = async (): Promise<boolean> => (await page.locator('wr-rack [role=option]:focus').count()) > 0;
  while (!(await onTile()) && presses < 10) {
    await page.keyboard.press('Tab');
    presses += 1;
  }
  expect(presses).toBeLessThanOrEqual(5);
});

/** Presses of Tab after which a place has been gone through; a card has four cells for each of its lines. */
const MOST_STOPS = 600;

for (const key of ['Tab', 'Shift+Tab']) {
  test(`CR-K1: no part holds the keys: ${key} leads through each place and round to where one was`, async ({
    windrow,
    page,
  }) => {
    test.setTimeout(300_000);
    await windrow.open();
    await windrow.deal(DEAL);
    for (const { title } of PLACES) {
      await windrow.go(title);
      await windrow.quiet();
      const start = page.getByRole('link', { name: title, exact: true });
      await start.focus();
      let stops = 0;
      do {
        await page.keyboard.press(key);
        stops += 1;
      } while (stops < MOST_STOPS && !(await start.evaluate((link) => link.matches(':focus'))));
      expect(stops, title).toBeGreaterThan(6);
      expect(stops, title).toBeLessThan(MOST_STOPS);
    }
  });
}

test('CR-O1: larger and smaller text are at hand in every place, and change it there', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const size = async (): Promise<number> =>
    await page.evaluate(() => Number.parseFloat(getComputedStyle(document.documentElement).fontSize));
  for (const { title } of PLACES) {
    await windrow.go(title);
    const before = await size();
    await page.getByRole('button', { name: 'A+, larger text' }).click();
    await expect.poll(size, title).toBeGreaterThan(before);
    await page.getByRole('button', { name: 'A−, smaller text' }).click();
    await expect.poll(size, title).toBe(before);
  }
});

test('CR-K3: the focus is never lost when a step ends', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await expect(page.locator('wr-give-panel wr-button[look=main]')).toBeFocused();
  await give(windrow);
  await expect(page.getByLabel('Type it, or click it')).toBeFocused();
  await page.keyboard.type('9d 3c 5d');
  await page.keyboard.press('Enter');
  await expect(page.locator('wr-give-panel wr-button[look=main]')).toBeFocused();
});

test('CR-P8, CR-E3: nothing is asked of any other host, and the content policy is never broken', async ({
  windrow,
  misdeeds,
}) => {
  await windrow.open();
  await firstRound(windrow);
  for (const place of PLACES) await windrow.go(place.title);
  expect(misdeeds.foreign).toEqual([]);
  expect(misdeeds.policy).toEqual([]);
});

test('a file dropped where no place takes it leaves the window as it is', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  const refused = await page.evaluate(() =>
    ['dragover', 'drop'].map((type) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File(['{}'], 'x.json', { type: 'application/json' }));
      const event = new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true });
      document.body.dispatchEvent(event);
      return event.defaultPrevented;
    }),
  );
  expect(refused).toEqual([true, true]);
  expect(await windrow.rack()).toHaveLength(13);
});
