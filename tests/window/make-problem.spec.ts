import type { Page } from '@playwright/test';
import { expectValue } from '../../core/base/result.ts';
import { itemOfCode } from '../../core/warmup/problem-code.ts';
import { lookBack, withSeason } from './journal-helpers.ts';
import { firstRound } from './screens/table.ts';
import { expect, test } from './windrow.ts';

test.use({ weighs: 'when-asked' });

const RACK = 'J FF N 0 13b 4578c 22d';

/** Two clicks: the button, and one of the three ways. */
async function make(page: Page, way: 'Copy its code' | 'Put it on a sheet' | 'Show it on a screen'): Promise<void> {
  await page.getByRole('button', { name: 'Make a problem of it' }).first().click();
  await page.getByRole('button', { name: way }).click();
}

async function codeShown(page: Page): Promise<string> {
  return (await page.locator('wr-make-problem .code').textContent()) ?? '';
}

test('the pass that is due at the Table becomes a problem in two clicks: a code, a sheet, a screen', async ({
  windrow,
  page,
}) => {
  test.setTimeout(120_000);
  await windrow.open();
  await windrow.deal(RACK);
  await make(page, 'Copy its code');
  await expect(page.getByText(/^The code (is copied|could not be copied: write it down)\.$/)).toBeVisible();
  const item = { rack: RACK, gone: '', step: 'right', seat: 'South' };
  const code = await codeShown(page);
  expect(itemOfCode(code)).toEqual({ ok: true, value: item });
  await page.keyboard.press('Escape');

  await make(page, 'Show it on a screen');
  const screen = page.locator('wr-sheet-project dialog');
  await expect(screen).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(screen.getByText(/^This rack /)).toBeVisible({ timeout: 60_000 });
  await page.keyboard.press('ArrowRight');
  await expect(screen.getByRole('heading', { name: 'The best pass' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(screen).toHaveCount(0);
  // Back where it was asked for, and nothing is kept of it.
  await expect(page.locator('wr-give-panel .band')).toBeVisible();
  expect(page.url()).toMatch(/#\/table$/);

  await make(page, 'Put it on a sheet');
  await expect(page.getByRole('region', { name: 'Problem 1' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Problem 2' })).toHaveCount(0);
  await page.getByRole('button', { name: 'All sheets' }).click();
  await expect(page.getByRole('button', { name: /^Remove / })).toHaveCount(1);
});

test('where no advice is welcome at the table, none comes by way of a problem', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(RACK);
  await expect(page.getByRole('button', { name: 'Make a problem of it' })).toBeVisible();
  await page.getByText('Advice at the Table: At once').click();
  await page.getByRole('radio', { name: 'Not at the table' }).check({ force: true });
  await expect(page.getByText('Advice at the Table: Not at the table')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Make a problem of it' })).toHaveCount(0);
});

test('a later pass carries what was given away, and its code leads to the same problem', async ({ windrow, page }) => {
  await windrow.open();
  await firstRound(windrow);
  await make(page, 'Copy its code');
  const code = await codeShown(page);
  const item = expectValue(itemOfCode(code));
  expect(item).toMatchObject({ step: 'left2', seat: 'South' });
  expect(item.gone.replaceAll(/[^\dFNESWGR]/g, '').length).toBeGreaterThan(5);
  await page.keyboard.press('Escape');
  await page.evaluate((each) => (window.location.hash = `#/warm-up?deal=${each}`), code);
  await expect(page.getByText('Given away before')).toBeVisible();
  await expect(page.locator('wr-rack [role=option]')).toHaveCount(13);
});

test('a moment of a look-back becomes a problem, too, and one is back there afterwards', async ({ windrow, page }) => {
  test.setTimeout(150_000);
  await withSeason(windrow);
  const link = page.getByRole('link', { name: /^Look back at/ }).first();
  const id = /game\/(.+)$/.exec((await link.getAttribute('href')) ?? '')?.[1] ?? '';
  await lookBack(page, id);
  await make(page, 'Copy its code');
  expect(itemOfCode(await codeShown(page)).ok).toBe(true);
  await page.keyboard.press('Escape');
  await make(page, 'Show it on a screen');
  await expect(page.locator('wr-sheet-project dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('wr-story')).toBeVisible();
  expect(page.url()).toContain(`#/journal/game/${id}`);
});
