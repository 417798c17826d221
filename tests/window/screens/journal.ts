import { lookBack, openChoices, openCourse, part } from '../journal-helpers.ts';
import { fillFolder, finishedGames } from '../many-games.ts';
import { expect } from '../windrow.ts';
import type { Journey } from './journey.ts';

/** The Journal with a season of games, and one game looked back at. */
export const journalJourney: Journey = {
  name: 'the Journal',
  place: 'journal',
  shows: [
    'wr-journal-place',
    'wr-games-view',
    'wr-journal-filters',
    'wr-pick',
    'wr-season-view',
    'wr-bars',
    'wr-course',
    'wr-chart-table',
    'wr-evenings-view',
    'wr-files-view',
    'wr-lookback',
    'wr-story',
    'wr-ledger',
    'wr-decisions',
    'wr-decision',
    'wr-details',
    'wr-try',
    'wr-tile-toggles',
    'wr-own-table',
  ],
  dialogs: [],
  screens: [
    { name: 'an empty Journal', reach: async () => {} },
    {
      name: 'the games and their filters',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Add the example season' }).click();
        await expect(page.getByRole('status').filter({ hasText: '64 games' })).toBeVisible();
        await page.getByRole('button', { name: 'Filters', exact: true }).click();
      },
    },
    {
      name: 'a removed game',
      reach: async ({ page }) => {
        await page
          .getByRole('button', { name: /^Delete the game of/ })
          .first()
          .click();
        await expect(page.getByRole('button', { name: 'Bring it back' })).toBeFocused();
      },
    },
    {
      name: 'the season',
      reach: async ({ page }) => {
        await part(page, 'Season');
        await expect(page.getByRole('heading', { name: 'How often you win' })).toBeVisible({ timeout: 60_000 });
        await expect(page.getByText('Measuring your games')).toBeHidden({ timeout: 60_000 });
      },
    },
    {
      name: 'evenings',
      reach: async ({ page }) => {
        await part(page, 'Evenings');
        // This part, too, is fetched when it is first asked for.
        await expect(page.locator('wr-evenings-view')).toBeVisible();
      },
    },
    {
      name: 'files',
      reach: async ({ page }) => {
        await part(page, 'Files');
        // This part is fetched when it is first asked for.
        await expect(page.locator('wr-files-view').getByRole('button').first()).toBeVisible();
      },
    },
    {
      name: 'a look-back',
      reach: async ({ page }) => {
        await lookBack(page, 'demo-20261119-3');
      },
    },
    {
      name: 'another choice, and all as tables',
      reach: async ({ page }) => {
        await openChoices(page);
        await openCourse(page);
        await page.getByText('Try another choice').click();
        await page.getByText('All choices as a table').click();
      },
    },
    {
      name: 'a game without a deal',
      reach: async ({ page }) => {
        await page.evaluate(() => (window.location.hash = '#/journal/game/demo-20260813-4'));
        await expect(page.getByText('No deal was logged in this game.')).toBeVisible();
      },
    },
    {
      name: 'her own table, which another kind fits',
      reach: async (windrow) => {
        await fillFolder(windrow.folder, finishedGames(14, 26));
        await windrow.restart();
        await windrow.go('Journal');
        await part(windrow.page, 'Season');
        await windrow.page.getByRole('button', { name: 'Use the relaxed table' }).focus();
      },
    },
  ],
};
