import type { Page } from '@playwright/test';
import { violations, WCAG } from '../violations.ts';
import { expect, test } from './gallery.ts';

/** The parts alone are held to what is good practice, too. */
async function faultsOf(page: Page): Promise<string[]> {
  return await violations(page, [...WCAG, 'best-practice']);
}

test.describe('CR-K8: axe finds nothing', () => {
  for (const look of ['theme=light', 'theme=dark', 'theme=light&text=32&tiles=large']) {
    test(`in the look ${look}`, async ({ open }) => {
      expect(await faultsOf(await open(look))).toEqual([]);
    });
  }

  test('with tiles chosen and given, and the rack empty', async ({ open }) => {
    const page = await open();
    await page.locator('wr-rack wr-tile').nth(2).click();
    await page.locator('wr-rack wr-tile').nth(4).focus();
    await page.keyboard.press('Enter');
    await page.locator('wr-rack wr-tile').nth(5).click();
    expect(await faultsOf(page)).toEqual([]);
    await page.locator('wr-rack').evaluate((rack) => Object.assign(rack, { tiles: [] }));
    expect(await faultsOf(page)).toEqual([]);
  });

  test('with a dialog open, and with words of an explanation open', async ({ open }) => {
    const page = await open();
    await page.locator('wr-explain').click();
    expect(await faultsOf(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.locator('#ask').click();
    expect(await faultsOf(page)).toEqual([]);
  });
});

/** Every box that can have the focus or be clicked, through all shadow roots. */
function targets(page: Page): Promise<{ name: string; width: number; height: number }[]> {
  return page.evaluate(() => {
    const found: { name: string; width: number; height: number }[] = [];
    const look = (root: ParentNode): void => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (element.shadowRoot) look(element.shadowRoot);
        if (!element.matches('button, a[href], input, summary, textarea, [role="option"]')) continue;
        const { width, height } = element.getBoundingClientRect();
        const words = element.getAttribute('aria-label') ?? element.textContent?.trim() ?? '';
        if (width > 0) found.push({ name: `${element.tagName} ${words}`, width, height });
      }
    };
    look(document);
    return found;
  });
}

test.describe('CR-W2: sizes', () => {
  for (const look of ['', 'text=16', 'text=32&tiles=large']) {
    test(`every target is 44 px or more each way ${look && `with ${look}`}`, async ({ open }) => {
      const all = await targets(await open(look));
      expect(all.length).toBeGreaterThan(80);
      expect(all.filter(({ width, height }) => width < 43.9 || height < 43.9)).toEqual([]);
    });
  }

  test('CR-O2: tiles are 60 by 80, large 76 by 101; the main button is 48 px high and has words', async ({ open }) => {
    const page = await open();
    expect(await page.locator('wr-rack wr-tile').first().boundingBox()).toMatchObject({ width: 60, height: 80 });
    const main = await page.locator('wr-button[look="main"] button').first().boundingBox();
    expect(main?.height).toBeGreaterThanOrEqual(48);
    const wordless = await page
      .locator('wr-button')
      .evaluateAll((all) => all.filter((each) => !each.textContent?.trim()));
    expect(wordless).toEqual([]);
    await open('tiles=large');
    const large = await page.locator('wr-rack wr-tile').first().boundingBox();
    expect([large?.width, Math.round(large?.height ?? 0)]).toEqual([76, 101]);
  });

  test('tiles of the rack are 8 px apart', async ({ open }) => {
    const page = await open();
    const one = await page.locator('wr-rack wr-tile').nth(0).boundingBox();
    const next = await page.locator('wr-rack wr-tile').nth(1).boundingBox();
    expect((next?.x ?? 0) - (one?.x ?? 0) - 60).toBe(8);
  });
});

test.describe('CR-W6: no sideways scroll and nothing cut', () => {
  for (const [width, look] of [
    [320, ''],
    [390, 'text=32'],
    [1280, 'text=32&tiles=large'],
    [320, 'theme=dark&tiles=large&text=24'],
  ] as const) {
    test(`at ${width} px ${look}`, async ({ open, page }) => {
      await page.setViewportSize({ width, height: 800 });
      await open(look);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    });
  }

  test('with the text spacing of WCAG 1.4.12', async ({ open, page }) => {
    await page.setViewportSize({ width: 320, height: 800 });
    await open();
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(
        '* { line-height: 1.5; letter-spacing: 0.12em; word-spacing: 0.16em } p { margin-bottom: 2em }',
      );
      const wear = (root: Document | ShadowRoot): void => {
        root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
        for (const element of root.querySelectorAll('*')) if (element.shadowRoot) wear(element.shadowRoot);
      };
      wear(document);
    });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    const cut = await page
      .locator('wr-button')
      .evaluateAll((all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1).length);
    expect(cut).toBe(0);
  });
});

test('CR-W8: the focus ring is 3 px, in forced colours too', async ({ open, page }) => {
  for (const forcedColors of ['none', 'active'] as const) {
    await page.emulateMedia({ forcedColors });
    await open();
    await page.keyboard.press('Tab');
    const ring = await page
      .locator('wr-places a')
      .first()
      .evaluate((link) => {
        const { outlineStyle, outlineWidth } = getComputedStyle(link);
        return `${outlineStyle} ${outlineWidth}`;
      });
    expect(ring).toBe('solid 3px');
  }
});

test('CR-W8: nothing moves for those who ask for no motion', async ({ open, page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open();
  const slow = await page
    .locator('wr-rack wr-tile')
    .first()
    .evaluate((each) => getComputedStyle(each).transitionDuration);
  expect(slow).toBe('0s');
});

test.describe('typing tiles', () => {
  test('the tiles appear as they are typed, waiting digits are no fault, Enter gives them', async ({ open, page }) => {
    await open();
    const entry = page.locator('wr-entry').first();
    await entry.locator('input').click();
    await page.keyboard.type('ff n 0 12');
    await expect(entry.locator('.preview wr-tile')).toHaveCount(4);
    await expect(entry.locator('.trouble')).toHaveText('12 … now b, c or d');
    await expect(entry.locator('input')).toHaveAttribute('aria-invalid', 'false');
    await page.keyboard.type('b 4578c 123d');
    await expect(entry.locator('.count')).toHaveText('13 of 13 or 14 tiles');
    await page.keyboard.press('Enter');
    await expect(page.locator('body')).toHaveAttribute('data-entered', '13');
  });

  test('Enter with too few says so, gives nothing, and keeps what was typed', async ({ open, page }) => {
    await open();
    const entry = page.locator('wr-entry').first();
    await entry.locator('input').fill('ff 12b');
    await entry.locator('input').press('Enter');
    await expect(entry.locator('.trouble')).toHaveText("That's 4 tiles. It takes 13 or 14.");
    await expect(entry.locator('input')).toHaveValue('ff 12b');
    await expect(page.locator('body')).not.toHaveAttribute('data-entered');
  });

  test('the wedge stands under the character that is wrong, also when the text is scrolled', async ({ open, page }) => {
    await open();
    const entry = page.locator('wr-entry').first();
    const offset = async (): Promise<number> =>
      entry.evaluate((each) => {
        const pointer = each.shadowRoot?.querySelector('.pointer')?.getBoundingClientRect();
        const input = each.shadowRoot?.querySelector('input');
        if (!pointer || !input) return Number.NaN;
        const probe = document.createElement('canvas').getContext('2d');
        if (!probe) return Number.NaN;
        const { fontSize, fontFamily } = getComputedStyle(input);
        probe.font = `${fontSize} ${fontFamily}`;
        const upTo = probe.measureText(input.value.slice(0, input.value.indexOf('q'))).width;
        return pointer.left - (input.getBoundingClientRect().left + 14 + upTo - input.scrollLeft);
      });
    await entry.locator('input').fill('ff 12q');
    expect(Math.abs(await offset())).toBeLessThan(1.5);
    await entry.locator('input').fill(`${' '.repeat(200)}q`);
    await entry.locator('input').press('End');
    expect(Math.abs(await offset())).toBeLessThan(4);
  });
});

test.describe('the tray of all tiles', () => {
  test('one click picks a tile; one that can’t be picked says why', async ({ open, page }) => {
    await open();
    const tray = page.locator('wr-tray');
    await tray.getByRole('button', { name: 'two bam' }).click();
    await expect(page.locator('body')).toHaveAttribute('data-picked', '10');
    await tray.getByRole('button', { name: 'one bam' }).click({ force: true });
    await expect(tray.locator('.refusal')).toHaveText('One bam: none left.');
    await tray.getByRole('button', { name: 'joker' }).click({ force: true });
    await expect(tray.locator('.refusal')).toHaveText('Joker: a joker is never passed.');
    await expect(page.locator('body')).toHaveAttribute('data-picked', '10');
  });

  test('it is one tab stop; arrows go by rows and columns; Enter picks', async ({ open, page }) => {
    await open();
    const name = (): Promise<string | null | undefined> =>
      page.evaluate(() => document.activeElement?.shadowRoot?.activeElement?.getAttribute('aria-label'));
    await page.locator('wr-tray').evaluate((each) => (each as HTMLElement).focus());
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowDown');
    expect(await name()).toContain('two crak');
    await page.keyboard.press('End');
    expect(await name()).toContain('white dragon');
    await page.keyboard.press('ArrowUp');
    expect(await name()).toContain('nine dot');
    await page.keyboard.press('Enter');
    await expect(page.locator('body')).toHaveAttribute('data-picked', '35');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.tagName)).not.toBe('WR-TRAY');
  });
});

test.describe('the tray of a pass', () => {
  test('arrows, Home and End move, Delete takes one back, Escape all, a click one', async ({ open, page }) => {
    await open();
    const slots = page.locator('wr-slots').first();
    const held = slots.locator('[data-slot]');
    for (const id of ['t3', 't4', 't9']) await page.locator(`wr-rack [data-id="${id}"]`).click();
    await page.locator('wr-button', { hasText: 'Give' }).first().click();
    await expect(held).toHaveCount(3);
    await slots.evaluate((each) => (each as HTMLElement).focus());
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Delete');
    await expect(slots.locator('[data-slot="t4"]')).toHaveCount(0);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('WR-SLOTS');
    await held.first().click();
    await expect(held).toHaveCount(1);
    await page.keyboard.press('Escape');
    await expect(held).toHaveCount(0);
  });

  test('a tile can be dragged back to the rack', async ({ open, page }) => {
    await open();
    await page.locator('wr-rack [data-id="t3"]').focus();
    await page.keyboard.press('Enter');
    const from = await page.locator('wr-slots [data-slot="t3"]').boundingBox();
    const rack = await page.locator('wr-rack').boundingBox();
    await page.mouse.move((from?.x ?? 0) + 30, (from?.y ?? 0) + 40);
    await page.mouse.down();
    await page.mouse.move((rack?.x ?? 0) + 300, (rack?.y ?? 0) + 50, { steps: 6 });
    await page.mouse.up();
    await expect(page.locator('wr-rack [data-id="t3"]')).toBeVisible();
  });

  test('tiles handed on unseen lie face down', async ({ open, page }) => {
    await open();
    const blind = page.locator('wr-slots').nth(1).getByRole('option');
    await expect(blind).toHaveText(['1', '', '']);
    await expect(blind.nth(2)).toHaveAttribute('aria-label', 'a blind tile, place 3 of 3');
  });
});

test('a hand is told in words: what is here, by joker, missing', async ({ open, page }) => {
  await open();
  await expect(page.locator('wr-hand').first().getByRole('img')).toHaveAttribute(
    'aria-label',
    'Two Shores, 3rd line: pair of flowers, here; kong of four bams, 2 here and 1 by joker and 1 missing; kong of five bams, 3 here and 1 missing; kong of six bams, 1 here and 1 by joker and 2 missing',
  );
});

test('the lean is a bar, a legend and a table of the same shares', async ({ open, page }) => {
  await open();
  const lean = page.locator('wr-lean');
  await expect(lean.locator('.bar rect')).toHaveCount(8);
  await lean.locator('summary').click();
  await expect(lean.locator('td')).toHaveText(['41 %', '24 %', '14 %', '9 %', '6 %', '4 %', '2 %', 'under 1 %']);
  await expect(lean.locator('li')).toHaveCount(8);
});

test('a dialog takes the focus, keeps it, closes by Escape and gives it back', async ({ open, page }) => {
  await open();
  await page.locator('#ask').click();
  const dialog = page.getByRole('dialog', { name: 'Stop before the second round?' });
  await expect(dialog).toBeVisible();
  for (let turn = 0; turn < 5; turn += 1) await page.keyboard.press('Tab');
  expect(
    await page.evaluate(
      () => document.activeElement?.closest('wr-dialog') !== null || document.activeElement === document.body,
    ),
  ).toBe(true);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('ask');
});

test('a number explains itself in plain words, by click and by key, and closes by Escape', async ({ open, page }) => {
  await open();
  const words = page.locator('wr-explain').getByRole('dialog', { name: 'Away' });
  await expect(words).toBeHidden();
  await page.locator('wr-explain').click();
  await expect(words).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(words).toBeHidden();
  await page.keyboard.press('Enter');
  await expect(words).toBeVisible();
});

test('a choice, tabs and a toolbar go by arrow keys; each is one tab stop', async ({ open, page }) => {
  await open();
  const choice = page.locator('wr-choice');
  await choice.getByRole('radio', { name: 'South' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(choice.getByRole('radio', { name: 'West' })).toBeChecked();

  const tabs = page.locator('wr-tabs');
  await tabs.getByRole('tab', { name: 'Hands' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(tabs.getByRole('tab', { name: 'Tiles' })).toHaveAttribute('aria-selected', 'true');
  await expect(page.getByText('Each tile, kept or spare.')).toBeVisible();
  await expect(page.getByText('The hands, best reach first.')).toBeHidden();
  await page.keyboard.press('ArrowRight');
  await expect(tabs.getByRole('tab', { name: 'Hands' })).toHaveAttribute('aria-selected', 'true');

  const tools = page.locator('wr-toolbar').last();
  await tools.locator('wr-button').first().locator('button').focus();
  await page.keyboard.press('End');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Arrange');
  // Both go round at their ends.
  await page.keyboard.press('ArrowRight');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Undo');
  await page.keyboard.press('ArrowLeft');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Arrange');
  await page.keyboard.press('Shift+Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('wr-toolbar'))).toBeNull();
});

test('a button that is off says why and does nothing', async ({ open, page }) => {
  await open();
  const give = page.locator('wr-button[reason]');
  await give.evaluate((each) => {
    each.addEventListener('click', () => document.body.setAttribute('data-clicked', 'yes'));
  });
  await give.click();
  await give.locator('button').focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('body')).not.toHaveAttribute('data-clicked');
  await expect(give.getByRole('button')).toHaveAttribute('aria-disabled', 'true');
  await expect(give).toContainText('Choose three tiles first.');
});

test('a notice stays until it is closed, and its button tells', async ({ open, page }) => {
  await open();
  const notice = page.locator('wr-notice').first();
  await notice.evaluate((each) => {
    for (const type of ['notice-action', 'notice-closed']) {
      each.addEventListener(type, () => document.body.setAttribute(`data-${type}`, 'yes'));
    }
  });
  await notice.getByRole('button', { name: 'Bring it back' }).click();
  await expect(page.locator('body')).toHaveAttribute('data-notice-action', 'yes');
  await notice.getByRole('button', { name: 'Close' }).click();
  await expect(page.locator('body')).toHaveAttribute('data-notice-closed', 'yes');
});
