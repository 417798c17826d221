import type { Locator, Page } from '@playwright/test';
import fc from 'fast-check';
import { expect, test } from './gallery.ts';

/** The rack of the gallery: J F F N 0 | 4b 4b 5b 6b | 2c 5c 9d 9d, with the ids t0 to t12. */
const START = 't0 t1 t2 t3 t4 | t5 t6 t7 t8 | t9 t10 t11 t12';

function tile(page: Page, id: string): Locator {
  return page.locator(`wr-rack [data-id="${id}"]`);
}

/** The order on screen: `|` is a gap, `/` the second tier. */
async function order(page: Page): Promise<string> {
  const tiers = await page
    .locator('wr-rack .tier')
    .evaluateAll((all) =>
      all.map((tier) =>
        [...tier.querySelectorAll('.cell')]
          .map(
            (cell) =>
              (cell.classList.contains('gap') ? '| ' : '') + (cell.querySelector('wr-tile')?.dataset['id'] ?? ''),
          )
          .join(' '),
      ),
    );
  return tiers.join(' / ').trim();
}

/** The id of the tile with the focus, or a word for where else it is. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    if (active === null || active === document.body) return 'body';
    return (active instanceof HTMLElement && (active.dataset['id'] ?? active.dataset['slot'])) || active.className;
  });
}

async function press(page: Page, ...keys: string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

/** Gathers all that is announced from now on. */
async function listen(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const heard: string[] = [];
    Object.assign(window, { heard });
    new MutationObserver(() => {
      const words = document.querySelector('#announcer')?.textContent ?? '';
      if (words !== '') heard.push(words);
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  return () => page.evaluate(() => Reflect.get(window, 'heard') as string[]);
}

/** Drags with the mouse in steps; `release` false leaves the button down. */
async function drag(page: Page, from: Locator, to: { x: number; y: number }, release = true): Promise<void> {
  const box = await from.boundingBox();
  if (!box) throw new Error('nothing to drag');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.evaluate(() => new Promise(requestAnimationFrame));
  if (release) await page.mouse.up();
}

/** A point on the ledge before a tile. */
async function before(page: Page, id: string): Promise<{ x: number; y: number }> {
  const box = await tile(page, id).boundingBox();
  if (!box) throw new Error(`no tile ${id}`);
  return { x: box.x - 3, y: box.y + box.height + 14 };
}

test.describe('CR-K2: the keys of the rack', () => {
  test.beforeEach(async ({ open }) => {
    const page = await open();
    await tile(page, 't3').focus();
  });

  test('Right and Left go to the next tile and stop at the ends', async ({ page }) => {
    await press(page, 'ArrowRight');
    expect(await focused(page)).toBe('t4');
    await press(page, 'ArrowLeft', 'ArrowLeft');
    expect(await focused(page)).toBe('t2');
    await press(page, 'ArrowLeft', 'ArrowLeft', 'ArrowLeft');
    expect(await focused(page)).toBe('t0');
  });

  test('Home and End go to the first and the last tile', async ({ page }) => {
    await press(page, 'End');
    expect(await focused(page)).toBe('t12');
    await press(page, 'Home');
    expect(await focused(page)).toBe('t0');
  });

  test('Space chooses a tile and lets it go; a fourth is refused, in words', async ({ page }) => {
    const heard = await listen(page);
    await press(page, 'Space', 'ArrowRight', 'Space', 'ArrowRight', 'Space', 'ArrowRight', 'Space');
    await expect(page.locator('wr-rack [aria-selected="true"]')).toHaveCount(3);
    await expect.poll(heard).toEqual(['3 tiles are chosen already.']);
    await press(page, 'ArrowLeft', 'Space');
    await expect(page.locator('wr-rack [aria-selected="true"]')).toHaveCount(2);
  });

  test('Alt with an arrow moves the tile, over a gap too', async ({ page }) => {
    await press(page, 'Alt+ArrowLeft');
    expect(await order(page)).toBe('t0 t1 t3 t2 t4 | t5 t6 t7 t8 | t9 t10 t11 t12');
    await press(page, 'Alt+ArrowRight', 'Alt+ArrowRight', 'Alt+ArrowRight');
    expect(await order(page)).toBe('t0 t1 t2 t4 | t3 t5 t6 t7 t8 | t9 t10 t11 t12');
    expect(await focused(page)).toBe('t3');
  });

  test('Enter sends the chosen tiles to the tray, and the focus stays on the rack', async ({ page }) => {
    await press(page, 'Space', 'ArrowRight', 'Space', 'Enter');
    await expect(page.locator('gallery-table wr-slots').first().locator('[data-slot]')).toHaveCount(2);
    expect(await order(page)).toBe('t0 t1 t2 | t5 t6 t7 t8 | t9 t10 t11 t12');
    expect(await focused(page)).toBe('t5');
  });

  test('Enter with nothing chosen sends the tile with the focus', async ({ page }) => {
    await press(page, 'Enter');
    await expect(page.locator('wr-slots [data-slot="t3"]')).toBeVisible();
  });

  test('Delete takes the last one given back', async ({ page }) => {
    await press(page, 'Enter', 'Delete');
    await expect(page.locator('wr-slots [data-slot]')).toHaveCount(0);
    await expect(tile(page, 't3')).toBeVisible();
  });

  test('Escape lets all chosen tiles go', async ({ page }) => {
    await press(page, 'Space', 'ArrowRight', 'Space', 'Escape');
    await expect(page.locator('wr-rack [aria-selected="true"]')).toHaveCount(0);
  });

  test('a letter or digit jumps to the next tile whose name starts so, and around', async ({ page }) => {
    await press(page, '4');
    expect(await focused(page)).toBe('t5');
    await press(page, '4');
    expect(await focused(page)).toBe('t6');
    await press(page, 'd');
    expect(await focused(page)).toBe('t11');
    await press(page, 'j');
    expect(await focused(page)).toBe('t0');
    await press(page, 'w');
    expect(await focused(page)).toBe('t4');
  });

  test('a comma makes a gap before the tile and closes it', async ({ page }) => {
    await press(page, ',');
    expect(await order(page)).toBe('t0 t1 t2 | t3 t4 | t5 t6 t7 t8 | t9 t10 t11 t12');
    await press(page, ',');
    expect(await order(page)).toBe(START);
  });

  test('with two tiers, Alt with Up and Down changes the tier, and Up and Down go between', async ({ page }) => {
    await page.locator('wr-button', { hasText: 'Two tiers' }).click();
    await tile(page, 't3').focus();
    await press(page, 'Alt+ArrowDown');
    expect(await order(page)).toBe('t0 t1 t2 t4 | t5 t6 t7 t8 | t9 t10 t11 t12 / t3');
    expect(await focused(page)).toBe('t3');
    await press(page, 'ArrowUp');
    expect(await focused(page)).toBe('t0');
    await press(page, 'ArrowDown', 'Alt+ArrowUp');
    expect(await order(page)).toBe('t0 t1 t2 t4 | t5 t6 t7 t8 | t9 t10 t11 t12 t3 /');
  });

  test('CR-K4: rack, tray and tools are one tab stop each', async ({ page }) => {
    await press(page, 'Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Gap');
    await press(page, 'Shift+Tab', 'Shift+Tab');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('WR-SLOTS');
    await press(page, 'Tab');
    expect(await focused(page)).toBe('t3');
  });
});

test('CR-W1: a drag, two clicks and the keys end the same', async ({ open }) => {
  const ends: string[] = [];

  let page = await open();
  await drag(page, tile(page, 't8'), await before(page, 't2'));
  ends.push(await order(page));

  page = await open();
  await tile(page, 't8').click();
  const place = await before(page, 't2');
  await page.mouse.click(place.x, place.y);
  ends.push(await order(page));

  page = await open();
  await tile(page, 't8').focus();
  await press(page, ...Array<string>(7).fill('Alt+ArrowLeft'));
  ends.push(await order(page));

  const expected = 't0 t1 t8 t2 t3 t4 | t5 t6 t7 | t9 t10 t11 t12';
  expect(ends).toEqual([expected, expected, expected]);
});

test('CR-W1: giving by a drag, by clicks and by keys ends the same', async ({ open }) => {
  const given = (page: Page): Promise<string[]> =>
    page
      .locator('wr-slots [data-slot]')
      .evaluateAll((all) => all.map((each) => (each as HTMLElement).dataset['slot'] ?? ''));

  let page = await open();
  const tray = await page.locator('wr-slots').first().boundingBox();
  await drag(page, tile(page, 't4'), { x: (tray?.x ?? 0) + 40, y: (tray?.y ?? 0) + 40 });
  expect(await given(page)).toEqual(['t4']);

  page = await open();
  await tile(page, 't4').click();
  await page.locator('wr-button', { hasText: 'Give' }).first().click();
  expect(await given(page)).toEqual(['t4']);

  page = await open();
  await tile(page, 't4').focus();
  await press(page, 'Enter');
  expect(await given(page)).toEqual(['t4']);
});

test('a drag by touch moves the tile and does not scroll the page', async ({ open, page }) => {
  await open();
  const from = await tile(page, 't8').boundingBox();
  const to = await before(page, 't2');
  if (!from) throw new Error('no tile');
  const finger = await page.context().newCDPSession(page);
  const at = (x: number, y: number): { x: number; y: number }[] => [{ x, y }];
  const start = { x: from.x + 30, y: from.y + 40 };
  await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(start.x, start.y) });
  for (let part = 1; part <= 8; part += 1) {
    const x = start.x + ((to.x - start.x) * part) / 8;
    const y = start.y + ((to.y - start.y) * part) / 8;
    await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(x, y) });
  }
  await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect.poll(() => order(page)).toBe('t0 t1 t8 t2 t3 t4 | t5 t6 t7 | t9 t10 t11 t12');
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
});

test('several chosen tiles are put down together, and a drop far right makes a group of its own', async ({ open }) => {
  const page = await open();
  await tile(page, 't12').click();
  await tile(page, 't1').click();
  const place = await before(page, 't6');
  await page.mouse.click(place.x, place.y);
  expect(await order(page)).toBe('t0 t2 t3 t4 | t5 t1 t12 t6 t7 t8 | t9 t10 t11');
  const last = await tile(page, 't11').boundingBox();
  await drag(page, tile(page, 't5'), { x: (last?.x ?? 0) + 170, y: (last?.y ?? 0) + 60 });
  expect(await order(page)).toBe('t0 t2 t3 t4 | t1 t12 t6 t7 t8 | t9 t10 t11 | t5');
});

test('CR-W7: Escape, a lost pointer and a drop beside restore; the click that follows does nothing', async ({
  open,
}) => {
  const page = await open();
  const chosen = page.locator('wr-rack [aria-selected="true"]');

  await drag(page, tile(page, 't8'), await before(page, 't2'), false);
  await press(page, 'Escape');
  await page.mouse.up();
  expect(await order(page)).toBe(START);

  await drag(page, tile(page, 't8'), await before(page, 't2'), false);
  await page.evaluate(() => window.dispatchEvent(new PointerEvent('pointercancel')));
  await page.mouse.up();
  expect(await order(page)).toBe(START);

  await drag(page, tile(page, 't8'), { x: 700, y: 60 });
  expect(await order(page)).toBe(START);
  await expect(chosen).toHaveCount(0);
  await expect(page.locator('wr-rack .dragging, wr-rack .hole')).toHaveCount(0);
});

test('CR-W7: a press alone does nothing, and a shaking hand still clicks', async ({ open }) => {
  const page = await open();
  const box = await tile(page, 't3').boundingBox();
  await page.mouse.move((box?.x ?? 0) + 30, (box?.y ?? 0) + 40);
  await page.mouse.down();
  await expect(page.locator('wr-rack [aria-selected="true"]')).toHaveCount(0);
  await page.mouse.move((box?.x ?? 0) + 34, (box?.y ?? 0) + 42);
  await page.mouse.up();
  await expect(tile(page, 't3')).toHaveAttribute('aria-selected', 'true');
  expect(await order(page)).toBe(START);
});

test.describe('CR-K5: what is announced', () => {
  test('a move by key is said once, with the tile and its place, within half a second', async ({ open }) => {
    const page = await open();
    const heard = await listen(page);
    await tile(page, 't7').focus();
    await press(page, 'Alt+ArrowLeft');
    await page.waitForTimeout(500);
    expect(await heard()).toEqual(['Five bam, place 7 of 13, group 2 of 3.']);
  });

  test('a drag says only its end', async ({ open }) => {
    const page = await open();
    const heard = await listen(page);
    await drag(page, tile(page, 't7'), await before(page, 't1'));
    await page.waitForTimeout(500);
    expect(await heard()).toEqual(['Five bam, place 2 of 13, group 1 of 3.']);
  });

  test('the tray says what lies in it, once', async ({ open }) => {
    const page = await open();
    const heard = await listen(page);
    await tile(page, 't7').focus();
    await press(page, 'Enter');
    await page.waitForTimeout(500);
    expect(await heard()).toEqual(['Tiles to give: five bam; 2 places free.']);
  });

  test('a tile is called by its name, what it is to the reading, and why', async ({ open }) => {
    const page = await open();
    await expect(tile(page, 't11')).toHaveAttribute(
      'aria-label',
      'nine dot, wanted twice, Two Shores and Still Water both want it',
    );
    await expect(tile(page, 't7')).toHaveAttribute('aria-label', 'five bam, kept');
  });
});

test('CR-K3: after any keys the focus is on the tile that was moved, never nowhere, and no tile is lost', async ({
  open,
}) => {
  test.setTimeout(120_000);
  const page = await open();
  const moves = ['Alt+ArrowLeft', 'Alt+ArrowRight', 'Alt+ArrowUp', 'Alt+ArrowDown'];
  const others = [
    'ArrowLeft',
    'ArrowRight',
    'ArrowUp',
    'ArrowDown',
    'Home',
    'End',
    'Space',
    'Escape',
    'Enter',
    'Delete',
    ',',
    '5',
    'd',
    'f',
  ];
  const lists = fc.sample(fc.array(fc.constantFrom(...moves, ...moves, ...others), { minLength: 25, maxLength: 25 }), {
    numRuns: 12,
    seed: 20_261_125,
  });
  await page.locator('wr-button', { hasText: 'Two tiers' }).click();
  await tile(page, 't0').focus();
  for (const list of lists) {
    for (const key of list) {
      const held = await focused(page);
      await press(page, key);
      const now = await focused(page);
      const told = `${key} in ${list.join(' ')}`;
      expect(now, told).not.toBe('body');
      if (moves.includes(key)) expect(now, told).toBe(held);
    }
    const all = [...(await order(page)).matchAll(/t\d+/g)].map(([id]) => id);
    const given = await page.locator('wr-slots [data-slot]').count();
    expect(new Set(all).size).toBe(all.length);
    expect(all.length + given).toBe(13);
  }
});

test('a rack that becomes empty keeps the focus, and says that it is empty', async ({ open }) => {
  const page = await open();
  await page.locator('wr-rack').evaluate((rack) => Object.assign(rack, { tiles: [] }));
  await page.locator('wr-rack').evaluate((rack) => (rack as HTMLElement).focus());
  expect(await focused(page)).toContain('rack');
  await expect(page.locator('wr-rack')).toContainText('No tiles yet');
});

test('CR-P5: following a dragged tile takes the window less than half a frame, in processor time', async ({ open }) => {
  const page = await open();
  const box = await tile(page, 't8').boundingBox();
  if (!box) throw new Error('no tile');
  // Processor time, so that a busy machine does not count against the rack.
  const meter = await page.context().newCDPSession(page);
  await meter.send('Performance.enable', { timeDomain: 'threadTicks' });
  const spent = async (): Promise<number> => {
    const { metrics } = await meter.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
  };
  await page.mouse.move(box.x + 20, box.y + 20);
  await page.mouse.down();
  const before = await spent();
  for (let round = 0; round < 4; round += 1) {
    await page.mouse.move(80, box.y + 30, { steps: 25 });
    await page.mouse.move(900, box.y + 50, { steps: 25 });
  }
  const each = ((await spent()) - before) / 200;
  await page.mouse.up();
  expect(each).toBeGreaterThan(0);
  expect(each).toBeLessThan(16.7 / 2);
});
