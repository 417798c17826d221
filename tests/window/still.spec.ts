import { addSection, startCard } from './card-evening.ts';
import { field, straightToPlay, type } from './play.ts';
import { JOURNEYS } from './screens/journeys.ts';
import { settle, stillness, watchPlaces } from './screens/stillness.ts';
import { DEAL } from './screens/table.ts';
import { expect, test } from './windrow.ts';

/** What a press or a key does at once is drawn within so many frames; what moves later moves by itself. */
const AT_ONCE = 3;
/** The most that may shift by itself on a screen: what web.dev calls good for a whole visit (Cumulative Layout Shift). */
const MOST_SHIFT = 0.1;

/** Main buttons that another button moves, by screen, with the reason. */
const MAY_MOVE: Readonly<Record<string, RegExp>> = {
  // The offer of the tour above goes with its answer, and with the first deal.
  'the exchange: a pass to give': /That is my deal/,
  'the tour and the help: the tour, 1 of 5': /That is my deal/,
  // The courtesy asks for two numbers before its tiles.
  'the exchange: the courtesy': /Give 3 tiles/,
};

/** How far controls may move by themselves, in CSS px, by screen, with the reason. */
const MAY_GROW: Readonly<Record<string, number>> = {
  // The choice that is shown tells what the look ahead found: its room is kept but for a line or two.
  'the Journal: a look-back': 60,
  // A deal that was asked for comes above the sheets as soon as it is made, which takes a slow computer a few frames.
  'the Warm-up: a problem': 900,
  // And so does a sheet that was opened.
  'the Warm-up: a sheet with answers of a class': 900,
  // What became of a file is told in its row once the desk has settled it.
  'the Settings: the two files settled': 60,
};

for (const { name, place, screens } of JOURNEYS) {
  test(`CR-O7: on the screens of ${name} nothing moves by itself, and no main button at all`, async ({
    windrow,
    page,
  }) => {
    test.setTimeout(60_000 * (screens.length + 1));
    await windrow.open();
    await page.evaluate((to) => void (window.location.hash = to), `#/${place}`);
    await watchPlaces(page);
    for (const screen of screens) {
      await test.step(screen.name, async () => {
        await screen.reach(windrow);
        await expect(page.locator('[aria-busy=true]')).toHaveCount(0, { timeout: 60_000 });
        await settle(page);
        const { controls, shifts } = await stillness(page);
        const here = `${name}: ${screen.name}`;
        const allowed = MAY_MOVE[here];
        const moved = controls.filter(
          ({ what, by, frames, isMain }) =>
            (frames > AT_ONCE && by > (MAY_GROW[here] ?? 0)) || (isMain && !(allowed?.test(what) ?? false)),
        );
        expect.soft(moved, here).toEqual([]);
        expect.soft(shifts, `shifts of ${here}`).toBeLessThan(MOST_SHIFT);
      });
    }
  });
}

test('CR-O7: nothing moves where tiles are entered, from one to the next', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  const where = async (): Promise<number[]> =>
    await Promise.all(
      [field(page), page.getByRole('button', { name: /^one bam/ }), page.locator('wr-rack')].map(
        async (part) => (await part.boundingBox())?.y ?? 0,
      ),
    );
  const before = await where();
  for (const tile of ['9c', '8b', '8b', '2d', '2d', '4b']) {
    await type(page, tile);
    await expect(page.locator('[aria-busy=true]')).toHaveCount(0);
    expect(await where()).toEqual(before);
  }
});

test('CR-O7: adding groups moves none of the buttons that add them', async ({ windrow, page }) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Runs');
  await page.locator('summary', { hasText: 'Build it from tiles' }).click();
  const button = page.getByRole('button', { name: '1, first suit', exact: true });
  const row = page.locator('wr-card-lines [role=row].now');
  const place = async (): Promise<number> =>
    ((await button.boundingBox())?.y ?? 0) - ((await row.boundingBox())?.y ?? 0);
  await page.getByRole('radio', { name: '1 single' }).click();
  const before = await place();
  for (let group = 0; group < 14; group += 1) await button.click();
  await expect(page.locator('wr-line-groups [role=option]')).toHaveCount(15);
  expect(await place()).toBe(before);
});
