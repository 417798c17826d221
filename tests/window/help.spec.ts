import type { Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { KEYS } from '../../renderer/help/keys.ts';
import { readRules } from '../../renderer/help/page.ts';
import { helpWords, tourWords } from '../../renderer/words/help.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { expect, test } from './windrow.ts';

const HOUSE = resolve(import.meta.dirname, '../..');
const DEAL = 'J FF N 0 13b 4578c 22d';
const TABS = Object.values(helpWords.tabs);

async function openHelp(page: Page): Promise<void> {
  await page.getByRole('button', { name: shellWords.help, exact: true }).click();
  await expect(page.getByRole('dialog', { name: helpWords.title })).toBeVisible();
}

test.describe('the tour', () => {
  test('it is offered at the first start and never comes back unasked', async ({ windrow, page }) => {
    await windrow.open();
    const offer = page.getByText(shellWords.tourOffer);
    await expect(offer).toBeVisible();
    await windrow.restart();
    await expect(page.getByRole('heading', { level: 1 })).toBeAttached();
    await expect(offer).toHaveCount(0);
  });

  test('five steps, forward and back, then the focus is in the window again', async ({ windrow, page }) => {
    await windrow.open();
    await page.getByRole('button', { name: shellWords.tourYes }).click();
    expect(tourWords.steps).toHaveLength(5);
    const next = page.getByRole('button', { name: tourWords.next });
    const first = await next.boundingBox();
    for (const [place, { title }] of tourWords.steps.entries()) {
      await expect(page.getByRole('dialog', { name: tourWords.heading(place + 1, 5, title) })).toBeVisible();
      if (place === 1) {
        await page.getByRole('button', { name: tourWords.back }).click();
        await next.click();
        // O7: the button to go on keeps its place.
        expect(await next.boundingBox()).toEqual(first);
      }
      if (place < 4) await next.click();
    }
    await page.getByRole('button', { name: tourWords.done }).click();
    await expect(page.getByRole('dialog')).toHaveCount(0);
    expect(await page.evaluate(() => document.activeElement?.localName)).toBe('wr-shell');
  });

  test('it can be left at once, by Escape as by a button, and taken again from the help', async ({ windrow, page }) => {
    await windrow.open();
    await page.getByRole('button', { name: shellWords.tourYes }).click();
    await expect(page.getByRole('dialog')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await openHelp(page);
    await page.getByRole('button', { name: helpWords.startTour }).click();
    await expect(page.getByRole('dialog', { name: /1 of 5/ })).toBeVisible();
    await page.getByRole('button', { name: 'Close' }).click();
    await expect(page.getByRole('button', { name: shellWords.help, exact: true })).toBeFocused();
  });

  test('no, thanks: it goes, and the focus is not lost', async ({ windrow, page }) => {
    await windrow.open();
    await page.getByRole('button', { name: shellWords.tourNo }).click();
    await expect(page.getByText(shellWords.tourOffer)).toHaveCount(0);
    expect(await page.evaluate(() => document.activeElement?.localName)).toBe('wr-shell');
  });
});

test.describe('the help', () => {
  test('F1 opens it from everywhere, Escape closes it, and the focus is where it was', async ({ windrow, page }) => {
    await windrow.open();
    await windrow.deal(DEAL);
    await expect(page.locator('wr-rack [role=option]:focus')).toHaveCount(1);
    await page.keyboard.press('F1');
    await expect(page.getByRole('dialog', { name: helpWords.title })).toBeVisible({ timeout: 20_000 });
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(page.locator('wr-rack [role=option]:focus')).toHaveCount(1);
  });

  test('the rules of the exchange in the window are those of the page that the tests quote', async ({
    windrow,
    page,
  }) => {
    const rules = readRules(readFileSync(join(HOUSE, 'core/exchange/RULES.md'), 'utf8'));
    expect(rules).toHaveLength(11);
    await windrow.open();
    await openHelp(page);
    await page.getByRole('tab', { name: helpWords.tabs.exchange }).click();
    const shown = page.locator('wr-help [slot=exchange] li');
    await expect(shown.first()).toBeVisible();
    expect(await shown.allTextContents()).toEqual(rules);
  });

  test('every place and command of the table of keys is listed', async ({ windrow, page }) => {
    await windrow.open();
    await openHelp(page);
    await page.getByRole('tab', { name: helpWords.tabs.keys }).click();
    const commands = Object.values(KEYS).reduce((sum, place) => sum + Object.keys(place).length, 0);
    await expect(page.locator('wr-help [slot=keys] dl > div')).toHaveCount(commands);
    await expect(page.locator('wr-help [slot=keys] dt:text-is("")')).toHaveCount(0);
    await expect(page.locator('wr-help kbd').filter({ hasText: 'ARROW' })).toHaveCount(0);
  });

  test('a number leads to its own explanation, and back to itself', async ({ windrow, page }) => {
    await windrow.open();
    await windrow.deal(DEAL);
    const number = page.getByRole('button', { name: /explain Draw reach/ }).first();
    await number.click();
    await page.getByRole('button', { name: 'More in the help' }).and(page.locator(':visible')).click();
    await expect(page.getByRole('heading', { name: 'Draw reach' })).toBeFocused();
    await expect(page.getByRole('heading', { name: 'Draw reach' })).toBeInViewport();
    await page.keyboard.press('Escape');
    await expect(number).toBeFocused();
  });

  test('on paper the whole help is there, and nothing else', async ({ windrow, page }) => {
    await windrow.open();
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await openHelp(page);
    await page.getByRole('button', { name: helpWords.print }).click();
    await page.emulateMedia({ media: 'print' });
    const paper = page.locator('wr-help-paper');
    await expect(paper).toBeVisible();
    await expect(page.locator('wr-shell')).toBeHidden();
    for (const title of TABS) await expect(paper.getByRole('heading', { level: 2, name: title })).toBeVisible();
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.length).toBeGreaterThan(20_000);
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await expect(paper).toHaveCount(0);
  });
});
