import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, type Locator, type Page } from '@playwright/test';
import { helpWords } from '../../../renderer/words/help.ts';
import { shellWords } from '../../../renderer/words/shell.ts';
import type { Windrow } from '../windrow.ts';
import { expectClimb, expectEnd, expectWalk, type KeyPress, type KeyTest, type KeyTests } from './key-press.ts';

/** Thirteen tiles, no two of them alike. */
const DEAL = 'J F N 0 13b 4578c 259d';
const CHOSEN = 'wr-rack [aria-selected=true]';

function rackTiles(page: Page): Locator {
  return page.locator('wr-rack [role=option]');
}

/** Those that lie in the tray, to be given. */
function givenTiles(page: Page): Locator {
  return page.locator('wr-slots .slot.tile');
}

async function dealt(windrow: Windrow): Promise<string[]> {
  await windrow.open();
  await windrow.deal(DEAL);
  // The focus comes to the pass once its parts are there; it must not come while keys are pressed elsewhere.
  await expect(windrow.page.locator('wr-give-panel wr-button[look=main]')).toBeFocused();
  return await windrow.rack();
}

/** Deals to a rack of two rows, and lays the fourth tile into the second one. */
async function dealtInTwoRows(windrow: Windrow): Promise<string[]> {
  await writeFile(join(windrow.folder, 'preferences.json'), JSON.stringify({ weighs: 'when-asked', rackTiers: 2 }));
  const rack = await dealt(windrow);
  await rackTiles(windrow.page).nth(3).focus();
  await windrow.page.keyboard.press('Alt+ArrowDown');
  await expect.poll(async () => await rowOf(rackTiles(windrow.page).last())).toBe(1);
  return rack;
}

/** The row of the rack, from 0, in which a tile lies. */
async function rowOf(tile: Locator): Promise<number> {
  return await tile.evaluate((element) => {
    const rows = [...((element.getRootNode() as ShadowRoot).querySelectorAll('.tier') ?? [])];
    return rows.findIndex((row) => row.contains(element));
  });
}

async function setAside(page: Page, count: number): Promise<void> {
  await rackTiles(page).nth(3).focus();
  for (let tile = 1; tile <= count; tile += 1) {
    await page.keyboard.press('Enter');
    await expect(givenTiles(page)).toHaveCount(tile);
  }
}

const dialog = (page: Page): Locator => page.getByRole('dialog', { name: helpWords.title });
const helpButton = (page: Page): Locator => page.getByRole('button', { name: shellWords.help, exact: true });

const title = (page: Page, words: string): Locator => page.getByRole('heading', { name: words });
const [BEFORE, AFTER] = ['What were you dealt?', 'Pass three to the right'];

/** On to a part of the window, or back to it, from the one that lies before or behind. */
const tabOn: KeyTest = async ({ windrow, page, press, by }) => {
  await dealt(windrow);
  await helpButton(page).focus();
  await page.keyboard.press(by > 0 ? 'Shift+Tab' : 'Tab');
  await expect(helpButton(page)).not.toBeFocused();
  await press();
  await expect(helpButton(page)).toBeFocused();
};

/** The tabs of the help, the second of them open. */
async function openTabs({ page }: Windrow): Promise<Locator> {
  await helpButton(page).click();
  const tabs = page.locator('wr-help').getByRole('tab');
  await tabs.nth(1).click();
  return tabs;
}

/** Expects a key to do the same on tabs as on a row of buttons. */
async function expectOnBoth(key: KeyPress, goes: (key: KeyPress, things: Locator) => Promise<void>): Promise<void> {
  await dealt(key.windrow);
  await goes(key, key.page.locator('wr-toolbar', { hasText: 'Undo' }).locator('button'));
  await goes(key, await openTabs(key.windrow));
}

export const tableKeys: KeyTests<'everywhere' | 'rack' | 'slots' | 'tray' | 'tabs'> = {
  everywhere: {
    help: async ({ windrow, page, press }) => {
      await windrow.open();
      await press();
      await expect(dialog(page)).toBeVisible();
    },
    on: tabOn,
    back: tabOn,
    press: async ({ windrow, page, press }) => {
      await windrow.open();
      await helpButton(page).focus();
      await press();
      await expect(dialog(page)).toBeVisible();
    },
    close: async ({ windrow, page, press }) => {
      await windrow.open();
      await helpButton(page).click();
      await expect(dialog(page)).toBeVisible();
      await press();
      await expect(dialog(page)).toHaveCount(0);
    },
    undo: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await press();
      await expect(title(page, BEFORE)).toBeVisible();
    },
    redo: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await page.keyboard.press('Control+z');
      await expect(title(page, BEFORE)).toBeVisible();
      await press();
      await expect(title(page, AFTER)).toBeVisible();
    },
  },
  rack: {
    walk: async (key) => {
      await dealt(key.windrow);
      await expectWalk(key, rackTiles(key.page));
    },
    climb: async (key) => {
      await dealtInTwoRows(key.windrow);
      const tiles = rackTiles(key.page);
      await (key.by < 0 ? tiles.last() : tiles.first()).focus();
      await key.press();
      expect(await rowOf(tiles.and(key.page.locator(':focus')))).toBe(key.by < 0 ? 0 : 1);
    },
    ends: async (key) => {
      await dealt(key.windrow);
      await expectEnd(key, rackTiles(key.page));
    },
    jump: async ({ windrow, page, press, phrase }) => {
      const rack = await dealt(windrow);
      await rackTiles(page).first().focus();
      const [symbol, name] = phrase === 'a-z' ? ['n', 'north wind'] : ['7', 'seven crak'];
      await press(symbol);
      await expect(rackTiles(page).nth(rack.indexOf(name))).toBeFocused();
    },
    select: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await rackTiles(page).nth(4).focus();
      await press();
      await expect(rackTiles(page).nth(4)).toHaveAttribute('aria-selected', 'true');
      await press();
      await expect(page.locator(CHOSEN)).toHaveCount(0);
    },
    step: async ({ windrow, page, press, by }) => {
      const rack = await dealt(windrow);
      const moved = rack.toSpliced(4, 1).toSpliced(4 + by, 0, rack[4] ?? '');
      await rackTiles(page).nth(4).focus();
      await press();
      await expect.poll(async () => await windrow.rack()).toEqual(moved);
    },
    tier: async ({ windrow, page, press, by }) => {
      const [joker = ''] = await dealtInTwoRows(windrow);
      const tile = by < 0 ? rackTiles(page).last() : rackTiles(page).first();
      const name = by < 0 ? await tile.getAttribute('aria-label') : joker;
      await tile.focus();
      await press();
      const same = page.locator(`wr-rack [role=option][aria-label^="${name?.split(',')[0]}"]`);
      await expect.poll(async () => await rowOf(same)).toBe(by < 0 ? 0 : 1);
    },
    gap: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await rackTiles(page).nth(4).focus();
      await press();
      await expect(page.locator('wr-rack .cell.gap')).toHaveCount(1);
      await press();
      await expect(page.locator('wr-rack .cell.gap')).toHaveCount(0);
    },
    send: async ({ windrow, page, press }) => {
      await dealt(windrow);
      for (const place of [3, 5]) {
        await rackTiles(page).nth(place).focus();
        await page.keyboard.press('Space');
      }
      await press();
      await expect(givenTiles(page)).toHaveCount(2);
    },
    recall: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await setAside(page, 1);
      await press();
      await expect(givenTiles(page)).toHaveCount(0);
      await expect(rackTiles(page)).toHaveCount(13);
    },
    cancel: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await rackTiles(page).nth(4).focus();
      await page.keyboard.press('Space');
      await expect(page.locator(CHOSEN)).toHaveCount(1);
      await press();
      await expect(page.locator(CHOSEN)).toHaveCount(0);
    },
  },
  slots: {
    walk: async (key) => {
      await dealt(key.windrow);
      await setAside(key.page, 3);
      await expectWalk(key, givenTiles(key.page));
    },
    takeBack: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await setAside(page, 2);
      const other = await givenTiles(page).last().getAttribute('data-slot');
      await givenTiles(page).first().focus();
      await press();
      await expect(givenTiles(page)).toHaveCount(1);
      await expect(givenTiles(page)).toHaveAttribute('data-slot', other ?? '');
    },
    takeAll: async ({ windrow, page, press }) => {
      await dealt(windrow);
      await setAside(page, 2);
      await givenTiles(page).first().focus();
      await press();
      await expect(givenTiles(page)).toHaveCount(0);
    },
  },
  tray: {
    walk: async (key) => {
      await key.windrow.open();
      await expectWalk(key, key.page.locator('wr-tray button'));
    },
    climb: async (key) => {
      await key.windrow.open();
      await expectClimb(key, key.page.locator('wr-tray button'), { up: 20, down: 2 });
    },
    ends: async (key) => {
      await key.windrow.open();
      await expectEnd(key, key.page.locator('wr-tray button'));
    },
    add: async ({ windrow, page, press }) => {
      await windrow.open();
      await page.locator('wr-tray button').nth(4).focus();
      await press();
      expect(await windrow.rack()).toEqual(['five bam']);
    },
  },
  tabs: {
    walk: async (key) => await expectOnBoth(key, expectWalk),
    ends: async (key) => await expectOnBoth(key, expectEnd),
  },
};
