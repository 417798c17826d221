import { formatDealCode } from '../../../core/warmup/deal-code.ts';
import { expect } from '../windrow.ts';
import { answerProblem, answerShown, clickTiles, dealByCode, newSheet } from '../warmup-helpers.ts';
import type { Page } from '@playwright/test';
import type { Journey } from './journey.ts';

const CODE = formatDealCode({ seed: 3, tiles: 13, kind: 'any' });

/** Gives the last tiles at each pass that is still due, without a second round, until the exchange is over. */
async function toTheEnd(page: Page): Promise<void> {
  const question = page.getByRole('heading', { name: /Which three do you give|How many would you exchange/ });
  const ledger = page.getByRole('heading', { name: 'The exchange in figures' });
  const stop = page.getByRole('button', { name: 'Stop before the second round' });
  await page.getByRole('button', { name: 'Leave' }).click();
  await dealByCode(page, CODE);
  await answerProblem(page);
  for (;;) {
    await page.getByRole('button', { name: /^Play on/ }).click();
    await expect(question.or(ledger)).toBeVisible();
    if (await ledger.isVisible()) return;
    if (await stop.isVisible()) {
      await stop.click();
      await page.getByRole('button', { name: 'Show the answer' }).click();
      await answerShown(page);
      continue;
    }
    const courtesy = await page.getByText('How many would you exchange').isVisible();
    await clickTiles(page, courtesy ? [12] : [12, 11, 10]);
    await page.getByRole('button', { name: courtesy ? 'Give 1 tile' : 'Give 3 tiles' }).click();
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await answerShown(page);
  }
}

/** Practice, guesses, progress and sheets. */
export const warmUpJourney: Journey = {
  name: 'the Warm-up',
  place: 'warm-up',
  shows: [
    'wr-warm-up-place',
    'wr-warm-up-start',
    'wr-warm-up-run',
    'wr-run-foot',
    'wr-ask-aim',
    'wr-ask-pass',
    'wr-warm-up-answer',
    'wr-warm-up-ledger',
    'wr-guess',
    'wr-practice-progress',
    'wr-sheets',
    'wr-sheet-add',
    'wr-sheet-problem',
    'wr-class-answers',
    'wr-sheet-project',
  ],
  dialogs: [],
  screens: [
    {
      name: 'a code with a fault',
      reach: async ({ page }) => {
        await expect(page.getByText('Card: Lakeside demo card')).toBeVisible();
        await page.getByLabel('Code').fill('ABC');
        await page.getByRole('button', { name: 'Deal this one' }).click();
      },
    },
    { name: 'arranging', reach: async ({ page }) => await dealByCode(page, CODE) },
    {
      name: 'aiming',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Go on' }).click();
        await expect(page.getByRole('heading', { name: 'Which sections do you aim at?' })).toBeFocused();
      },
    },
    {
      name: 'the answer',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Back', exact: true }).click();
        await answerProblem(page);
        // The verdict is there for the eye too, where the column is narrow.
        const { width, height } = page.viewportSize() ?? { width: 1440, height: 900 };
        await page.setViewportSize({ width: 390, height });
        expect((await page.locator('.headline').boundingBox())?.width).toBeGreaterThan(40);
        await page.setViewportSize({ width, height });
      },
    },
    {
      name: 'the next pass',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Play on to the next pass' }).click();
        await expect(page.getByRole('heading', { name: 'Which three do you give?' })).toBeVisible();
        await clickTiles(page, [12]);
      },
    },
    { name: 'the exchange in figures', reach: async ({ page }) => await toTheEnd(page) },
    {
      name: 'guessing',
      reach: async ({ page }) => {
        await page.getByRole('tab', { name: 'Guess' }).click();
        await page.getByRole('button', { name: 'Deal', exact: true }).click();
        await expect(page.getByLabel('Which section leads?')).toBeVisible();
      },
    },
    {
      name: 'the truth',
      reach: async ({ page }) => {
        await page.getByLabel('How many tiles away is the nearest hand?').fill('7');
        await page.getByLabel('Which section leads?').selectOption('Three Shores');
        await page.getByLabel('How many games of a hundred does the best hand win?').fill('6');
        for (const at of [2, 1, 0]) await page.getByRole('radio', { name: '70 %' }).nth(at).check({ force: true });
        await page.getByRole('button', { name: 'Show', exact: true }).click();
        await expect(page.locator('wr-lean')).toBeVisible();
      },
    },
    { name: 'progress', reach: async ({ page }) => await page.getByRole('tab', { name: 'Progress' }).click() },
    {
      name: 'a sheet with answers of a class',
      reach: async ({ page }) => {
        await newSheet(page, 2);
        await page.getByText('Answers of the class').first().click();
        await expect(page.locator('wr-class-answers tbody tr').first()).toBeVisible();
      },
    },
    {
      name: 'on a screen',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Show on a screen' }).click();
        await page.getByRole('dialog').getByText('Problem 1 of 2').waitFor();
        for (const _ of [1, 2]) await page.keyboard.press('ArrowRight');
      },
    },
  ],
};
