import type { Page } from '@playwright/test';
import { typedLine } from './card-evening.ts';
import { answerShown, clickTiles } from './warmup-helpers.ts';
import { expect, test, type Windrow } from './windrow.ts';

/** The screens that one sees for a main task, from the first one of the window on; CR-O4. */
const MOST_SCREENS = 3;

/** What a person went through: the clicks, and the screens by their headings and open tabs. */
interface Way {
  readonly clicks: number;
  readonly screens: readonly string[];
}

/**
 * Notes every click and the screen that it is made on. A screen is what has a heading of its own at the top, another tab
 * open under the same one, or an address of its own; a question that is asked over it is none.
 */
async function watchWay(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const way: { clicks: number; screens: string[] } = { clicks: 0, screens: [] };
    const shown = (root: Document | ShadowRoot): string[] =>
      [...root.querySelectorAll<HTMLElement>('*')].flatMap((element) => {
        if (element.localName === 'wr-dialog') return [];
        const isMark = element.matches('h1, [role=tab][aria-selected=true]') && element.checkVisibility();
        return [
          ...(isMark ? [element.textContent?.trim() ?? ''] : []),
          ...(element.shadowRoot ? shown(element.shadowRoot) : []),
        ];
      });
    const look = (): typeof way => {
      const [, , ...within] = location.hash.split('/');
      const screen = [...shown(document), ...within].join(', ');
      if (screen !== way.screens.at(-1)) way.screens.push(screen);
      return way;
    };
    addEventListener(
      'click',
      ({ isTrusted, detail }) => {
        if (!isTrusted || detail === 0) return;
        way.clicks += 1;
        look();
      },
      true,
    );
    Reflect.set(window, 'wayGone', look);
  });
}

/** The clicks made so far, and the screens that they were made on, with the one that is shown now. */
async function wayGone({ page }: Windrow): Promise<Way> {
  return await page.evaluate(() => Reflect.apply(Reflect.get(window, 'wayGone'), null, []));
}

async function click({ page }: Windrow, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name, ...(typeof name === 'string' && { exact: true }) }).click();
}

const TILES = ['joker', 'flower', 'flower', 'north wind', 'white dragon', 'one bam', 'three bam', 'four crak'];
const MORE = ['five crak', 'seven crak', 'eight crak', 'two dot', 'two dot'];

/** Points at the seat and at a rack of 13. */
async function point(windrow: Windrow): Promise<void> {
  await windrow.page.getByRole('radio', { name: 'South' }).check();
  for (const name of [...TILES, ...MORE]) await click(windrow, new RegExp(`^${name}`));
  await click(windrow, 'That is my deal');
}

/** The five main tasks, each with what shows that it is done. */
const TASKS: Readonly<Record<string, { readonly clicks: number; readonly work: (windrow: Windrow) => Promise<void> }>> =
  {
    'read a deal': {
      clicks: 15,
      work: async (windrow) => {
        await point(windrow);
        await expect(windrow.page.locator('wr-reading-panel wr-hand').first()).toBeVisible();
      },
    },
    'give a pass': {
      clicks: 16,
      work: async (windrow) => {
        await point(windrow);
        await click(windrow, 'Give 3 tiles');
        await expect(windrow.page.getByText('0 of 3 entered')).toBeVisible();
      },
    },
    'enter a line of one’s card': {
      clicks: 5,
      work: async (windrow) => {
        const { page } = windrow;
        await windrow.go('Card');
        await click(windrow, 'Start an empty card');
        await click(windrow, 'I understand');
        await page.getByLabel('Title of the card').fill('Thursday card');
        await page.getByLabel('Season').fill('2027');
        await click(windrow, 'Start the card');
        await page.getByLabel('Name of the new section').fill('Runs');
        await click(windrow, 'Add the section');
        await typedLine(page).fill('FF 1111a 2222b 3333c');
        await page.keyboard.press('Enter');
        await expect(page.locator('wr-card-lines .words').first()).toContainText('Kongs of 1s, 2s and 3s');
      },
    },
    'look back at a game': {
      clicks: 2,
      work: async (windrow) => {
        await windrow.go('Journal');
        await windrow.page
          .getByRole('link', { name: /^Look back at/ })
          .first()
          .click();
        await expect(windrow.page.locator('wr-story')).toBeVisible();
      },
    },
    'practise a problem': {
      clicks: 6,
      work: async (windrow) => {
        const { page } = windrow;
        await windrow.go('Warm-up');
        await click(windrow, 'Deal');
        await expect(page.getByRole('heading', { name: 'What would you give?' })).toBeFocused();
        const rack = await windrow.rack();
        const given = rack.flatMap((tile, at) => (tile === 'joker' ? [] : [at])).slice(0, 3);
        await clickTiles(page, given);
        await click(windrow, 'Show the answer');
        await answerShown(page);
      },
    },
  };

for (const [name, { clicks, work }] of Object.entries(TASKS)) {
  test(`CR-O4: a main task in at most three screens: ${name}`, async ({ windrow, page }) => {
    await watchWay(page);
    await windrow.open();
    if (name === 'look back at a game') {
      await windrow.deal('J FF N 0 13b 4578c 22d');
      await windrow.saved();
      await windrow.restart();
      await expect(page.locator('wr-rack [role=option]').first()).toBeVisible();
    }
    await work(windrow);
    const way = await wayGone(windrow);
    expect(way.screens.length, way.screens.join('; ')).toBeLessThanOrEqual(MOST_SCREENS);
    expect(way.clicks).toBe(clicks);
  });
}
