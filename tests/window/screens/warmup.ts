import { formatDealCode } from '../../../core/warmup/deal-code.ts';
import { expect, type Windrow } from '../windrow.ts';
import {
  answerByKeys,
  answerProblem,
  answerShown,
  chooseTap,
  clickTiles,
  dealByCode,
  newSheet,
} from '../warmup-helpers.ts';
import type { Page } from '@playwright/test';
import type { Journey } from './journey.ts';

const CODE = formatDealCode({ seed: 3, tiles: 13, kind: 'any' });

/** Gives the last tiles at each pass that is still due, without a second round, until the exchange is over. */
async function toTheEnd(page: Page): Promise<void> {
  const question = page.getByRole('heading', { name: /What would you give|How many would you exchange/ });
  const ended = page.getByRole('heading', { name: 'The exchange at its end' });
  const stop = page.getByRole('button', { name: 'Stop before the second round' });
  await page.getByRole('button', { name: 'Leave' }).click();
  await dealByCode(page, CODE);
  await answerProblem(page);
  for (;;) {
    await page.getByRole('button', { name: /^Play on/ }).click();
    await expect(question.or(ended)).toBeVisible();
    if (await ended.isVisible()) break;
    if (await stop.isVisible()) {
      await stop.click();
      await answerShown(page);
      continue;
    }
    const courtesy = await page.getByText('How many would you exchange').isVisible();
    await clickTiles(page, courtesy ? [12] : [12, 11, 10]);
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await answerShown(page);
  }
  await expect(page.locator('[data-compared]')).toBeVisible({ timeout: 90_000 });
}

/** A practice of one answer, ended. */
async function onePractice(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByRole('button', { name: 'Start today’s practice' }).click();
  await expect(page.getByText('Problem 1 of')).toBeVisible({ timeout: 60_000 });
  await answerByKeys(page);
  await answerShown(page);
  await page.getByRole('button', { name: 'End', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Your practice' })).toBeVisible();
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
    'wr-answer-code',
    'wr-card-at-hand',
    'wr-throw',
    'wr-practice-band',
    'wr-practice-summary',
    'wr-practice-weeks',
    'wr-warm-up-answer',
    'wr-warm-up-ledger',
    'wr-guess',
    'wr-practice-progress',
    'wr-sheets',
    'wr-sheet-add',
    'wr-sheet-problem',
    'wr-class-answers',
    'wr-class-typed',
    'wr-answer-codes',
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
    { name: 'a problem', reach: async ({ page }) => await dealByCode(page, CODE) },
    {
      name: 'lines near the rack, tiles kept',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Only lines near this rack' }).click();
        await expect(page.locator('wr-card-at-hand wr-hand').first()).toBeVisible();
        await page.locator('wr-card-at-hand .aim').first().click();
        await chooseTap(page, 'keeps it');
        await clickTiles(page, [0]);
      },
    },
    {
      name: 'the answer',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Only lines near this rack' }).click();
        await answerProblem(page);
        // The verdict is there for the eye too, where the column is narrow.
        const { width, height } = page.viewportSize() ?? { width: 1440, height: 900 };
        await page.setViewportSize({ width: 390, height });
        expect((await page.locator('[data-ahead] h2').boundingBox())?.width).toBeGreaterThan(40);
        await page.setViewportSize({ width, height });
      },
    },
    {
      name: 'the answer explained, the card beside it',
      reach: async ({ page }) => {
        await page.getByText('Explain more').click();
        await page.getByRole('button', { name: 'Show the card' }).click();
        await expect(page.locator('wr-card-at-hand')).toBeVisible();
      },
    },
    {
      name: 'the next pass',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Play on to the next pass' }).click();
        await expect(page.getByRole('heading', { name: 'What would you give?' })).toBeVisible();
        await clickTiles(page, [12]);
      },
    },
    { name: 'the exchange at its end', reach: async ({ page }) => await toTheEnd(page) },
    { name: 'what a practice came to', reach: async ({ page }) => await onePractice(page) },
    {
      name: 'a tile to throw',
      reach: async ({ page }) => {
        await page.getByRole('tab', { name: 'Throw' }).click();
        await page.getByRole('button', { name: 'Show me a moment' }).click();
        await expect(page.getByRole('heading', { name: 'What do you throw?' })).toBeVisible({ timeout: 60_000 });
        await page.locator('wr-throw wr-rack [role=option]').last().click();
      },
    },
    {
      name: 'what each tile costs, one of the others unfolded',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: /^Throw the / }).click();
        await expect(page.locator('wr-throw ol li').first()).toBeVisible({ timeout: 120_000 });
        await page.locator('wr-throw summary').first().click();
      },
    },
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
    {
      name: 'progress, an earlier practice',
      reach: async ({ page }) => {
        await page.getByRole('tab', { name: 'Progress' }).click();
        await page
          .getByRole('button', { name: /^Open the practice of/ })
          .first()
          .click();
        await expect(page.locator('wr-practice-summary')).toBeVisible();
      },
    },
    {
      name: 'a sheet with answers of a class',
      reach: async ({ page }) => {
        await newSheet(page, 2);
        await page.getByText('Answers of the class').first().click();
        await expect(page.locator('wr-class-answers tbody tr').first()).toBeVisible();
        await page.getByLabel('Codes of the class').fill('K7M-4PQ');
        await page.getByRole('button', { name: 'Count them' }).click();
        await expect(page.getByText('1 code was not counted')).toBeVisible();
      },
    },
    {
      name: 'the words, seat and pass of a problem',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Done' }).click();
        await expect(page.locator('wr-sheet-add')).toHaveCount(0);
        await page.getByText('Question, remark, seat and pass').first().click();
        await expect(page.getByRole('combobox', { name: 'Seat' })).toBeVisible();
      },
    },
    {
      name: 'on a screen',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Show on a screen' }).click();
        await page.getByRole('dialog').getByText('Problem 1 of 2').waitFor();
      },
    },
    ...['The rack', 'The best pass', 'Why'].map((heading) => ({
      name: `on a screen: ${heading}`,
      reach: async ({ page }: Windrow) => {
        await page.keyboard.press('ArrowRight');
        await expect(page.getByRole('heading', { name: heading, exact: true })).toBeVisible();
      },
    })),
  ],
};
