import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { PLACES } from '../../renderer/shell/places.ts';
import { tooSmall, tooWide } from './measure-page.ts';
import { expect, test, type Windrow } from './windrow.ts';

/** WCAG 2.2 A and AA, as K8 names them. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const DEAL = 'J FF N 0 13b 4578c 22d';

/** A state of the window, and the way to it. */
interface Screen {
  readonly name: string;
  readonly reach: (windrow: Windrow) => Promise<void>;
}

async function give(windrow: Windrow): Promise<void> {
  const { page } = windrow;
  for (let tile = 0; tile < 3; tile += 1) {
    await page.locator('wr-rack [role=option]').nth(3).click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
}

async function pass(windrow: Windrow, typed: string): Promise<void> {
  await give(windrow);
  await windrow.page.getByLabel('Type it, or click it').fill(typed);
  await windrow.page.keyboard.press('Enter');
  await expect(windrow.page.locator('wr-give-panel')).toBeVisible();
}

async function firstRound(windrow: Windrow): Promise<void> {
  await windrow.deal(DEAL);
  for (const typed of ['9d 3c 5d', '6c 2d e', '6c 5c 1d']) await pass(windrow, typed);
}

const SCREENS: readonly Screen[] = [
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
    name: 'the reading by section, a number explained',
    reach: async (windrow) => {
      await windrow.deal(DEAL);
      await windrow.page.getByRole('button', { name: 'By section' }).click();
      await windrow.page
        .getByRole('button', { name: /explain Reach/ })
        .first()
        .click();
    },
  },
  {
    name: 'tiles to take in',
    reach: async (windrow) => {
      await windrow.deal(DEAL);
      await give(windrow);
    },
  },
  { name: 'the second round', reach: firstRound },
  {
    name: 'the courtesy',
    reach: async (windrow) => {
      await firstRound(windrow);
      await windrow.page.getByRole('button', { name: 'No second round' }).click();
    },
  },
  {
    name: 'the end of the exchange, its passes shown',
    reach: async (windrow) => {
      await firstRound(windrow);
      await windrow.page.getByRole('button', { name: 'No second round' }).click();
      await windrow.page.getByRole('button', { name: 'No courtesy pass' }).click();
      await windrow.page.getByText('Passes so far').click();
    },
  },
  {
    name: 'the question about a new game',
    reach: async (windrow) => {
      await windrow.deal(DEAL);
      await windrow.page.getByRole('button', { name: 'New game' }).click();
    },
  },
  { name: 'the Card with the demo card', reach: async (windrow) => await windrow.go('Card') },
  {
    name: 'a Journal with games',
    reach: async (windrow) => {
      await windrow.deal(DEAL);
      await windrow.saved();
      await windrow.go('Journal');
    },
  },
  ...PLACES.map(({ title }) => ({
    name: `the place ${title}, just opened`,
    reach: async (windrow: Windrow) => await windrow.go(title),
  })),
];

/** Waits until background work and short motions have ended. */
async function settled(page: Page): Promise<void> {
  await expect(page.locator('[aria-busy=true]')).toHaveCount(0);
  await page.waitForTimeout(200);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`K8: no axe violation, ${colorScheme}`, () => {
    test.use({ colorScheme });
    for (const { name, reach } of SCREENS) {
      test(name, async ({ windrow, page }) => {
        await windrow.open();
        await reach(windrow);
        await settled(page);
        const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual([]);
      });
    }
  });
}

for (const { width, height } of [
  { width: 1440, height: 900 },
  { width: 1024, height: 700 },
  { width: 390, height: 800 },
  { width: 320, height: 640 },
]) {
  for (const textSize of [18, 32]) {
    test(`W6: nothing is wider than ${width} px with text of ${textSize} px`, async ({ windrow, page }) => {
      await page.setViewportSize({ width, height });
      await windrow.open();
      for (let size = 18; size < textSize; size += 2)
        await page.getByRole('button', { name: 'A+, larger text' }).click();
      expect(await tooWide(page), 'the empty Table').toEqual([]);
      await windrow.deal(DEAL);
      await settled(page);
      expect(await tooWide(page), 'a pass to give').toEqual([]);
      await give(windrow);
      await settled(page);
      expect(await tooWide(page), 'tiles to take in').toEqual([]);
      for (const { title } of PLACES) {
        await windrow.go(title);
        await settled(page);
        expect(await tooWide(page), title).toEqual([]);
      }
    });
  }
}

test('W2: everything that can be pressed is at least 44 px in both ways, tiles of the rack 48 by 64', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await settled(page);
  expect(await tooSmall(page)).toEqual([]);
  await give(windrow);
  await settled(page);
  expect(await tooSmall(page)).toEqual([]);
  for (const { title } of PLACES) {
    await windrow.go(title);
    await settled(page);
    expect(await tooSmall(page), title).toEqual([]);
  }
});

test('K4: from the loaded window to the first tile of the rack at most 5 presses of Tab', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await windrow.saved();
  await windrow.restart();
  await expect(page.locator('wr-rack [role=option]').first()).toBeVisible();
  let presses = 0;
  const onTile = async (): Promise<boolean> => (await page.locator('wr-rack [role=option]:focus').count()) > 0;
  while (!(await onTile()) && presses < 10) {
    await page.keyboard.press('Tab');
    presses += 1;
  }
  expect(presses).toBeLessThanOrEqual(5);
});

test('K3: the focus is never lost when a step ends', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await expect(page.locator('wr-rack [role=option]:focus')).toHaveCount(1);
  await give(windrow);
  await expect(page.getByLabel('Type it, or click it')).toBeFocused();
  await page.keyboard.type('9d 3c 5d');
  await page.keyboard.press('Enter');
  await expect(page.locator('wr-rack [role=option]:focus')).toHaveCount(1);
});

test('P8, E3: nothing is asked of any other host, and the content policy is never broken', async ({
  windrow,
  misdeeds,
}) => {
  await windrow.open();
  await firstRound(windrow);
  for (const place of PLACES) await windrow.go(place.title);
  expect(misdeeds.foreign).toEqual([]);
  expect(misdeeds.policy).toEqual([]);
});
