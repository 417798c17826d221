import type { Locator, Page } from '@playwright/test';
import { expect, test, type Windrow } from './windrow.ts';

/**
 * The answer at a glance: from a settled rack to a given pass is one click or one key, nothing is scrolled for it, and what
 * is recommended stays as it was shown.
 */
const DEAL = 'J FF N 0 13b 4578c 22d';
const PASSES = ['9d 3c 5d', '6c 2d e', '6c 5c 1d', '2c 9b 9b', '6c 4d s', '8d 3b 7b'];
/** Ten deals of the demo card; no tile is held more often than there are copies. */
const DEALS = [
  DEAL,
  'F EE S R 9b 2468c 357d',
  'J N W 0 159b 2347c 88d',
  'FF G 23b 4569c 1178d',
  'JJ E 4488b 17c 2359d',
  'F 0 R 123b 68c 13579d',
  'NN WW 5b 29c 114689d',
  'J F S 2677b 35c 4468d',
  'GG 12288b 29c 134d E',
  'R 3679b 6c 11679d J N',
];
const PATIENCE = 60_000;

test.describe.configure({ timeout: 5 * PATIENCE });

/** What is offered to be given, by name. */
async function offer(page: Page): Promise<string[]> {
  await expect(page.locator('wr-give-panel .offer').first()).toBeVisible({ timeout: PATIENCE });
  return await page
    .locator('wr-give-panel [role=option]')
    .evaluateAll((slots) => slots.map((slot) => slot.getAttribute('aria-label') ?? ''));
}

/** Counts what a person has to do, and how far anything was scrolled. */
async function counting(page: Page): Promise<() => Promise<{ clicks: number; keys: number; scrolls: number }>> {
  await page.evaluate(() => {
    const counts = { clicks: 0, keys: 0, scrolls: 0 };
    Reflect.set(window, 'counts', counts);
    window.addEventListener('pointerdown', () => void (counts.clicks += 1), { capture: true });
    window.addEventListener('keydown', () => void (counts.keys += 1), { capture: true });
    document.addEventListener('scroll', () => void (counts.scrolls += 1), { capture: true });
  });
  return async () => {
    const counted = await page.evaluate(() => ({ ...(Reflect.get(window, 'counts') as Record<string, number>) }));
    return { clicks: counted['clicks'] ?? 0, keys: counted['keys'] ?? 0, scrolls: counted['scrolls'] ?? 0 };
  };
}

async function dealt(windrow: Windrow): Promise<void> {
  await windrow.open();
  await windrow.deal(DEAL);
}

/** Gives what is offered and takes in what came, each by one press on what is pressed; how many passes were made. */
async function exchangeBy(page: Page, press: (target: Locator) => Promise<void>): Promise<number> {
  let passes = 0;
  for (const came of PASSES) {
    await offer(page);
    await press(page.locator('wr-give-panel wr-button[look=main]'));
    if ((await page.locator('wr-receive-panel').count()) === 0) break;
    passes += 1;
    const due = await page.locator('wr-receive-panel .free').count();
    for (const name of namesOf(came).slice(0, due)) {
      const tray = page.locator('wr-receive-panel wr-tray');
      await press(tray.getByRole('button', { name: new RegExp(`^${name},`) }));
    }
  }
  return passes;
}

function tell(what: string): void {
  console.log(what);
  test.info().annotations.push({ type: 'measure', description: what });
}

test('a whole exchange by the offer: at most five clicks a pass by mouse, and nothing scrolled', async ({
  windrow,
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 700 });
  await dealt(windrow);
  const counted = await counting(page);
  let at = { x: 512, y: 350 };
  let way = 0;
  await page.mouse.move(at.x, at.y);
  const passes = await exchangeBy(page, async (target) => {
    const box = await target.boundingBox();
    if (box === null) throw new Error('there is nothing to press');
    const to = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    way += Math.hypot(to.x - at.x, to.y - at.y);
    at = to;
    await page.mouse.click(to.x, to.y);
  });
  const { clicks, scrolls } = await counted();
  expect(passes).toBeGreaterThan(2);
  expect(clicks / passes).toBeLessThanOrEqual(5);
  expect(scrolls).toBe(0);
  tell(`by mouse: ${clicks} clicks and ${Math.round(way / passes)} px a pass in ${passes} passes, ${scrolls} scrolls`);
});

test.describe('by touch', () => {
  test.use({ hasTouch: true });

  test('a whole exchange by the offer: at most five taps a pass', async ({ windrow, page }) => {
    await page.setViewportSize({ width: 1024, height: 700 });
    await dealt(windrow);
    const counted = await counting(page);
    const passes = await exchangeBy(page, async (target) => await target.tap());
    const { clicks, scrolls } = await counted();
    expect(passes).toBeGreaterThan(2);
    expect(clicks / passes).toBeLessThanOrEqual(5);
    tell(`by touch: ${clicks} taps in ${passes} passes, ${scrolls} scrolls`);
  });
});

test('a whole exchange by the offer, by keys alone: ten keys a pass at most', async ({ windrow, page }) => {
  await page.setViewportSize({ width: 1024, height: 700 });
  await dealt(windrow);
  const counted = await counting(page);
  let passes = 0;
  for (const came of PASSES) {
    await offer(page);
    await expect(page.locator('wr-give-panel wr-button[look=main]')).toBeFocused();
    await page.keyboard.press('Enter');
    if ((await page.locator('wr-receive-panel').count()) === 0) break;
    passes += 1;
    const due = await page.locator('wr-receive-panel .free').count();
    await page.keyboard.type(came.split(' ').slice(0, due).join(''));
    await page.keyboard.press('Enter');
  }
  const { keys, scrolls } = await counted();
  expect(passes).toBeGreaterThan(2);
  expect(keys / passes).toBeLessThanOrEqual(10);
  expect(scrolls).toBe(0);
  tell(`by keys: ${keys} keys in ${passes} passes, ${scrolls} scrolls`);
});

for (const [width, height] of [
  [1440, 900],
  [1024, 700],
  [390, 844],
] as const) {
  test(`at ${width} by ${height} question, tray, button, rack and three rows of the list are seen without scrolling`, async ({
    windrow,
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await dealt(windrow);
    await offer(page);
    const band = page.locator('wr-give-panel');
    for (const part of [band.locator('h2'), band.locator('wr-slots'), band.locator('wr-button[look=main]')]) {
      await expect(part).toBeInViewport({ ratio: 1 });
    }
    for (let row = 0; row < 3; row += 1) {
      const place = page.locator('wr-plan-panel .list li').nth(row);
      await expect(place).toBeInViewport({ ratio: 0.95 });
      // And no other part lies over it.
      expect(
        await place.evaluate((element) => {
          const { left, top, width: wide, height: high } = element.getBoundingClientRect();
          let hit = document.elementFromPoint(left + wide / 2, top + high - 4);
          while (hit?.shadowRoot) {
            const inner = hit.shadowRoot.elementFromPoint(left + wide / 2, top + high - 4);
            if (inner === null || inner === hit) break;
            hit = inner;
          }
          return element === hit || element.contains(hit);
        }),
      ).toBe(true);
    }
    for (const tile of await page.locator('wr-rack [role=option]').all())
      await expect(tile).toBeInViewport({ ratio: 0.95 });
  });
}

test('what is recommended is never changed after it was shown, in ten deals', async ({ windrow, page }) => {
  await windrow.open();
  for (const [place, deal] of DEALS.entries()) {
    if (place > 0) {
      await page.getByRole('button', { name: 'New game' }).click();
      await page.getByRole('button', { name: 'Begin a new game' }).click();
    }
    await windrow.deal(deal);
    const first = await offer(page);
    const rows = await page.locator('wr-plan-panel .list li').allTextContents();
    await page.waitForTimeout(1500);
    expect(await offer(page)).toEqual(first);
    expect(await page.locator('wr-plan-panel .list li').allTextContents()).toEqual(rows);
  }
});

const NAMES: Readonly<Record<string, string>> = { b: 'bam', c: 'crak', d: 'dot' };
const DIGITS = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const LETTERS: Readonly<Record<string, string>> = { e: 'east wind', s: 'south wind' };

/** "9d 3c e" as names of tiles. */
function namesOf(typed: string): string[] {
  return typed.split(' ').map((code) => {
    const [digit = '', suit = ''] = code;
    return suit === '' ? (LETTERS[digit] ?? '') : `${DIGITS[Number(digit)]} ${NAMES[suit]}`;
  });
}
