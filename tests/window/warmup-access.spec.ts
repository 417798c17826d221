import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { answerProblem, clickTiles, dealByCode, newSheet, openWarmUp } from './warmup-helpers.ts';
import { expect, test, type Windrow } from './windrow.ts';

/** WCAG 2.2 A and AA, as K8 names them. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const CODE = formatDealCode({ seed: 3, tiles: 13, kind: 'any' });

async function settled(page: Page): Promise<void> {
  await expect(page.locator('[aria-busy=true]')).toHaveCount(0, { timeout: 30_000 });
  await page.waitForTimeout(200);
}

/** The states of the Warm-up, in the order in which one comes to them. */
const STATES: readonly { readonly name: string; readonly reach: (windrow: Windrow) => Promise<void> }[] = [
  {
    name: 'a code with a fault',
    reach: async ({ page }) => {
      await page.getByLabel('Code').fill('ABC');
      await page.getByRole('button', { name: 'Deal this one' }).click();
    },
  },
  { name: 'arranging', reach: async ({ page }) => await dealByCode(page, CODE) },
  {
    name: 'the answer',
    reach: async ({ page }) => {
      await answerProblem(page);
      await settled(page);
    },
  },
  {
    name: 'the next pass',
    reach: async ({ page }) => {
      await page.getByRole('button', { name: 'Play on to the next pass' }).click();
      await expect(page.getByRole('heading', { name: 'Which three do you give?' })).toBeVisible();
      await clickTiles(page, [12]);
    },
  },
  {
    name: 'guessing',
    reach: async ({ page }) => {
      await page.getByRole('tab', { name: 'Guess' }).click();
      await page.getByRole('button', { name: 'Deal', exact: true }).click();
      await expect(page.getByLabel('Which section leads?')).toBeVisible();
    },
  },
  {
    name: 'the truth',
    reach: async ({ page }) => {
      await page.getByLabel('How many tiles away is the nearest hand?').fill('7');
      await page.getByLabel('Which section leads?').selectOption('Stairs');
      await page.getByLabel('How many games of a hundred does the best hand win?').fill('6');
      for (const place of [2, 1, 0]) await page.getByRole('radio', { name: '70 %' }).nth(place).check({ force: true });
      await page.getByRole('button', { name: 'Show', exact: true }).click();
      await expect(page.locator('wr-lean')).toBeVisible();
    },
  },
  {
    name: 'progress',
    reach: async ({ page }) => await page.getByRole('tab', { name: 'Progress' }).click(),
  },
  {
    name: 'a sheet with answers of a class',
    reach: async ({ page }) => {
      await newSheet(page, 2);
      await page.getByText('Answers of the class').first().click();
      await expect(page.locator('wr-class-answers tbody tr').first()).toBeVisible({ timeout: 30_000 });
    },
  },
];

async function axeTrouble(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}

/** What is wider than the window, as its tags; tables may scroll in their own frame. */
async function tooWide(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const wide: string[] = [];
    const visit = (root: Document | ShadowRoot | Element): void => {
      for (const element of root.children) {
        if (element.matches('.scroll')) continue;
        const { right, width } = element.getBoundingClientRect();
        const unseen = getComputedStyle(element).clipPath !== 'none' || !element.checkVisibility();
        if (!unseen && width > 0 && right > window.innerWidth + 1)
          wide.push(`${element.localName}.${element.className}`);
        visit(element);
        if (element.shadowRoot) visit(element.shadowRoot);
      }
    };
    visit(document);
    return wide;
  });
}

/** Buttons, fields and tiles that are smaller than they should be. */
async function tooSmall(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const small: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) visit(element.shadowRoot);
        if (!element.matches('button, select, input:not([type=radio]), summary, [role=option]')) continue;
        const { width, height } = element.getBoundingClientRect();
        const seen = getComputedStyle(element).clipPath === 'none' && width > 0;
        if (seen && (width < 43.5 || height < 43.5)) small.push(`${element.localName} ${width}x${height}`);
      }
    };
    visit(document);
    return small;
  });
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`K8, W2: no axe violation and nothing too small in any state, ${colorScheme}`, async ({ windrow, page }) => {
    test.setTimeout(180_000);
    await page.emulateMedia({ colorScheme });
    await openWarmUp(windrow);
    for (const { name, reach } of STATES) {
      await reach(windrow);
      await settled(page);
      expect(await axeTrouble(page), name).toEqual([]);
      expect(await tooSmall(page), name).toEqual([]);
      if (process.env['WINDROW_SHOTS'] !== undefined)
        await page.screenshot({
          path: `${process.env['WINDROW_SHOTS']}/${colorScheme}-${name.replaceAll(' ', '-')}.png`,
        });
    }
    await page.getByRole('button', { name: 'Show on a screen' }).click();
    await page.getByRole('dialog').getByText('Problem 1 of 2').waitFor({ timeout: 30_000 });
    for (const _ of [1, 2]) await page.keyboard.press('ArrowRight');
    expect(await axeTrouble(page), 'on a screen').toEqual([]);
    if (process.env['WINDROW_SHOTS'] !== undefined)
      await page.screenshot({ path: `${process.env['WINDROW_SHOTS']}/${colorScheme}-project.png` });
  });
}

for (const [width, height, textSize] of [
  [1440, 900, 32],
  [390, 800, 18],
  [320, 640, 32],
] as const) {
  test(`W6: nothing is wider than ${width} px with text of ${textSize} px`, async ({ windrow, page }) => {
    test.setTimeout(180_000);
    await page.setViewportSize({ width, height });
    await openWarmUp(windrow);
    for (let size = 18; size < textSize; size += 2) await page.getByRole('button', { name: 'A+, larger text' }).click();
    for (const { name, reach } of STATES) {
      await reach(windrow);
      await settled(page);
      expect(await tooWide(page), name).toEqual([]);
      if (process.env['WINDROW_SHOTS'] !== undefined)
        await page.screenshot({ path: `${process.env['WINDROW_SHOTS']}/${width}-${name.replaceAll(' ', '-')}.png` });
    }
  });
}
