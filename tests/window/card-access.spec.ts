import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { addSection, copyDemo, startCard, view } from './card-evening.ts';
import { expect, test, type Windrow } from './windrow.ts';

test.use({ actionTimeout: 8000 });

/** WCAG 2.2 A and AA, as K8 names them. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface Screen {
  readonly name: string;
  readonly reach: (windrow: Windrow) => Promise<void>;
}

async function own(windrow: Windrow, tab: string): Promise<void> {
  await copyDemo(windrow);
  await view(windrow.page, tab);
}

/** The states of the Card place, and the way to each from its first view. */
const SCREENS: readonly Screen[] = [
  { name: 'the cards', reach: async () => {} },
  {
    name: 'the caution',
    reach: async ({ page }) => await page.getByRole('button', { name: 'Start an empty card' }).click(),
  },
  {
    name: 'the title of a new card, missing',
    reach: async ({ page }) => {
      await page.getByRole('button', { name: 'Start an empty card' }).click();
      await page.getByRole('button', { name: 'I understand' }).click();
      await page.getByRole('button', { name: 'Start the card' }).click();
      await expect(page.getByText('Give the card a title')).toBeVisible();
    },
  },
  { name: 'an empty card', reach: async (windrow) => await startCard(windrow) },
  {
    name: 'an empty section, and its quick entry',
    reach: async (windrow) => {
      await startCard(windrow);
      await addSection(windrow, 'Runs');
      await view(windrow.page, 'Quick entry');
    },
  },
  { name: 'the demo card, line by line', reach: async ({ page }) => await view(page, 'Lines') },
  { name: 'a line', reach: async (windrow) => await copyDemo(windrow) },
  {
    name: 'a line with a fault, ways to go on, a chosen group',
    reach: async (windrow) => {
      await copyDemo(windrow);
      await windrow.page.locator('wr-line-groups [role=option]').nth(1).click();
      await windrow.page.getByLabel('The line, typed').fill('FF 22q 333a DD');
      await expect(windrow.page.locator('wr-pattern-field [role=option]').first()).toBeVisible();
    },
  },
  {
    name: 'a section',
    reach: async (windrow) => {
      await copyDemo(windrow);
      await windrow.page.getByRole('button', { name: 'Echoes', exact: true }).click();
    },
  },
  {
    name: 'quick entry, writing in a cell',
    reach: async (windrow) => {
      await own(windrow, 'Quick entry');
      await windrow.page.locator('[role=gridcell]').first().click();
    },
  },
  {
    name: 'the checks and numbers',
    reach: async (windrow) => {
      await own(windrow, 'Check');
      await expect(windrow.page.getByRole('heading', { name: 'The card in numbers' })).toBeVisible();
    },
  },
  { name: 'proof-reading', reach: async (windrow) => await own(windrow, 'Proof-read') },
  {
    name: 'study, answered',
    reach: async ({ page }) => {
      await view(page, 'Study');
      await page.getByRole('button', { name: 'Begin' }).click();
      await page.locator('wr-card-study .choices wr-button').first().click();
    },
  },
  {
    name: 'a file with problems',
    reach: async ({ page }) => {
      await page.getByRole('button', { name: 'Open a card file' }).click();
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'I understand' }).click();
      const lines = [
        { id: 'a', pattern: 'FF 2?' },
        { id: 'b', pattern: 'FF 111a 222b 333a 444b' },
      ];
      const text = JSON.stringify({
        format: 'windrow.card',
        version: 1,
        title: 'T',
        sections: [{ name: 'Runs', lines }],
      });
      await (await chooser).setFiles({ name: 'a.card.json', mimeType: 'application/json', buffer: Buffer.from(text) });
      await expect(page.getByText('Nothing was changed on this computer.')).toBeVisible();
    },
  },
  {
    name: 'earlier versions',
    reach: async (windrow) => {
      await own(windrow, 'Cards');
      await windrow.page.getByRole('button', { name: 'Earlier versions' }).click();
    },
  },
];

async function settled(page: Page): Promise<void> {
  await expect(page.locator('[aria-busy=true]')).toHaveCount(0);
  await page.waitForTimeout(200);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`K8: no axe violation, ${colorScheme}`, () => {
    test.use({ colorScheme });
    for (const { name, reach } of SCREENS) {
      test(name, async ({ windrow, page }) => {
        await windrow.open('Card');
        await reach(windrow);
        await settled(page);
        const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual([]);
      });
    }
  });
}

/** What is wider than the window or scrolls sideways, and what is smaller than a finger wants. */
async function misfits(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const found: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) visit(element.shadowRoot);
        const { left, right, width, height } = element.getBoundingClientRect();
        const style = getComputedStyle(element);
        if (style.clipPath !== 'none' || width === 0) continue;
        const name = `${element.localName}.${element.className} "${element.textContent?.trim().slice(0, 30)}"`;
        const scrolls = element.scrollWidth > element.clientWidth + 1 && /auto|scroll/.test(style.overflowX);
        if (right > window.innerWidth + 1 || left < -1 || scrolls) found.push(`wide ${name}`);
        const pressed = 'button, a[href], select, summary, input:not([type=radio]), [role=option], [role=gridcell]';
        if (!element.matches(pressed) || element.matches('.skip')) continue;
        if (width < 43.5 || height < 43.5) found.push(`small ${name} ${Math.round(width)}x${Math.round(height)}`);
      }
    };
    visit(document);
    return found;
  });
}

for (const [width, height, textSize] of [
  [1440, 900, 18],
  [1024, 700, 32],
  [390, 800, 18],
  [320, 640, 32],
] as const) {
  test(`W2, W6: at ${width} px with text of ${textSize} px nothing is cut off, nothing too small to press`, async ({
    windrow,
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await windrow.open('Card');
    for (let size = 18; size < textSize; size += 2) await page.getByRole('button', { name: 'A+, larger text' }).click();
    expect(await misfits(page), 'Cards').toEqual([]);
    await copyDemo(windrow);
    await page.locator('wr-line-groups [role=option]').nth(1).click();
    await settled(page);
    expect(await misfits(page), 'Lines').toEqual([]);
    for (const tab of ['Quick entry', 'Check', 'Proof-read', 'Study']) {
      await view(page, tab);
      if (tab === 'Quick entry') await page.locator('[role=gridcell]').first().click();
      if (tab === 'Study') await page.getByRole('button', { name: 'Begin' }).click();
      await settled(page);
      expect(await misfits(page), tab).toEqual([]);
    }
  });
}

test('O7: adding groups moves none of the buttons that add them', async ({ windrow, page }) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Runs');
  await page.getByRole('button', { name: 'Add a line' }).click();
  const button = page.getByRole('button', { name: 'number 1', exact: true });
  const heading = page.getByRole('heading', { name: 'Line 1 of Runs' });
  const place = async (): Promise<number> =>
    ((await button.boundingBox())?.y ?? 0) - ((await heading.boundingBox())?.y ?? 0);
  await page.getByRole('radio', { name: '1 single' }).click();
  const before = await place();
  for (let group = 0; group < 14; group += 1) await button.click();
  await expect(page.getByText('14 of 14 tiles')).toBeVisible();
  expect(await place()).toBe(before);
});
