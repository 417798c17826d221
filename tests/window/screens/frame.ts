import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { helpWords, tourWords } from '../../../renderer/words/help.ts';
import { copyWords, settingsWords } from '../../../renderer/words/settings.ts';
import { shellWords } from '../../../renderer/words/shell.ts';
import { cardText } from '../../main/support/desks.ts';
import { choose } from '../play.ts';
import { expect, type Windrow } from '../windrow.ts';
import type { Journey } from './journey.ts';

async function openHelp({ page }: Windrow): Promise<void> {
  await page.getByRole('button', { name: shellWords.help, exact: true }).click();
  await expect(page.getByRole('dialog', { name: helpWords.title })).toBeVisible();
}

/** Presses a button and waits for the step of the tour that it opens. */
async function toStep({ page }: Windrow, button: string, step: number): Promise<void> {
  await page.getByRole('button', { name: button }).click();
  await expect(page.getByRole('dialog', { name: stepName(step) })).toBeVisible();
}

function stepName(step: number): string {
  return tourWords.heading(step, tourWords.steps.length, tourWords.steps[step - 1]?.title ?? '');
}

/** The tour of the first start, and every part of the help. */
export const helpJourney: Journey = {
  name: 'the tour and the help',
  place: 'table',
  shows: ['wr-help-host', 'wr-tour', 'wr-help'],
  dialogs: [`wr-help: ${helpWords.title}`],
  screens: [
    { name: 'the offer of the tour', reach: async ({ page }) => await expect(page.locator('.offer')).toBeVisible() },
    {
      name: 'the tour, 1 of 5',
      reach: (windrow) => toStep(windrow, shellWords.tourYes, 1),
    },
    ...[2, 3, 4, 5].map((step) => ({
      name: `the tour, ${step} of 5`,
      reach: (windrow: Windrow) => toStep(windrow, tourWords.next, step),
    })),
    ...Object.values(helpWords.tabs).map((name, at) => ({
      name: `the help: ${name}`,
      reach: async (windrow: Windrow) => {
        if (at === 0) {
          await windrow.page.getByRole('button', { name: tourWords.done }).click();
          await openHelp(windrow);
        }
        await windrow.page.getByRole('tab', { name }).click();
      },
    })),
  ],
};

/** The Settings and their questions. */
export const settingsJourney: Journey = {
  name: 'the Settings',
  place: 'settings',
  shows: [
    'wr-settings-place',
    'wr-advice-choice',
    'wr-table-kind',
    'wr-payment-rules',
    'wr-remove-names',
    'wr-my-files',
    'wr-copies',
    'wr-backup',
    'wr-delete-all',
    'wr-licences',
  ],
  dialogs: ['wr-remove-names: Remove all names?', 'wr-delete-all: Delete everything?', 'wr-delete-all: Are you sure?'],
  screens: [
    { name: 'the Settings', reach: async () => {} },
    {
      name: 'a card in two files',
      reach: async (windrow) => {
        const cards = join(windrow.folder, 'cards');
        await mkdir(cards, { recursive: true });
        await writeFile(join(cards, 'mine.card.json'), cardText('Mine'));
        await writeFile(join(cards, 'mine (1).card.json'), cardText('Theirs'));
        await windrow.restart();
        await windrow.go('Settings');
        await expect(windrow.page.locator('wr-copies').getByRole('listitem')).toHaveCount(1);
        await windrow.page.locator('wr-copies').getByRole('button').first().focus();
      },
    },
    {
      name: 'the two files settled',
      reach: async ({ page }) => {
        await page.locator('wr-copies').getByRole('button').first().click();
        await expect(page.locator('wr-copies').getByRole('status')).toHaveText(copyWords.done.used);
      },
    },
    {
      name: 'rules of payment with a fault, where the files are',
      reach: async ({ page }) => {
        await choose(page, 'What is paid', 'A fixed stake');
        await page.getByLabel('Stake of a win').fill('much');
        await page.getByLabel('Stake of a win').blur();
        await expect(page.getByText('Write a number from 0 to 1000000.')).toBeVisible();
        await page.getByRole('button', { name: settingsWords.show }).click();
      },
    },
    {
      name: 'the licences',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: settingsWords.licencesShow }).click();
        await expect(page.getByRole('button', { name: settingsWords.licencesHide })).toBeVisible();
      },
    },
    {
      name: 'the question about names',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: settingsWords.licencesHide }).click();
        await page.getByRole('button', { name: 'Remove all names' }).click();
        await expect(page.getByRole('dialog')).toBeVisible();
      },
    },
    {
      name: 'the first question about deleting everything',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: settingsWords.removeButton }).click();
        await expect(page.getByRole('button', { name: settingsWords.removeNext })).toBeVisible();
      },
    },
    {
      name: 'the second question',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: settingsWords.removeNext }).click();
        await expect(page.getByRole('button', { name: settingsWords.removeYes })).toBeVisible();
      },
    },
    {
      name: 'everything deleted',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: settingsWords.removeYes }).click();
        await expect(page.getByRole('heading', { name: settingsWords.removed })).toBeFocused();
      },
    },
  ],
};
