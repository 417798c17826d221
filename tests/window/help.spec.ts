import type { Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { readLine } from '../../core/card/line.ts';
import { KEYS } from '../../renderer/help/keys.ts';
import { readRules } from '../../renderer/help/page.ts';
import { helpWords, lineExamples, shortForms, tourWords } from '../../renderer/words/help.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { expect, test } from './windrow.ts';

const HOUSE = resolve(import.meta.dirname, '../..');
const DEAL = 'J FF N 0 13b 4578c 22d';
const TABS = Object.values(helpWords.tabs);

/** What each step of the tour shows. */
const SHOWN = [
  'wr-deal-panel .entry',
  'wr-reading-panel .reading',
  'wr-give-panel .band',
  'wr-places a[href$=journal]',
  'wr-places a[href$=card]',
];

/** Expects the ring of the tour around an element, as far as that is within the window. */
async function expectRingAround(page: Page, selector: string): Promise<void> {
  await expect(async () => {
    const ring = await page.locator('wr-tour .ring').boundingBox();
    const part = await page.locator(selector).boundingBox();
    if (ring === null || part === null) throw new Error(`no ring, or no ${selector}`);
    expect(Math.abs(ring.x - Math.max(0, part.x - 4))).toBeLessThan(2);
    expect(Math.abs(ring.y - Math.max(0, part.y - 4))).toBeLessThan(2);
    expect(ring.width).toBeGreaterThan(30);
  }).toPass();
}

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

  test('five steps, forward and back, each pointing at the window itself, on an example deal', async ({
    windrow,
    page,
  }) => {
    await windrow.open();
    await page.getByRole('button', { name: shellWords.tourYes }).click();
    expect(tourWords.steps).toHaveLength(5);
    const next = page.getByRole('button', { name: tourWords.next });
    const first = await next.boundingBox();
    for (const [place, { title }] of tourWords.steps.entries()) {
      await expect(page.getByRole('dialog', { name: tourWords.heading(place + 1, 5, title) })).toBeVisible();
      await expectRingAround(page, SHOWN[place] ?? '');
      if (place === 1) {
        await page.getByRole('button', { name: tourWords.back }).click();
        await next.click();
        // CR-O7: the button to go on keeps its place.
        expect(await next.boundingBox()).toEqual(first);
      }
      if (place < 4) await next.click();
    }
    await page.getByRole('button', { name: tourWords.done }).click();
    await expect(page.getByRole('dialog')).toHaveCount(0);
    expect(await page.evaluate(() => document.activeElement?.localName)).toBe('wr-shell');
  });

  test('it can be left at each step, by Escape as by a button, and goes on there, after a new start too', async ({
    windrow,
    page,
  }) => {
    await windrow.open();
    await page.getByRole('button', { name: shellWords.tourYes }).click();
    await page.getByRole('button', { name: tourWords.next }).click();
    await expect(page.getByRole('dialog', { name: /2 of 5/ })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await openHelp(page);
    await page.getByRole('button', { name: helpWords.resumeTour }).click();
    await expect(page.getByRole('dialog', { name: /2 of 5/ })).toBeVisible();
    await page.getByRole('button', { name: tourWords.next }).click();
    await page.getByRole('button', { name: tourWords.leave }).click();
    await expect(page.getByRole('button', { name: shellWords.help, exact: true })).toBeFocused();
    await windrow.restart();
    await openHelp(page);
    await page.getByRole('button', { name: helpWords.resumeTour }).click();
    await expect(page.getByRole('dialog', { name: /3 of 5/ })).toBeVisible();
  });

  test('the window can be used beside it, and a game that goes on is left as it is', async ({ windrow, page }) => {
    await windrow.open();
    await windrow.deal(DEAL);
    await openHelp(page);
    await page.getByRole('tab', { name: helpWords.tabs.steps }).click();
    await page.getByRole('button', { name: helpWords.startTour }).click();
    await expect(page.getByRole('dialog', { name: /2 of 5/ })).toBeVisible();
    await expect(page.locator('wr-rack [role=option]')).toHaveCount(13);
    await expectRingAround(page, SHOWN[1] ?? '');
    await page.locator('wr-rack [role=option]').nth(3).click();
    await expect(page.getByRole('button', { name: 'Set aside' })).toBeVisible();
  });

  test('no, thanks: it goes, and the focus is not lost', async ({ windrow, page }) => {
    await windrow.open();
    await page.getByRole('button', { name: shellWords.tourNo }).click();
    await expect(page.getByText(shellWords.tourOffer)).toHaveCount(0);
    expect(await page.evaluate(() => document.activeElement?.localName)).toBe('wr-shell');
  });
});

test.describe('the help', () => {
  test('opens at what fits the place that is open, by the button as by the key', async ({ windrow, page }) => {
    await windrow.open();
    const chosen = page.locator('wr-help [role=tab][aria-selected=true]');
    const opensAt = async (tab: string): Promise<void> => {
      for (const open of [() => openHelp(page), () => page.keyboard.press('F1')]) {
        await open();
        await expect(chosen).toHaveText(tab);
        await expect(page.getByRole('dialog', { name: helpWords.title })).toBeVisible();
        await page.keyboard.press('Escape');
        await expect(page.getByRole('dialog')).toHaveCount(0);
      }
    };
    const { tabs } = helpWords;
    await opensAt(tabs.steps);
    await windrow.deal(DEAL);
    await opensAt(tabs.exchange);
    for (const [place, tab] of [
      ['Card', tabs.card],
      ['Journal', tabs.numbers],
      ['Warm-up', tabs.numbers],
      ['Settings', tabs.cautions],
    ] as const) {
      await windrow.go(place);
      await opensAt(tab);
    }
    await windrow.go('Warm-up');
    await openHelp(page);
    await expect(page.getByRole('heading', { name: 'Practice', exact: true })).toBeFocused();
  });

  test('each example of a typed line is a line of a card with ways', () => {
    expect(lineExamples.length).toBeGreaterThanOrEqual(8);
    for (const { typed, or, moves } of lineExamples) {
      const { problems, ways } = readLine({
        id: 'a',
        pattern: typed,
        slide: moves,
        ...(or === '' ? {} : { or: [or] }),
      });
      expect([typed, problems, ways.length > 0]).toEqual([typed, [], true]);
    }
    for (const [typed, becomes] of shortForms.forms)
      expect(becomes.replaceAll(/\s|a/g, '')).toBe(typed.replaceAll('a', ''));
  });

  test('entering the card is shown by whole lines, printed beside typed', async ({ windrow, page }) => {
    await windrow.open('Card');
    await openHelp(page);
    const rows = page.locator('wr-help [slot=card] dl.example');
    await expect(rows).toHaveCount(lineExamples.length);
    for (const [at, { printed, typed }] of lineExamples.entries()) {
      await expect(rows.nth(at)).toContainText(printed);
      await expect(rows.nth(at)).toContainText(typed);
    }
    for (const tab of [helpWords.tabs.check, helpWords.tabs.study]) {
      await page.locator('wr-help').getByRole('tab', { name: tab }).click();
      await expect(page.locator('wr-help p:visible').first()).toBeVisible();
    }
  });

  test('the key F1 opens it from everywhere, Escape closes it, and the focus is where it was', async ({
    windrow,
    page,
  }) => {
    await windrow.open();
    await windrow.deal(DEAL);
    const give = page.locator('wr-give-panel wr-button[look=main]');
    await expect(give).toBeFocused();
    await page.keyboard.press('F1');
    await expect(page.getByRole('dialog', { name: helpWords.title })).toBeVisible({ timeout: 20_000 });
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(give).toBeFocused();
  });

  test('the rules of the exchange in the window are those of the page that the tests quote', async ({
    windrow,
    page,
  }) => {
    const rules = readRules(readFileSync(join(HOUSE, 'core/RULES.md'), 'utf8'), 'EX');
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
    const number = page.getByRole('button', { name: /explain Away/ }).first();
    await number.click();
    await page.getByRole('button', { name: 'More in the help' }).and(page.locator(':visible')).click();
    await expect(page.getByRole('heading', { name: 'Away', exact: true })).toBeFocused();
    await expect(page.getByRole('heading', { name: 'Away', exact: true })).toBeInViewport();
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
