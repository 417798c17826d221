import { expect, type Locator, type Page } from '@playwright/test';
import { addSection, copyDemo, lineRow, startCard, typedLine, view } from '../card-evening.ts';
import { sheetOfTwo } from '../warmup-helpers.ts';
import type { Windrow } from '../windrow.ts';
import { expectClimb, expectEnd, expectWalk, type KeyTests } from './key-press.ts';

/** The card that a person has made of the demo card, its first line open. */
async function ownCard(windrow: Windrow): Promise<void> {
  await windrow.open('Card');
  await copyDemo(windrow);
  await typedLine(windrow.page).click();
}

const groups = (page: Page): Locator => page.locator('wr-line-groups [role=option]');

/** A new line, which is built from tiles. */
async function pickerTiles(windrow: Windrow): Promise<Locator> {
  const { page } = windrow;
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Runs');
  await page.getByText('Build it from tiles').click();
  return page.locator('wr-group-picker [data-at]');
}

/** How the numbers of the second line may move, as its cell says it. */
const MOVES = ['these only', 'any run', 'evens or odds', 'by threes'];

/** The row and the column of the current cell. */
async function cell(page: Page): Promise<[string, string]> {
  return await page.locator('wr-card-lines .here').evaluate((here) => {
    if (!here.matches(':focus-within')) throw new Error('the focus is not in the current cell');
    return [here.parentElement?.querySelector('.place')?.textContent ?? '', [...here.classList][0] ?? ''];
  });
}

/** Goes to the second line of the card, and there to a cell so many cells behind the first. */
async function secondLine(windrow: Windrow, cells = 0): Promise<void> {
  await ownCard(windrow);
  const { page } = windrow;
  await lineRow(page, 1, 2).locator('.pattern').click();
  for (let at = 0; at < cells; at += 1) await page.keyboard.press('Tab');
}

async function wholeCard(windrow: Windrow): Promise<Locator> {
  await windrow.open('Card');
  await view(windrow.page, 'Whole card');
  return windrow.page.locator('wr-card-whole li button');
}

async function shownToClass(windrow: Windrow): Promise<Locator> {
  await sheetOfTwo(windrow);
  await windrow.page.getByRole('button', { name: 'Show on a screen' }).click();
  const screen = windrow.page.getByRole('dialog');
  await screen.waitFor({ timeout: 60_000 });
  return screen;
}

const rack = (screen: Locator): Locator => screen.getByRole('heading', { name: 'The rack', exact: true });

export const cardKeys: KeyTests<'picker' | 'groups' | 'grid' | 'whole' | 'projector'> = {
  picker: {
    walk: async (key) => await expectWalk(key, await pickerTiles(key.windrow)),
    climb: async (key) => await expectClimb(key, await pickerTiles(key.windrow), { up: 12, down: 2 }),
    ends: async (key) => await expectEnd(key, await pickerTiles(key.windrow)),
    choose: async ({ windrow, page, press }) => {
      await (await pickerTiles(windrow)).first().focus();
      await press();
      await expect(groups(page)).toHaveCount(2);
    },
  },
  groups: {
    walk: async (key) => {
      await ownCard(key.windrow);
      await groups(key.page).nth(1).click();
      await expectWalk(key, groups(key.page));
    },
    move: async ({ windrow, page, press, by }) => {
      await ownCard(windrow);
      await groups(page).nth(1).click();
      await press();
      await expect(typedLine(page)).toHaveValue(by < 0 ? '2a 1111a 3333a 4a 5555a' : '1111a 3333a 2a 4a 5555a');
    },
    remove: async ({ windrow, page, press }) => {
      await ownCard(windrow);
      await groups(page).nth(1).click();
      await press();
      await expect(typedLine(page)).toHaveValue('1111a 3333a 4a 5555a');
    },
  },
  grid: {
    line: async ({ windrow, page, press }) => {
      await secondLine(windrow, 1);
      await press();
      expect(await cell(page)).toEqual(['3', 'pattern']);
    },
    cell: async ({ windrow, page, press }) => {
      await secondLine(windrow);
      const seen: [string, string][] = [];
      for (let step = 0; step < 4; step += 1) {
        await press();
        seen.push(await cell(page));
      }
      expect(seen).toEqual([
        ['2', 'slide'],
        ['2', 'concealed'],
        ['2', 'points'],
        ['3', 'pattern'],
      ]);
    },
    back: async ({ windrow, page, press }) => {
      await secondLine(windrow);
      await press();
      expect(await cell(page)).toEqual(['1', 'points']);
    },
    walk: async ({ windrow, page, press, by }) => {
      await secondLine(windrow, 1);
      await press();
      expect(await cell(page)).toEqual([String(2 + by), 'slide']);
    },
    move: async ({ windrow, page, press, by }) => {
      await secondLine(windrow);
      const line = await typedLine(page).inputValue();
      await press();
      await expect.poll(async () => await cell(page)).toEqual([String(2 + by), 'pattern']);
      await expect(typedLine(page)).toHaveValue(line);
    },
    moves: async ({ windrow, page, press, phrase }) => {
      await secondLine(windrow, 1);
      await page.keyboard.press(phrase === '0' ? '1' : '0');
      const before = await lineRow(page, 1, 2).locator('.slide').innerText();
      await press();
      const words = MOVES[Number(phrase)] ?? '';
      expect(before).not.toContain(words);
      await expect(lineRow(page, 1, 2).locator('.slide')).toContainText(words);
    },
    side: async ({ windrow, page, press, phrase }) => {
      await secondLine(windrow, 2);
      const side = lineRow(page, 1, 2).locator('.concealed');
      await page.keyboard.press(phrase === 'c' ? 'x' : 'c');
      await expect(side).toHaveText(phrase === 'c' ? /C or XX\s*$/ : /C or XC\s*$/);
      await press();
      await expect(side).toHaveText(phrase === 'c' ? /C or XC\s*$/ : /C or XX\s*$/);
    },
    offers: async ({ windrow, page, press }) => {
      await secondLine(windrow);
      await expect(page.locator('wr-pattern-field [role=option]')).toHaveCount(0);
      await press();
      await expect(page.locator('wr-pattern-field [role=option]').first()).toBeVisible();
    },
    leave: async ({ windrow, page, press }) => {
      await secondLine(windrow);
      await press();
      await expect(page.locator('wr-line-panel :focus').first()).toBeAttached();
      await expect(page.locator('wr-card-lines .here:focus-within')).toHaveCount(0);
    },
  },
  whole: {
    walk: async (key) => await expectWalk(key, await wholeCard(key.windrow)),
    ends: async (key) => await expectEnd(key, await wholeCard(key.windrow)),
    show: async ({ windrow, page, press }) => {
      await (await wholeCard(windrow)).nth(1).focus();
      await press();
      await expect(page.getByRole('tab', { name: 'Lines' })).toHaveAttribute('aria-selected', 'true');
      await expect(page.locator('wr-card-lines .now .place')).toHaveText('2');
    },
    empty: async ({ windrow, page, press }) => {
      await wholeCard(windrow);
      const find = page.getByLabel('Find a line');
      await find.fill('FF');
      await press();
      await expect(find).toHaveValue('');
    },
  },
  projector: {
    on: async ({ windrow, press }) => {
      const screen = await shownToClass(windrow);
      await expect(rack(screen)).toHaveCount(0);
      await press();
      await expect(rack(screen)).toBeVisible();
    },
    back: async ({ windrow, page, press }) => {
      const screen = await shownToClass(windrow);
      await page.keyboard.press('ArrowRight');
      await expect(rack(screen)).toBeVisible();
      await press();
      await expect(rack(screen)).toHaveCount(0);
    },
  },
};
