import { expect, type Page } from '@playwright/test';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import type { Windrow } from './windrow.ts';

/** Opens the Warm-up and waits until it is ready. */
export async function openWarmUp(windrow: Windrow): Promise<void> {
  await windrow.open('Warm-up');
  await expect(windrow.page.getByText('Card: Lakeside demo card')).toBeVisible();
}

/** A rack of South, and one of East. */
const CODES = [
  formatDealCode({ seed: 3, tiles: 13, kind: 'any' }),
  formatDealCode({ seed: 8, tiles: 14, kind: 'any' }),
] as const;

/** A sheet with two problems: one of South, one of East. */
export async function sheetOfTwo(windrow: Windrow): Promise<void> {
  const { page } = windrow;
  await openWarmUp(windrow);
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await page.getByRole('button', { name: 'A new sheet' }).click();
  for (const code of CODES) {
    await page.getByRole('textbox', { name: 'Code of a deal' }).fill(code);
    await page.getByRole('button', { name: 'Add: Code of a deal' }).click();
  }
  await expect(page.getByRole('heading', { name: 'Problem 2', exact: true })).toBeVisible();
}

/** Starts with the deal of a code. */
export async function dealByCode(page: Page, code: string): Promise<void> {
  await page.getByLabel('Code').fill(code);
  await page.getByRole('button', { name: 'Deal this one' }).click();
  await expect(page.getByRole('heading', { name: 'What would you give?' })).toBeFocused();
}

/** Taps the rack's tiles at places counted from 0, the last ones first, so that the others keep their places. */
export async function clickTiles(page: Page, places: readonly number[]): Promise<void> {
  for (const place of places.toSorted((one, other) => other - one)) {
    await page.locator('wr-rack [role=option]').nth(place).click();
  }
}

/** What a tap on a tile does from now on. */
export async function chooseTap(page: Page, does: 'gives it' | 'keeps it' | 'moves it'): Promise<void> {
  await page.getByRole('radio', { name: does }).check({ force: true });
}

/** Arranges, aims and keeps, gives the last three tiles, says why, and shows the answer. */
export async function answerProblem(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  await page.getByRole('button', { name: 'Three Shores', exact: true }).click();
  await chooseTap(page, 'keeps it');
  await clickTiles(page, [2, 3, 4]);
  await chooseTap(page, 'gives it');
  await clickTiles(page, [12, 11, 10]);
  await page.getByLabel('Why?').fill('They match nothing.');
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
}

/** Gives three tiles and shows the answer with the keyboard alone, from the question on. */
export async function answerByKeys(page: Page): Promise<void> {
  const rack = page.locator('wr-rack [role=option]:focus');
  for (let stop = 0; stop < 12 && (await rack.count()) === 0; stop += 1) await page.keyboard.press('Tab');
  await page.keyboard.press('End');
  for (let given = 0; given < 13; given += 1) {
    if ((await page.locator('wr-slots wr-tile').count()) === 3) break;
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowLeft');
  }
  const show = page.getByRole('button', { name: 'Show the answer' });
  for (let stop = 0; stop < 12; stop += 1) {
    await page.keyboard.press('Shift+Tab');
    if (
      await show.evaluate(
        (button) =>
          button.matches(':focus') ||
          (button.getRootNode() instanceof ShadowRoot && (button.getRootNode() as ShadowRoot).activeElement === button),
      )
    )
      break;
  }
  await page.keyboard.press('Enter');
}

export async function answerShown(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { name: 'The best passes, and yours' })).toBeVisible({ timeout: 30_000 });
}

/** Opens a new sheet with so many deals on it. */
export async function newSheet(page: Page, deals: number): Promise<void> {
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await page.getByRole('button', { name: 'A new sheet' }).click();
  await page.getByLabel('How many').fill(String(deals));
  await page.getByRole('button', { name: deals === 1 ? 'Add 1 deal' : `Add ${deals} deals` }).click();
  await expect(page.getByRole('heading', { name: `Problem ${deals}`, exact: true })).toBeVisible();
}
