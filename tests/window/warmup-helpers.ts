import { expect, type Page } from '@playwright/test';
import type { Windrow } from './windrow.ts';

/** Opens the Warm-up and waits until it is ready. */
export async function openWarmUp(windrow: Windrow): Promise<void> {
  await windrow.open('Warm-up');
  await expect(windrow.page.getByText('Card: Lakeside demo card')).toBeVisible();
}

/** Starts with the deal of a code. */
export async function dealByCode(page: Page, code: string): Promise<void> {
  await page.getByLabel('Code').fill(code);
  await page.getByRole('button', { name: 'Deal this one' }).click();
  await expect(page.getByRole('heading', { name: 'Lay your rack out as you like' })).toBeVisible();
}

/** Clicks the rack's tiles at places counted from 0. */
export async function clickTiles(page: Page, places: readonly number[]): Promise<void> {
  for (const place of places) await page.locator('wr-rack [role=option]').nth(place).click();
}

/** Goes through all stages of the first decision, giving the last three tiles, up to the answer. */
export async function answerProblem(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  await page.getByRole('button', { name: 'Go on' }).click();
  await page.getByRole('button', { name: 'Three Shores', exact: true }).click();
  await page.getByRole('button', { name: 'Go on' }).click();
  await clickTiles(page, [2, 3, 4]);
  await page.getByRole('button', { name: 'Go on' }).click();
  await clickTiles(page, [12, 11, 10]);
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await page.getByRole('textbox').fill('They match nothing.');
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
}

export async function answerShown(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { name: 'The best passes' })).toBeVisible({ timeout: 30_000 });
}

/** Opens a new sheet with so many deals on it. */
export async function newSheet(page: Page, deals: number): Promise<void> {
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await page.getByRole('button', { name: 'A new sheet' }).click();
  await page.getByLabel('How many').fill(String(deals));
  await page.getByRole('button', { name: deals === 1 ? 'Add 1 deal' : `Add ${deals} deals` }).click();
  await expect(page.getByRole('heading', { name: `Problem ${deals}`, exact: true })).toBeVisible();
}
