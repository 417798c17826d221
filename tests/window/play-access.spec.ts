import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { choose, field, straightToPlay, type } from './play.ts';
import { expect, test, type Windrow } from './windrow.ts';

/** WCAG 2.2 A and AA, as K8 names them. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const DEAL = 'J FF N 0 13b 4578c 22d';

test.describe.configure({ timeout: 120_000 });

interface Screen {
  readonly name: string;
  readonly reach: (windrow: Windrow) => Promise<void>;
}

async function askForResult({ page }: Windrow): Promise<void> {
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Who won?', 'You');
  await choose(page, 'How?', 'By discard');
  await choose(page, 'Whose discard?', 'Left');
  await page.getByLabel('Which hand?').selectOption('stairs-1');
  await expect(page.getByRole('table', { name: 'Who pays what' })).toBeVisible();
}

const SCREENS: readonly Screen[] = [
  { name: 'the beginning of play', reach: async (windrow) => await straightToPlay(windrow, DEAL) },
  {
    name: 'a call to weigh, all that is unseen, the discards',
    reach: async (windrow) => {
      const { page } = windrow;
      await straightToPlay(windrow, DEAL);
      await type(page, '2d');
      await expect(page.getByText(/^Call the two dot/)).toBeVisible();
      await page.getByText(/^Still unseen/).click();
      await page.getByText(/^Discards on the table/).click();
    },
  },
  {
    name: 'a discard to weigh, a cost explained, a fault beside the field',
    reach: async (windrow) => {
      const { page } = windrow;
      await straightToPlay(windrow, DEAL);
      await type(page, '9c 5d 9d');
      await page
        .getByRole('button', { name: /explain Why/ })
        .first()
        .click();
    },
  },
  {
    name: 'a group being laid open, and one that lies open with its joker',
    reach: async (windrow) => {
      const { page } = windrow;
      await straightToPlay(windrow, DEAL);
      await type(page, '9c');
      await choose(page, 'What happened?', 'A group laid open');
      await choose(page, 'Whose tile?', 'Across');
      await type(page, '9c 9c J');
      await expect(field(page)).toBeFocused();
      await choose(page, 'What happened?', 'A group laid open');
    },
  },
  {
    name: 'the result being entered',
    reach: async (windrow) => {
      await straightToPlay(windrow, DEAL);
      await askForResult(windrow);
    },
  },
  {
    name: 'the result and the evening, names and rules shown',
    reach: async (windrow) => {
      const { page } = windrow;
      await straightToPlay(windrow, DEAL);
      await askForResult(windrow);
      await page.getByRole('button', { name: 'Enter the result' }).click();
      await page.getByText('Names, if you like').click();
      await page.getByText('Rules of payment').click();
    },
  },
  {
    name: 'rules of payment with a fault, and the question about names',
    reach: async (windrow) => {
      const { page } = windrow;
      await windrow.go('Settings');
      await choose(page, 'What is paid', 'A fixed stake');
      await page.getByLabel('Stake of a win').fill('much');
      await page.getByLabel('Stake of a win').blur();
      await expect(page.getByText('Write a number from 0 to 1000000.')).toBeVisible();
      await page.getByRole('button', { name: 'Remove all names' }).click();
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
        await windrow.open();
        await reach(windrow);
        await settled(page);
        const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual([]);
      });
    }
  });
}

/** What is wider than the window, or smaller than it should be to be pressed. */
async function misfits(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const found: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) visit(element.shadowRoot);
        const { right, width, height } = element.getBoundingClientRect();
        const unseen = getComputedStyle(element).clipPath !== 'none' || element.matches('.skip');
        const name = `${element.localName}.${element.className} "${element.textContent?.trim().slice(0, 30)}"`;
        if (!unseen && width > 0 && right > window.innerWidth + 1) found.push(`wide: ${name}`);
        const pressed = element.matches('button, a[href], input:not([type=radio]), select, summary');
        if (pressed && !unseen && width > 0 && (width < 43.5 || height < 43.5)) found.push(`small: ${name}`);
      }
    };
    visit(document);
    return found;
  });
}

for (const { width, height, textSize } of [
  { width: 1440, height: 900, textSize: 18 },
  { width: 1024, height: 700, textSize: 32 },
  { width: 390, height: 800, textSize: 18 },
  { width: 320, height: 640, textSize: 32 },
]) {
  test(`W2, W6: play, result and money fit ${width} px with text of ${textSize} px, targets 44 px`, async ({
    windrow,
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await windrow.open();
    for (let size = 18; size < textSize; size += 2) await page.getByRole('button', { name: 'A+, larger text' }).click();
    await straightToPlay(windrow, DEAL);
    await type(page, '2d');
    await page.getByText(/^Still unseen/).click();
    await settled(page);
    expect(await misfits(page), 'play').toEqual([]);
    await choose(page, 'What happened?', 'A group laid open');
    expect(await misfits(page), 'a group').toEqual([]);
    await askForResult(windrow);
    expect(await misfits(page), 'the result being entered').toEqual([]);
    await page.getByRole('button', { name: 'Enter the result' }).click();
    await page.getByText('Names, if you like').click();
    await page.getByText('Rules of payment').click();
    await settled(page);
    expect(await misfits(page), 'the result').toEqual([]);
    await windrow.go('Settings');
    expect(await misfits(page), 'the Settings').toEqual([]);
  });
}

test('O7: nothing moves where tiles are entered, from one to the next', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  const where = async (): Promise<number[]> =>
    await Promise.all(
      [field(page), page.getByRole('button', { name: /^one bam/ }), page.locator('wr-rack')].map(
        async (part) => (await part.boundingBox())?.y ?? 0,
      ),
    );
  const before = await where();
  for (const tile of ['9c', '8b', '8b', '2d', '2d', '4b']) {
    await type(page, tile);
    await settled(page);
    expect(await where()).toEqual(before);
  }
});
