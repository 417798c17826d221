import type { Page } from '@playwright/test';
import { addSection, copyDemo, startCard, typedLine, view } from '../card-evening.ts';
import { expect, type Windrow } from '../windrow.ts';
import type { Journey } from './journey.ts';

/** A file of a card, two lines of which are faulty. */
function faultyFile(): { name: string; mimeType: string; buffer: Buffer } {
  const lines = [
    { id: 'a', pattern: 'FF 2?' },
    { id: 'b', pattern: 'FF 111a 222b 333a 444b' },
  ];
  const sections = [{ name: 'Runs', lines }];
  const text = JSON.stringify({ format: 'windrow.card', version: 1, title: 'T', sections });
  return { name: 'a.card.json', mimeType: 'application/json', buffer: Buffer.from(text) };
}

async function openFaulty({ page }: Windrow): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a card file' }).click();
  await page.getByRole('button', { name: 'I understand' }).click();
  await (await chooser).setFiles(faultyFile());
  await expect(page.getByText('Nothing was changed on this computer.')).toBeVisible();
}

/** Types a line in place of the one that stands there, as a person does. */
async function retype(page: Page, line: string): Promise<void> {
  await typedLine(page).focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(line);
}

/** A card begun by hand, and a file that is looked at. */
export const newCardJourney: Journey = {
  name: 'a new card',
  place: 'card',
  shows: [
    'wr-card-place',
    'wr-card-list',
    'wr-card-arrived',
    'wr-card-caution',
    'wr-card-start',
    'wr-card-lines',
    'wr-section-form',
    'wr-tabs',
    'wr-notice',
  ],
  dialogs: ['wr-card-caution: A word about printed cards', 'wr-card-start: Start an empty card'],
  screens: [
    { name: 'the cards', reach: async () => {} },
    { name: 'a file with problems', reach: openFaulty },
    {
      name: 'the caution',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: "Don't keep it" }).click();
        await page.getByRole('button', { name: 'Start an empty card' }).click();
      },
    },
    {
      name: 'the title of a new card, missing',
      reach: async ({ page }) => {
        await page.getByRole('button', { name: 'I understand' }).click();
        await page.getByRole('button', { name: 'Start the card' }).click();
        await expect(page.getByText('Give the card a title')).toBeVisible();
      },
    },
    {
      name: 'an empty card',
      reach: async (windrow) => {
        await windrow.page.keyboard.press('Escape');
        await startCard(windrow);
      },
    },
    { name: 'an empty section', reach: async (windrow) => await addSection(windrow, 'Runs') },
    {
      name: 'its section, open to be changed',
      reach: async ({ page }) => await page.getByRole('button', { name: 'Change the section Runs' }).click(),
    },
    { name: 'no whole card yet', reach: async ({ page }) => await view(page, 'Whole card') },
    { name: 'nothing to check', reach: async ({ page }) => await view(page, 'Check') },
    { name: 'nothing to proof-read', reach: async ({ page }) => await view(page, 'Proof-read') },
  ],
};

/** A card that is full, in all its views. */
export const fullCardJourney: Journey = {
  name: 'a full card',
  place: 'card',
  shows: [
    'wr-line-view',
    'wr-line-panel',
    'wr-line-choices',
    'wr-line-more',
    'wr-line-groups',
    'wr-group-picker',
    'wr-pattern-field',
    'wr-card-whole',
    'wr-card-check',
    'wr-figures',
    'wr-card-proof',
    'wr-card-study',
  ],
  dialogs: [
    'wr-card-list: Earlier versions of Lakeside demo card, my copy',
    'wr-card-list: Remove Lakeside demo card, my copy?',
  ],
  screens: [
    { name: 'the demo card, line by line', reach: async ({ page }) => await view(page, 'Lines') },
    {
      name: "a line of one's own",
      reach: async (windrow) => {
        await view(windrow.page, 'Cards');
        await copyDemo(windrow);
      },
    },
    {
      name: 'a line with a fault, ways to go on, a chosen group',
      reach: async ({ page }) => {
        await page.locator('wr-line-groups [role=option]').nth(1).click();
        await retype(page, 'FF 22q 333a DD');
        await expect(page.locator('wr-pattern-field [role=option]').first()).toBeVisible();
      },
    },
    {
      name: 'a line with "or", a second number',
      reach: async ({ page }) => {
        await retype(page, "FF 11a 11b 11c 55a' 55b' 55c'");
        await page.getByRole('button', { name: 'or…' }).click();
        await expect(page.getByRole('radio', { name: 'Or 1' })).toBeVisible();
      },
    },
    {
      name: 'a line that asks for its suits',
      reach: async ({ page }) => {
        await retype(page, '22b 33b 444c 555c FFFF');
        await expect(page.getByRole('button', { name: 'Bams and craks' })).toBeVisible();
      },
    },
    {
      name: 'points that are none',
      reach: async ({ page }) => {
        await retype(page, '1111a 2a 3333a 4a 5555a');
        for (const key of ['Tab', 'Tab', 'Tab', 'x']) await page.keyboard.press(key);
        await expect(page.locator('[role=row].now .words.bad')).toContainText('points');
      },
    },
    { name: 'the whole card', reach: async ({ page }) => await view(page, 'Whole card') },
    {
      name: 'a line found on the whole card',
      reach: async ({ page }) => {
        await page.getByLabel('Find a line').fill('NEWS');
        await expect(page.locator('wr-card-whole').getByRole('status')).toHaveText(/ found$/);
      },
    },
    {
      name: 'the checks and numbers',
      reach: async ({ page }) => {
        await view(page, 'Check');
        await expect(page.getByRole('heading', { name: 'The card in numbers' })).toBeVisible();
      },
    },
    { name: 'proof-reading', reach: async ({ page }) => await view(page, 'Proof-read') },
    {
      name: 'study, answered',
      reach: async ({ page }) => {
        await view(page, 'Study');
        await page.getByRole('button', { name: 'Begin' }).click();
        await page.locator('wr-card-study .choices wr-button').first().click();
      },
    },
    {
      name: 'earlier versions',
      reach: async ({ page }) => {
        await view(page, 'Cards');
        await page.getByRole('button', { name: 'Earlier versions' }).click();
        // The list of them is asked for before the dialog opens.
        await expect(page.getByRole('dialog', { name: /^Earlier versions/ })).toBeVisible();
      },
    },
    {
      name: 'the card saved as a file',
      reach: async ({ page }) => {
        await page.keyboard.press('Escape');
        const card = page.locator('.card', { hasText: 'my copy' });
        await card.getByRole('button', { name: 'Save as a file' }).click();
        await page.getByRole('button', { name: 'I understand' }).click();
        await expect(page.getByRole('main').getByText(/^Saved as /)).toBeVisible();
      },
    },
    {
      name: 'the question before the card in use is removed',
      reach: async ({ page }) => {
        const card = page.locator('.card', { hasText: 'my copy' });
        await card.getByRole('button', { name: 'Use at the Table' }).click();
        await card.getByRole('button', { name: 'Remove' }).click();
        await expect(page.getByRole('dialog', { name: /^Remove / })).toBeVisible();
      },
    },
  ],
};
