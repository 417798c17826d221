import type { Page } from '@playwright/test';
import { LEAST_CAPITAL } from '../../renderer/print/project-styles.ts';
import { sheetOfTwo } from './warmup-helpers.ts';
import { expect, test } from './windrow.ts';

const SIZES = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
] as const;

/** What of the screen is cut, or smaller than the last row can read, in words; the teacher's buttons aside. */
async function unreadable(page: Page): Promise<string[]> {
  return await page.locator('wr-sheet-project').evaluate((element, least) => {
    const root = element.shadowRoot as ShadowRoot;
    const wrong: string[] = [];
    const pen = document.createElement('canvas').getContext('2d') as CanvasRenderingContext2D;
    const texts = [...root.querySelectorAll('h1, h2, p, strong, span')].filter(
      (each) => each.matches(':not(.tiles, .before, .counted)') && (each.textContent ?? '').trim() !== '',
    );
    for (const each of texts) {
      const { fontStyle, fontWeight, fontSize, fontFamily } = getComputedStyle(each);
      pen.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
      const capital = pen.measureText('H').actualBoundingBoxAscent;
      if (capital < least * window.innerWidth) wrong.push(`small: ${each.textContent} ${capital}`);
    }
    for (const tile of root.querySelectorAll('wr-tile')) {
      const { width } = tile.getBoundingClientRect();
      if (width / 2 < least * window.innerWidth) wrong.push(`small tile: ${width}`);
    }
    for (const each of root.querySelectorAll('h1, h2, p, strong, span, wr-tile, wr-hand, wr-button, wr-explain')) {
      const { left, right, top, bottom, width } = each.getBoundingClientRect();
      if (width > 0 && (left < 0 || right > window.innerWidth || top < 0 || bottom > window.innerHeight))
        wrong.push(`off: ${each.localName} ${each.textContent}`);
    }
    const shown = root.querySelector('.shown') as HTMLElement;
    if (shown.scrollHeight > shown.clientHeight + 1) wrong.push(`cut by ${shown.scrollHeight - shown.clientHeight}`);
    if (shown.scrollWidth > shown.clientWidth + 1) wrong.push('cut at the side');
    if (/[a-z]+-\d/.test(root.textContent ?? '')) wrong.push('an inner name');
    return wrong;
  }, LEAST_CAPITAL);
}

for (const size of SIZES) {
  test(`on a screen of ${size.width} × ${size.height}, rack, seat and pass stay, nothing is cut, and the last row can read it`, async ({
    windrow,
    page,
  }) => {
    test.setTimeout(120_000);
    await sheetOfTwo(windrow);
    await page.setViewportSize(size);
    await page.getByRole('button', { name: 'Show on a screen' }).click();
    const screen = page.getByRole('dialog');
    await screen.waitFor({ timeout: 60_000 });
    const turns = ['South, first pass to the right', 'East, first pass to the right'];
    for (const [place, turn] of turns.entries()) {
      for (const heading of [null, 'The rack', 'The best pass', 'Why']) {
        await expect(screen.getByRole('heading', { name: `Problem ${place + 1} of 2: ${turn}` })).toBeVisible();
        if (heading !== null) await expect(screen.getByRole('heading', { name: heading, exact: true })).toBeVisible();
        expect(await unreadable(page), `${turn}: ${heading}`).toEqual([]);
        const tiles = await screen.locator('.rack wr-tile').all();
        const tops = await Promise.all(tiles.map(async (tile) => (await tile.boundingBox())?.y));
        expect(tops).toHaveLength(place === 0 ? 13 : 14);
        expect(new Set(tops).size).toBe(1);
        await page.keyboard.press('ArrowRight');
      }
    }
  });
}

test('the best pass and those as good stand on rows of their own, with what each costs', async ({ windrow, page }) => {
  await sheetOfTwo(windrow);
  await page.setViewportSize({ width: 1280, height: 720 });
  await page.getByRole('button', { name: 'Show on a screen' }).click();
  const screen = page.getByRole('dialog');
  await screen.waitFor({ timeout: 60_000 });
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  const rows = screen.locator('.choice');
  const said = await rows.allInnerTexts();
  expect(said.length).toBeGreaterThanOrEqual(2);
  expect(said[0]?.trim()).toBe('Best');
  for (const row of said.slice(1)) {
    expect(row.replaceAll(/\s+/g, ' ').trim()).toMatch(/^(As good|Worse costs (under 1 game|\d+ games?) in 100)$/);
  }
  const tops = await Promise.all(
    (await screen.locator('.choice strong').all()).map(async (row) => (await row.boundingBox())?.y),
  );
  expect(new Set(tops).size).toBe(said.length);
  // How it is counted is asked at the edge of the screen, and told on it.
  await screen.getByRole('button', { name: 'How is this counted?' }).click();
  const words = await screen.locator('wr-explain [popover]').boundingBox();
  expect(words?.x).toBeGreaterThanOrEqual(0);
  expect((words?.x ?? 0) + (words?.width ?? 0)).toBeLessThanOrEqual(1280);
});

test('one problem that is on no sheet is shown, too', async ({ windrow, page }) => {
  await sheetOfTwo(windrow);
  await page.getByRole('button', { name: 'Show on a screen' }).click();
  await page.getByRole('dialog').waitFor({ timeout: 60_000 });
  await page.locator('wr-sheet-project').evaluate((element) => {
    const shown = element as HTMLElementTagNameMap['wr-sheet-project'];
    const { sheet } = shown;
    shown.sheet = { ...sheet, id: 'one', title: '', problems: sheet.problems.slice(1) };
  });
  const screen = page.getByRole('dialog');
  await expect(screen.getByRole('heading', { name: 'East, first pass to the right', exact: true })).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(screen.getByRole('heading', { name: 'The rack' })).toBeVisible();
});
