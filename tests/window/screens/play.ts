import { choose, layOpenAtOnce, straightToPlay, type } from '../play.ts';
import { expect, type Windrow } from '../windrow.ts';
import type { Journey } from './journey.ts';
import { DEAL } from './table.ts';

async function askForResult({ page }: Windrow): Promise<void> {
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Who won?', 'You');
  await choose(page, 'How?', 'By discard');
  await choose(page, 'Whose discard?', 'Left');
  await page.getByLabel('Which hand?').selectOption('one-shore-1');
  await expect(page.getByRole('table', { name: 'Who pays what' })).toBeVisible();
}

/** The Table from the first draw to the result, and the evening. */
export const playJourney: Journey = {
  name: 'play and result',
  place: 'table',
  shows: [
    'wr-advice-panel',
    'wr-advice-list',
    'wr-target-line',
    'wr-others',
    'wr-tile-risks',
    'wr-play-side',
    'wr-play-panel',
    'wr-open-groups',
    'wr-open-jokers',
    'wr-unseen-panel',
    'wr-group-entry',
    'wr-result-dialog',
    'wr-result-panel',
    'wr-evening-panel',
    'wr-evening-about',
  ],
  dialogs: ['wr-result-dialog: How did it end?', 'wr-group-entry: Lay it open all the same?'],
  screens: [
    { name: 'the beginning of play', reach: async (windrow) => await straightToPlay(windrow, DEAL) },
    {
      name: 'a call to weigh, all that is unseen, the discards',
      reach: async ({ page }) => {
        await type(page, '2d');
        await expect(page.getByText(/^Call the two dot/)).toBeVisible();
        await page.getByText(/^Still unseen/).click();
        await page.getByText(/^Discards on the table/).click();
      },
    },
    {
      name: 'a discard to weigh, a cost explained, a fault beside the field',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Undo' }).click();
        await type(page, '9c 5d');
        await type(page, '9d');
        await page
          .getByRole('button', { name: /explain Why/ })
          .first()
          .click();
      },
    },
    {
      name: 'a group being laid open, and one that lies open with its joker',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'Undo' }).click();
        await page.getByRole('button', { name: 'Undo' }).click();
        await layOpenAtOnce(page, 'Across', '4c 4c J');
        await choose(page, 'What happened?', 'A group laid open');
      },
    },
    {
      name: 'the question before a group that makes the hand dead',
      reach: async ({ page }) => {
        await choose(page, 'Whose tile?', 'You');
        await type(page, 'n n J');
        await expect(page.getByRole('dialog', { name: 'Lay it open all the same?' })).toBeVisible();
      },
    },
    {
      name: 'a dead hand, and another seat that seems dead',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Lay it open all the same' }).click();
        await expect(page.locator('wr-advice-panel').getByText(/^Dead: /)).toBeVisible();
        for (const group of ['3b 3b J', '9c 9c 9c']) {
          await layOpenAtOnce(page, 'Left', group);
        }
        await expect(page.locator('wr-others summary').getByText(/^These groups fit no line/)).toBeVisible();
      },
    },
    {
      name: 'the others, one of them and the own tiles unfolded',
      reach: async ({ page }) => {
        for (const group of ['2b 2b 2b 2b', '8b 8b 8b J']) {
          await layOpenAtOnce(page, 'Right', group);
        }
        await expect(page.locator('wr-others .seats')).toContainText('wants');
        await page.locator('wr-others .seats summary').first().click();
        await page.getByText('Your tiles, the hottest first').click();
        await page
          .getByRole('button', { name: /explain Safe and hot/ })
          .first()
          .click();
        await page.keyboard.press('Escape');
      },
    },
    { name: 'the result being entered', reach: askForResult },
    {
      name: 'the result and the evening, names and rules shown',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'Enter the result' }).click();
        await page.getByText('Names, if you like').click();
        await page.getByText('Rules of payment').click();
      },
    },
  ],
};
