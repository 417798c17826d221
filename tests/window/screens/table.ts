import { expect, type Windrow } from '../windrow.ts';
import type { Journey } from './journey.ts';

export const DEAL = 'J FF N 0 13b 4578c 22d';

/** Gives the three tiles after the first three of the rack. */
export async function give({ page }: Windrow): Promise<void> {
  for (let tile = 0; tile < 3; tile += 1) {
    await page.locator('wr-rack [role=option]').nth(3).click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
}

async function takeIn({ page }: Windrow, typed: string): Promise<void> {
  await page.getByLabel('Type it, or click it').fill(typed);
  await page.keyboard.press('Enter');
}

/** Gives, and takes in what is typed. */
async function pass(windrow: Windrow, typed: string): Promise<void> {
  await give(windrow);
  await takeIn(windrow, typed);
  await expect(windrow.page.locator('wr-give-panel .band')).toBeVisible();
}

/** Deals, and goes through the compulsory passes. */
export async function firstRound(windrow: Windrow): Promise<void> {
  await windrow.deal(DEAL);
  for (const typed of ['9d 3c 5d', '6c 2d e', '6c 5c 1d']) await pass(windrow, typed);
}

/** The Table from the deal to the end of the exchange. */
export const exchangeJourney: Journey = {
  name: 'the exchange',
  place: 'table',
  shows: [
    'wr-shell',
    'wr-places',
    'wr-toolbar',
    'wr-button',
    'wr-table-place',
    'wr-rack-panel',
    'wr-rack',
    'wr-tile',
    'wr-slots',
    'wr-deal-panel',
    'wr-entry',
    'wr-tray',
    'wr-give-panel',
    'wr-plan-panel',
    'wr-look-panel',
    'wr-played',
    'wr-lean',
    'wr-reading-panel',
    'wr-hand',
    'wr-explain',
    'wr-reach-check',
    'wr-dialog',
    'wr-note-dialog',
    'wr-make-problem',
    'wr-receive-panel',
    'wr-passes-so-far',
    'wr-choice',
    'wr-field',
  ],
  dialogs: [
    'wr-table-place: Begin a new game?',
    'wr-note-dialog: Write a note',
    'wr-make-problem: A problem of this moment',
  ],
  screens: [
    { name: 'an empty Table', reach: async () => {} },
    {
      name: 'a deal with a fault',
      reach: async ({ page }) => {
        await page.getByLabel('Type your tiles').fill('55555b');
        await page.keyboard.press('Enter');
      },
    },
    { name: 'a pass to give', reach: async (windrow) => await windrow.deal(DEAL) },
    {
      name: 'a chosen tile, and how the passes were counted',
      reach: async ({ page }) => {
        await page.locator('wr-rack [role=option]').first().click();
        await page.getByText('How this was counted').click();
      },
    },
    {
      name: 'whole games, stopped',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Play whole games' }).click();
        await expect(page.getByRole('button', { name: /^Played [\d,]+ games/ })).toBeVisible();
        await page.getByRole('button', { name: 'Stop', exact: true }).click();
      },
    },
    {
      name: 'the reading by section with its lean, a number explained',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'By section' }).click();
        await page.locator('wr-reading-panel .lean > summary').click();
        await page
          .getByRole('button', { name: /away, explain Away/ })
          .first()
          .click();
        await page.getByText('How well does a reach hold?').first().click();
      },
    },
    {
      name: 'the question about a new game',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'New game' }).click();
      },
    },
    {
      name: 'a note',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'Note', exact: true }).click();
      },
    },
    {
      name: 'a problem made of the pass that is due',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'Make a problem of it' }).click();
      },
    },
    {
      name: 'tiles to take in',
      reach: async (windrow) => {
        await windrow.page.keyboard.press('Escape');
        await give(windrow);
      },
    },
    {
      name: 'a tile that cannot come in',
      reach: async (windrow) => await takeIn(windrow, 'j'),
    },
    {
      name: 'the second round',
      reach: async (windrow) => {
        await takeIn(windrow, '9d 3c 5d');
        await pass(windrow, '6c 2d e');
        await pass(windrow, '6c 5c 1d');
      },
    },
    {
      name: 'the courtesy',
      reach: async ({ page }) => await page.getByRole('button', { name: 'Somebody stops here' }).click(),
    },
    {
      name: 'the end of the exchange, its passes shown',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'No courtesy pass' }).click();
        await page.getByText('Passes so far').click();
      },
    },
    {
      name: 'a tile of an earlier pass to correct',
      reach: async ({ page }) => {
        await page
          .getByRole('button', { name: /^Correct / })
          .first()
          .click();
      },
    },
  ],
};
