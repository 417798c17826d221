import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expectValue } from '../../core/base/result.ts';
import { CARD_LIMITS, checkCard } from '../../core/card/check.ts';
import { emptyCard } from '../../core/card/document.ts';
import { writeCardFile } from '../../core/card/file.ts';
import { addSection, copyDemo, kept, lineRow, startCard, typedLine, view } from './card-evening.ts';
import { cardFiles, withUs } from './card-file.ts';
import { expect, test, type Windrow } from './windrow.ts';

test.use({ weighs: 'when-asked' });

/** Drops a file on the window, as a hand does from a folder. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const given = await page.evaluateHandle(
    ([file, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content ?? ''], file ?? '', { type: 'application/json' }));
      return transfer;
    },
    [name, text],
  );
  await page.dispatchEvent('body', 'dragover', { dataTransfer: given });
  await page.dispatchEvent('body', 'drop', { dataTransfer: given });
}

async function agree(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'I understand' }).click();
}

/** How many seconds the window's main thread has worked since now; work in the background does not count. */
async function processorTime(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const read = async (): Promise<number> => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0;
  };
  const before = await read();
  return async () => {
    const seconds = (await read()) - before;
    expect(seconds).toBeGreaterThan(0);
    return seconds;
  };
}

const BAD_CARD = writeCardFile({
  ...emptyCard('A card with faults', '2027'),
  sections: [
    {
      name: 'Runs',
      lines: [
        { id: 'runs-1', pattern: 'FF 111a 222b 333a 444b', slide: 1 },
        { id: 'runs-2', pattern: 'FF 11?a 222b 333a 444b' },
        { id: 'runs-1', pattern: 'FF 1111a 2222b 3333c' },
      ],
    },
    { name: 'Twos', lines: [{ id: 'twos-1', pattern: 'FF 22a', points: 'many' }] },
  ],
});

test.describe('several cards', () => {
  test('a newcomer is led: the demo card stays as it is, a copy of it is made in one click', async ({
    windrow,
    page,
  }) => {
    await windrow.open('Card');
    await view(page, 'Lines');
    await expect(page.getByText('This is the demo card. It stays as it is.')).toBeVisible();
    await expect(page.locator('wr-line-panel')).toHaveCount(0);
    await page.getByRole('button', { name: 'Make my own copy' }).click();
    await expect(page.locator('wr-line-panel')).toBeVisible();
    expect([...(await cardFiles(windrow.folder)).keys()]).toHaveLength(1);
  });

  test('the caution comes once at entry, once at import, once at export, and never again', async ({
    windrow,
    page,
  }) => {
    const caution = page.getByRole('heading', { name: 'A word about printed cards' });
    await windrow.open('Card');
    await page.getByRole('button', { name: 'Start an empty card' }).click();
    await expect(caution).toBeVisible();
    await agree(page);
    await expect(caution).toBeHidden();
    await page.getByRole('button', { name: 'Close' }).last().click();
    await page.getByRole('button', { name: 'Save as a file' }).click();
    await expect(caution).toBeVisible();
    const download = page.waitForEvent('download');
    await agree(page);
    await download;
    await drop(page, 'x.card.json', BAD_CARD);
    await expect(caution).toBeVisible();
    await agree(page);
    await expect(page.locator('wr-card-arrived')).toBeVisible();
    await page
      .getByRole('button', { name: 'Don\u2019t keep it' })
      .or(page.getByRole('button', { name: "Don't keep it" }))
      .click();
    await page.waitForTimeout(300);
    await windrow.restart();
    await windrow.go('Card');
    await page.getByRole('button', { name: 'Start an empty card' }).click();
    await expect(page.getByLabel('Title of the card')).toBeVisible();
    await expect(caution).toBeHidden();
  });

  test('CR-J5: an earlier version is back in two clicks', async ({ windrow, page }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    await windrow.restart();
    await windrow.go('Card');
    await view(page, 'Cards');
    await page.getByRole('button', { name: 'Open, Lakeside demo card, my copy' }).click();
    // The list of cards has a button of the same name.
    await expect(page.locator('wr-line-panel')).toBeVisible();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await kept(page);
    await expect(page.locator('wr-card-lines [role=row].line')).toHaveCount(56 + 9);
    await view(page, 'Cards');
    await page.getByRole('button', { name: 'Earlier versions' }).click();
    await page.getByRole('button', { name: 'Bring this one back' }).first().click();
    await view(page, 'Lines');
    await expect(page.locator('wr-card-lines [role=row].line')).toHaveCount(57 + 9);
  });

  test('a removed card is brought back; the card in use falls back to the demo card', async ({ windrow, page }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    await page.getByRole('button', { name: 'Use at the Table' }).click();
    await view(page, 'Cards');
    await page.locator('.card', { hasText: 'my copy' }).getByRole('button', { name: 'Remove' }).click();
    await page.getByRole('button', { name: 'Remove it' }).click();
    await expect(page.getByText('was removed. A dated copy is kept.')).toBeVisible();
    await expect(page.locator('wr-card-list').locator('.used')).toHaveCount(1);
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await expect(page.locator('.card', { hasText: 'my copy' })).toBeVisible();
  });

  test('a game keeps its card: editing the card later changes no game that has begun', async ({ windrow, page }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    await page.getByRole('button', { name: 'Use at the Table' }).click();
    await windrow.go('Table');
    await windrow.deal('J FF N 0 13b 4578c 22d');
    await windrow.saved();
    const shores = page.getByText(/^Three Shores, \d+(st|nd|rd|th) line$/);
    await expect(shores.first()).toBeVisible();
    const before = await shores.count();
    await windrow.go('Card');
    await page.getByRole('button', { name: 'Change the section Three Shores' }).click();
    await page.getByRole('button', { name: 'Remove the section' }).click();
    await kept(page);
    await windrow.go('Table');
    await expect(shores).toHaveCount(before);
  });
});

/** Notes from now on how often a pattern is scanned and what live regions come to say, those within elements too. */
async function takeNotes(page: Page): Promise<() => Promise<{ scans: number; said: string[] }>> {
  const notes = await page.evaluateHandle(() => {
    const kept = { scans: 0, said: [] as string[] };
    const matchAll = String.prototype.matchAll;
    Reflect.set(String.prototype, 'matchAll', function (this: string, by: RegExp) {
      if (by.source === '\\S+') kept.scans += 1;
      return matchAll.call(this, by);
    });
    const watch = (root: Document | ShadowRoot): void => {
      new MutationObserver((changes) => {
        const parents = changes.map(({ target }) => (target instanceof Element ? target : target.parentElement));
        const regions = new Set(parents.map((parent) => parent?.closest('[role=status], [aria-live]')));
        for (const region of regions) {
          const words = region?.textContent.replaceAll(/\s+/g, ' ').trim() ?? '';
          if (words !== '') kept.said.push(words);
        }
      }).observe(root, { subtree: true, childList: true, characterData: true });
      for (const { shadowRoot } of root.querySelectorAll('*')) if (shadowRoot !== null) watch(shadowRoot);
    };
    watch(document);
    return kept;
  });
  return async () => await notes.jsonValue();
}

/** A card with one section, and the focus where its first line is typed. */
async function firstLine(windrow: Windrow): Promise<void> {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Runs');
  await expect(typedLine(windrow.page)).toBeFocused();
}

const BUILD = 'Build it from tiles';

test.describe('a line, built and typed', () => {
  test('one key reads the line twice at most: as it is typed, and as the card has it', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('FF 222a 333b 4');
    const notes = await takeNotes(page);
    for (const [keys, key] of ['4', '4', 'c', ' '].entries()) {
      await page.keyboard.press(key === ' ' ? 'Space' : key);
      await expect(page.locator('wr-line-groups [role=option] .caption').nth(3)).toHaveText(
        `4${'44c '.slice(0, keys + 1).trim()}`,
      );
      expect([key, (await notes()).scans <= 2 * (keys + 1)]).toEqual([key, true]);
    }
  });

  test('what is typed is said once, after a pause', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('F');
    await kept(page);
    await page.waitForTimeout(1_500);
    const notes = await takeNotes(page);
    await page.keyboard.type('F 222a', { delay: 60 });
    await expect(page.locator('wr-line-panel').getByText('5 of 14 tiles')).toBeVisible();
    const heard = '222a: pung of twos, first suit. 5 of 14 tiles · 9 tiles to go.';
    await expect.poll(async () => (await notes()).said).toEqual([heard]);
  });

  test('what is typed is written out before one’s eyes: either case, no blanks, several numbers with one suit', async ({
    windrow,
    page,
  }) => {
    await firstLine(windrow);
    await page.keyboard.type('ff222A ');
    await expect(typedLine(page)).toHaveValue('FF 222a ');
    await page.keyboard.type('2468b');
    await expect(page.locator('wr-line-groups [role=option]')).toHaveCount(7);
    await page.keyboard.press('Tab');
    await expect(lineRow(page, 1, 1).locator('.pattern')).toHaveText('LineFF 222a 2b 4b 6b 8b');
    await page.keyboard.press('Shift+Tab');
    await expect(typedLine(page)).toHaveValue('FF 222a 2b 4b 6b 8b');
  });

  test('the builder and the typed line are the same at all times', async ({ windrow, page }) => {
    await firstLine(windrow);
    const field = typedLine(page);
    await page.keyboard.type('FF 222a');
    await expect(page.locator('wr-line-groups [role=option]')).toHaveCount(3);
    await page.locator('summary', { hasText: BUILD }).click();
    await page.getByRole('button', { name: '3, first suit', exact: true }).click();
    await expect(field).toHaveValue('FF 222a 33a');
    await page.getByRole('option', { name: /pair of threes/ }).click();
    await page.getByRole('radio', { name: '4 kong' }).check();
    await page.getByRole('button', { name: '3, second suit', exact: true }).click();
    await page.getByRole('radio', { name: 'is a second number' }).check();
    await expect(field).toHaveValue("FF 222a 3333b'");
    await page.getByRole('button', { name: 'Earlier', exact: true }).click();
    await expect(field).toHaveValue("FF 3333b' 222a");
    await page.getByRole('button', { name: 'Take it away' }).click();
    await expect(field).toHaveValue('FF 222a');
    await expect(page.locator('wr-line-panel').getByText('5 of 14 tiles · 9 tiles to go')).toBeVisible();
  });

  test('ready choices set the parts of a line: run, suits, dragons, wind, C', async ({ windrow, page }) => {
    await firstLine(windrow);
    const field = typedLine(page);
    await field.fill('FF 22a 444a 66a');
    const pick = async (name: string): Promise<void> => await page.getByRole('radio', { name, exact: true }).check();
    await pick('consecutive run');
    await expect(field).toHaveValue('FF 22a 333a 44a');
    await pick('three suits');
    await expect(field).toHaveValue('FF 22a 333b 44c');
    await pick('like numbers');
    await expect(field).toHaveValue('FF 22a 222b 22c');
    for (const name of ['matching dragon', 'any wind', 'white dragon as zero'])
      await page.getByRole('button', { name }).click();
    await expect(field).toHaveValue('FF 22a 222b 22c DDc ww 00');
    await pick('C, concealed');
    await pick('50');
    await expect(lineRow(page, 1, 1)).toContainText(/like numbers.*C.*50/s);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(lineRow(page, 1, 1)).toContainText(/like numbers.*C.*25/s);
  });

  test('b without a is asked about where it is typed; the answer is written into the line', async ({
    windrow,
    page,
  }) => {
    await firstLine(windrow);
    await page.keyboard.type('22b 33b 444c 555c FFFF');
    await expect(page.getByText('Do b and c mean bams and craks, or any two suits?').first()).toBeVisible();
    await page.getByRole('button', { name: 'Bams and craks' }).click();
    await expect(typedLine(page)).toHaveValue('22bam 33bam 444crak 555crak FFFF');
    await expect(page.getByRole('button', { name: 'Bams and craks' })).toHaveCount(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Any suit' }).click();
    await expect(typedLine(page)).toHaveValue('22a 33a 444b 555b FFFF');
  });

  test('a line that can’t be made says why in its row, without a tick', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('99a 99a 99a 1111b 2222b');
    const row = lineRow(page, 1, 1);
    await expect(row.locator('.words')).toHaveText('No set of 152 tiles can make this line.');
    await expect(row.locator('.whole')).toHaveCount(0);
    await expect(page.locator('wr-line-panel .count.whole')).toHaveCount(0);
  });

  test('open suits have marks of their own, named ones their tiles', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('22a 333b 44bam DDDc ww');
    const group = page.locator('wr-line-groups [role=option]');
    await expect(group.nth(0).locator('wr-tile')).toHaveCount(0);
    await expect(group.nth(0).locator('svg .open')).toHaveCount(2);
    await expect(group.nth(2).locator('wr-tile')).toHaveCount(2);
    await expect(group.nth(3).locator('svg .open')).toHaveCount(3);
    const marks = await group
      .locator('svg .open')
      .evaluateAll((shapes) => shapes.map((shape) => shape.getAttribute('d')));
    expect(new Set(marks).size).toBe(4);
  });

  test('several lines that are pasted become lines', async ({ windrow, page }) => {
    await firstLine(windrow);
    const text = 'FF1111a2222b3333c\t1\n11a222a333a4444a55a\t1\tC\t30\n# Winds\nNNN EEE WWWW SSSS';
    await typedLine(page).evaluate((field, pasted) => {
      const data = new DataTransfer();
      data.setData('text/plain', pasted);
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, text);
    await expect(lineRow(page, 1, 2)).toContainText('11a 222a 333a 4444a 55a');
    await expect(lineRow(page, 1, 2)).toContainText(/any run.*C.*30/s);
    await expect(page.getByRole('heading', { name: /^Winds/ })).toBeVisible();
    await expect(typedLine(page)).toHaveValue('NNN EEE WWWW SSSS');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByRole('heading', { name: /^Winds/ })).toHaveCount(0);
  });

  test('the tiles of a group go by keys in both directions, as one tab stop', async ({ windrow, page }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    await page.locator('wr-line-groups [role=option]').first().click();
    const tiles = page.getByRole('toolbar', { name: 'Which tile' });
    await tiles.getByRole('button').first().focus();
    for (const [key, at] of [
      ['ArrowRight', 1],
      ['Home', 0],
      ['ArrowUp', 0],
    ] as const) {
      await page.keyboard.press(key);
      await expect(tiles.locator(':focus')).toHaveAttribute('data-at', String(at));
    }
    await page.keyboard.press('ArrowDown');
    await expect(tiles.locator(':focus')).toHaveAttribute('aria-label', '1, second suit');
    await page.keyboard.press('ArrowUp');
    await expect(tiles.locator(':focus')).toHaveAttribute('data-at', '0');
    await expect(tiles.locator('[tabindex="0"]')).toHaveCount(1);
  });

  test('of the cards, none says that it is pressed', async ({ windrow, page }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    await view(page, 'Cards');
    await expect(page.getByRole('button', { name: /^Open, / }).first()).toBeVisible();
    await expect(page.locator('wr-card-list [aria-pressed]')).toHaveCount(0);
  });

  test('the groups go by keys: choose, move, take away; the focus stays on the group', async ({ windrow, page }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    const field = typedLine(page);
    const group = page.locator('wr-line-groups [role=option]');
    await group.first().click();
    await page.keyboard.press('Alt+ArrowRight');
    await expect(field).toHaveValue('2a 1111a 3333a 4a 5555a');
    await expect(page.locator('wr-line-groups [role=option]:focus')).toHaveAttribute('aria-label', /kong of ones/);
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Delete');
    await expect(field).toHaveValue('2a 1111a 3333a 4a');
    await expect(page.locator('wr-line-groups [role=option]:focus')).toHaveCount(1);
    for (let step = 0; step < 2; step += 1) await page.keyboard.press('Control+z');
    await expect(field).toHaveValue('1111a 2a 3333a 4a 5555a');
    await page.keyboard.press('Control+Shift+z');
    await expect(field).toHaveValue('2a 1111a 3333a 4a 5555a');
  });

  test('an example with real tiles can be leafed through all ways, and says what takes jokers', async ({
    windrow,
    page,
  }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    await expect(page.getByText('As printed')).toBeVisible();
    await expect(page.getByRole('option', { name: 'kong of ones, first suit, takes jokers' })).toBeVisible();
    await expect(page.getByRole('option', { name: 'single two, first suit', exact: true })).toBeVisible();
    for (let way = 1; way <= 15; way += 1) {
      await page.getByRole('button', { name: 'Next example' }).click();
      await expect(page.getByText(`Example ${way} of 15`)).toBeVisible();
    }
    await expect(page.getByRole('button', { name: 'Next example' })).toHaveAttribute('aria-disabled', 'true');
  });

  test('completion: Down chooses a way to go on, Enter takes it, Escape closes the list', async ({ windrow, page }) => {
    await firstLine(windrow);
    const field = typedLine(page);
    await page.keyboard.type('222');
    await expect(page.locator('wr-pattern-field [role=option]').first()).toBeVisible();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const chosen = page.locator('wr-pattern-field [role=option][aria-selected=true]');
    const group = (await chosen.locator('b').textContent()) ?? '';
    await page.keyboard.press('Enter');
    await expect(field).toHaveValue(group);
    await expect(field).toBeFocused();
    await page.keyboard.type(' DD');
    await expect(page.locator('wr-pattern-field [role=option]').first()).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.locator('wr-pattern-field [role=option]')).toHaveCount(0);
    await expect(field).toHaveValue(`${group} DD`);
    await expect(field).toBeFocused();
  });

  test('a fault is told in a sentence, with a wedge under the exact character, and nothing typed is lost', async ({
    windrow,
    page,
  }) => {
    await firstLine(windrow);
    const field = typedLine(page);
    await page.keyboard.type('FF 22q 333a');
    await expect(
      page.locator('wr-pattern-field').getByText('"q" can\'t stand here. Use a, b or c, or bam, crak or dot.'),
    ).toBeVisible();
    const { wedge, character } = await field.evaluate((input) => {
      const style = getComputedStyle(input);
      const canvas = document.createElement('canvas').getContext('2d');
      if (canvas === null || !(input.getRootNode() instanceof ShadowRoot)) throw new Error('no canvas');
      canvas.font = `${style.fontSize} ${style.fontFamily}`;
      const left =
        input.getBoundingClientRect().left + parseFloat(style.paddingLeft) + parseFloat(style.borderLeftWidth);
      const box = input.parentElement?.querySelector('.pointer')?.getBoundingClientRect();
      const width = canvas.measureText('FF 22q').width - canvas.measureText('FF 22').width;
      const middle = left + canvas.measureText('FF 22').width + width / 2;
      return { wedge: box === undefined ? 0 : box.left + box.width / 2, character: middle };
    });
    expect(Math.abs(wedge - character)).toBeLessThan(4);
    await expect(field).toHaveValue('FF 22q 333a');
    await page.keyboard.press('Enter');
    await kept(page);
    await expect(lineRow(page, 1, 1).locator('.words.open')).toBeVisible();
  });

  test('lines are duplicated, moved and sent to another section; sections renamed and moved', async ({
    windrow,
    page,
  }) => {
    await windrow.open('Card');
    await copyDemo(windrow);
    const here = page.locator('wr-card-lines .now .place');
    await page.getByRole('button', { name: 'Duplicate' }).first().click();
    await expect(here).toHaveText('2');
    await page.getByRole('button', { name: 'Move down' }).click();
    await expect(here).toHaveText('3');
    await page.locator('summary', { hasText: 'other section' }).click();
    await page.getByLabel('It stands in the section').selectOption('Still Water');
    await expect(here).toHaveText('9');
    await page.getByRole('button', { name: 'Change the section Two Shores' }).click();
    await page.getByLabel('Name of the section').fill('Answers');
    await page.getByRole('button', { name: 'Move up' }).first().click();
    await kept(page);
    const [text] = [...(await cardFiles(windrow.folder)).values()];
    expect(
      withUs(text)
        .sections.map(({ name }) => name)
        .slice(0, 2),
    ).toEqual(['Answers', 'One Shore']);
  });
});

test('CR-K6: what the screen says of its keys holds in every cell', async ({ windrow, page }) => {
  await windrow.open('Card');
  await copyDemo(windrow);
  await expect(page.getByText('Enter: next line. Tab: next cell. Esc: to the choices below.').last()).toBeVisible();
  const at = async (): Promise<[string, string]> =>
    await page.locator('wr-card-lines .here').evaluate((cell) => {
      if (!cell.matches(':focus-within')) throw new Error('the focus is not in the current cell');
      const row = cell.parentElement?.querySelector('.place')?.textContent ?? '';
      return [row, [...cell.classList][0] ?? ''];
    });
  await typedLine(page).focus();
  const path: [string, [string, string]][] = [
    ['ArrowUp', ['1', 'pattern']],
    ['Tab', ['1', 'slide']],
    ['Tab', ['1', 'concealed']],
    ['Tab', ['1', 'points']],
    ['Tab', ['2', 'pattern']],
    ['Shift+Tab', ['1', 'points']],
    ['ArrowDown', ['2', 'points']],
    ['Enter', ['3', 'pattern']],
    ['Tab', ['3', 'slide']],
    ['Enter', ['4', 'pattern']],
    ['Tab', ['4', 'slide']],
    ['Tab', ['4', 'concealed']],
    ['Enter', ['5', 'pattern']],
    ['ArrowUp', ['4', 'pattern']],
  ];
  for (const [key, place] of path) {
    await page.keyboard.press(key);
    expect([key, await at()]).toEqual([key, place]);
  }
  // Digits set how the numbers move, letters the exposure; a blank changes nothing.
  await page.keyboard.press('Tab');
  const before = await lineRow(page, 1, 4).innerText();
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  expect(await lineRow(page, 1, 4).innerText()).toBe(before);
  await page.keyboard.press('c');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('2');
  await expect(lineRow(page, 1, 4)).toContainText(/evens or odds\s*C/);
  // Escape leads to the choices under the line, Tab on from there.
  await page.keyboard.press('Escape');
  await expect(page.locator('wr-line-choices input').first()).toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await page.locator('wr-card-lines .now .pattern').click();
  await page.keyboard.press('Alt+ArrowDown');
  expect(await at()).toEqual(['5', 'pattern']);
});

test.describe('what is typed is not lost', () => {
  test('undo takes back a group, not the line, and leaves the focus in the table', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('FF 2222a 3333a ');
    await page.keyboard.press('Control+z');
    await expect(typedLine(page)).toHaveValue('FF 2222a');
    await expect(typedLine(page)).toBeFocused();
    await page.keyboard.press('Control+Shift+z');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+z');
    await expect(page.locator('wr-card-lines .here')).toHaveCount(1);
    await page.keyboard.type('4');
    await expect(typedLine(page)).toBeFocused();
    await expect(typedLine(page)).toHaveValue(/4$/);
  });

  test('points that are none stay as typed and are told; nothing of them is cut off', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('FF 1111a 2222b 3333c');
    for (const key of ['Tab', 'Tab', 'Tab', '1', '0', '0', '1', 'Enter']) await page.keyboard.press(key);
    const row = lineRow(page, 1, 1);
    await expect(row.locator('.points')).toContainText('1001');
    await expect(row.locator('.words')).toContainText("The points of this line can't be read");
    await row.locator('.points').click();
    await page.getByRole('radio', { name: '40', exact: true }).check();
    await expect(row.getByRole('textbox', { name: 'Points' })).toHaveValue('40');
    await expect(row.locator('.words')).toContainText('14 tiles');
  });

  test('in a field of words undo means the words', async ({ windrow, page }) => {
    await firstLine(windrow);
    await page.keyboard.type('FF 1111a 2222b 3333c');
    await page.getByLabel('Name of the new section').fill('Ne');
    await page.keyboard.press('Control+z');
    await expect(typedLine(page)).toHaveValue('FF 1111a 2222b 3333c');
    await expect(page.getByLabel('Name of the new section')).not.toHaveValue('Ne');
  });

  test('a row of cells that is pasted is read as cells', async ({ windrow, page }) => {
    await firstLine(windrow);
    await typedLine(page).evaluate((field) => {
      const data = new DataTransfer();
      data.setData('text/plain', 'FF 1111a 2222b 3333c\t1\tC\t30\r\n');
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    });
    await expect(lineRow(page, 1, 1)).toContainText(/any run.*C.*30/s);
  });

  test('the table of the demo card is no trap: Tab and Escape lead on', async ({ windrow, page }) => {
    await windrow.open('Card');
    await view(page, 'Lines');
    const inCell = page.locator('wr-card-lines .here:focus');
    await page.locator('wr-card-lines .here').focus();
    await expect(inCell).toHaveCount(1);
    await page.keyboard.press('Tab');
    await expect(inCell).toHaveCount(0);
    await page.locator('wr-card-lines .here').focus();
    await page.keyboard.press('Escape');
    await expect(inCell).toHaveCount(0);
    await expect(page.locator('wr-line-view :focus').first()).toBeVisible();
  });

  test('after the answer about its suits, and after a section is gone, the focus is in the table', async ({
    windrow,
    page,
  }) => {
    await firstLine(windrow);
    await page.keyboard.type('22b 33b 444c 555c FFFF');
    await page.getByRole('button', { name: 'Any suit' }).click();
    await expect(typedLine(page)).toBeFocused();
    await page.getByLabel('Name of the new section').fill('Winds');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Change the section Winds' }).click();
    await page.getByRole('button', { name: 'Remove the section' }).click();
    await expect(page.locator('wr-card-lines .here')).toHaveCount(1);
    await expect(page.locator('wr-section-form')).toHaveCount(0);
    await expect(typedLine(page)).toBeFocused();
  });
});

test.describe('card files', () => {
  test('a bad file shows all its problems with section, line and place, opens what is good, and changes nothing on disk', async ({
    windrow,
    page,
  }) => {
    await windrow.open('Card');
    await drop(page, 'faults.card.json', BAD_CARD);
    await agree(page);
    const arrived = page.locator('wr-card-arrived');
    await expect(arrived.getByText('Nothing was changed on this computer.')).toBeVisible();
    for (const where of ['Runs, 2nd line · place 6 of the line', 'Runs, 3rd line', 'Twos · place 7 of the line']) {
      await expect(arrived.getByText(where, { exact: true })).toBeVisible();
    }
    await expect(arrived.getByText("The points of this line can't be read")).toBeVisible();
    await expect(arrived.getByText('FF 111a 222b 333a 444b')).toBeVisible();
    expect([...(await cardFiles(windrow.folder)).keys()]).toEqual([]);
    await page.getByRole('button', { name: "Don't keep it" }).click();
    await expect(page.getByRole('heading', { name: 'Your cards' })).toBeVisible();
    expect([...(await cardFiles(windrow.folder)).keys()]).toEqual([]);
  });

  test('a file that is no card is refused with a sentence', async ({ windrow, page }) => {
    await windrow.open('Card');
    await drop(page, 'letter.json', '{"dear": "friend"}');
    await agree(page);
    await expect(page.getByText('This file is no Windrow card')).toBeVisible();
    await page.locator('wr-card-arrived').getByRole('button', { name: 'Close' }).click();
    await expect(page.getByRole('heading', { name: 'Your cards' })).toBeVisible();
  });

  test('CR-V4: unknown fields survive import, edit and export', async ({ windrow, page }) => {
    const strange = withUs();
    const given = writeCardFile({
      ...strange,
      mood: 'calm',
      sections: strange.sections.map((section) => ({
        ...section,
        colour: 'blue',
        lines: section.lines.map((line) => ({ ...line, page: 3 })),
      })),
    });
    await windrow.open('Card');
    await page.getByRole('button', { name: 'Open a card file' }).click();
    const chooser = page.waitForEvent('filechooser');
    await agree(page);
    await (
      await chooser
    ).setFiles({ name: 'strange.card.json', mimeType: 'application/json', buffer: Buffer.from(given) });
    await page.getByRole('button', { name: 'Keep it as a second card' }).click();
    await page.locator('summary', { hasText: 'Note' }).click();
    await page.getByLabel('Note').fill('changed here');
    await kept(page);
    await view(page, 'Cards');
    await page
      .locator('.card', { hasText: 'Earlier versions' })
      .getByRole('button', { name: 'Save as a file' })
      .click();
    const download = page.waitForEvent('download');
    await agree(page);
    const saved = await download;
    expect(saved.suggestedFilename()).toBe('lakeside-demo-card-demonstration.card.json');
    const text = await readFile(await saved.path(), 'utf8');
    expect(withUs(text)['mood']).toBe('calm');
    expect(withUs(text).sections.map(({ colour }) => colour)).toEqual(strange.sections.map(() => 'blue'));
    expect(withUs(text).sections[0]?.lines[0]).toMatchObject({
      page: 3,
      note: 'changed here',
      pattern: '1111a 2a 3333a 4a 5555a',
    });
    expect(text).toBe(writeCardFile(withUs(text)));
  });

  test('a card of 300 lines and nearly 50,000 ways opens and is edited without freezing the window; one beyond is refused', async ({
    windrow,
    page,
  }) => {
    const lines = Array.from({ length: CARD_LIMITS.lines }, (_, at) => ({
      id: `l-${at}`,
      pattern: at < 40 ? "FF wwww 11a 11b 2222c'" : 'FF 111a 222b 333a 444b',
      slide: 1,
    }));
    const card = { ...emptyCard('Big', ''), sections: [{ name: 'All', lines }] };
    const checked = expectValue(checkCard(card)).card.sections.flatMap((section) => section.lines);
    const ways = checked.reduce((sum, line) => sum + line.ways.length, 0);
    expect(ways).toBeGreaterThan(45_000);
    await windrow.open('Card');
    const worked = await processorTime(page);
    await drop(page, 'big.card.json', writeCardFile(card));
    await agree(page);
    await expect(page.getByText('Every line can be read.')).toBeVisible();
    await expect(page.getByText(`300 lines, ${ways} ways`)).toBeVisible();
    await page.getByRole('button', { name: 'Keep it as a new card' }).click();
    await expect(page.locator('wr-card-lines [role=row].line')).toHaveCount(301);
    await page.locator('summary', { hasText: 'Note' }).click();
    await page.getByLabel('Note').fill('typed at once');
    await view(page, 'Check');
    await expect(page.getByRole('heading', { name: 'The card in numbers' })).toBeVisible();
    // All of the window's own work together, by processor time, which a busy machine does not change.
    expect(await worked()).toBeLessThan(1.5);
    const more = { id: 'more', pattern: 'FF 111a 222b 333a 444b' };
    const beyond = { ...card, sections: [{ name: 'All', lines: [...lines, more] }] };
    await drop(page, 'beyond.card.json', writeCardFile(beyond));
    await expect(
      page.getByText('This card has 301 lines, and Windrow takes 300: split it into two cards.'),
    ).toBeVisible();
  });
});

test('checking: what looks wrong leads to its line, and the numbers are a table', async ({ windrow, page }) => {
  await windrow.open('Card');
  await drop(page, 'faults.card.json', BAD_CARD);
  await agree(page);
  await page.getByRole('button', { name: 'Keep it, and fix it here' }).click();
  await view(page, 'Check');
  await expect(page.getByRole('heading', { name: /^To fix/ })).toBeVisible();
  await page.getByRole('button', { name: 'Show Runs, 2nd line' }).first().click();
  await expect(typedLine(page)).toHaveValue('FF 11?a 222b 333a 444b');
  await typedLine(page).fill('FF 111a 222b 333a 444b');
  await page.getByRole('radio', { name: 'consecutive run' }).check();
  await view(page, 'Check');
  await expect(page.getByText('This line has the same ways as Runs, 1st line: check one of them.')).toBeVisible();
  const table = page.getByRole('table', { name: 'Ways in each section' });
  await expect(table.getByRole('row', { name: /^Runs 72/ })).toBeVisible();
});

test('proof-reading: an edited line loses its tick, the others keep theirs', async ({ windrow, page }) => {
  await windrow.open('Card');
  await copyDemo(windrow);
  await view(page, 'Proof-read');
  await expect(page.getByText('Any run of five in one suit: kong, single, kong, single, kong; 5')).toBeVisible();
  await page.getByText('Group by group').click();
  await expect(page.getByText('Kong of ones, first suit.')).toBeVisible();
  await expect(page.getByText('The numbers move up or down together, by any amount.')).toBeVisible();
  await page.getByRole('button', { name: 'Same as printed' }).click();
  await page.getByRole('button', { name: 'Same as printed' }).click();
  await expect(page.getByText('2 of 57 lines confirmed').first()).toBeVisible();
  await page.getByRole('button', { name: 'Go back one line' }).click();
  await page.getByRole('button', { name: 'Change this line' }).click();
  await page.getByRole('radio', { name: '30', exact: true }).check();
  await view(page, 'Proof-read');
  await expect(page.getByText('1 of 57 lines confirmed').first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Line 2 of One Shore' })).toBeVisible();
});

test('CR-R1, CR-R2: study asks first, tells at once, and a missed line comes back', async ({ windrow, page }) => {
  await windrow.open('Card');
  await view(page, 'Study');
  await page.getByRole('button', { name: 'Begin' }).click();
  let missed = 0;
  const done = page.getByRole('heading', { name: 'Done for now' });
  const next = page.getByRole('button', { name: 'Go on' });
  for (let asked = 0; asked < 200; asked += 1) {
    await expect(done.or(next)).toBeVisible();
    if (await done.isVisible()) break;
    await expect(next).toHaveAttribute('aria-disabled', 'true');
    await page.locator('wr-card-study .choices wr-button').first().click();
    await expect(page.getByText(/^(✓ That is right\.|Not quite\. It is: .+)$/)).toBeVisible();
    if (await page.getByText('Not quite.').isVisible()) missed += 1;
    await next.click();
  }
  await expect(done).toBeVisible();
  expect(missed).toBeGreaterThan(0);
  await expect(page.getByText('Lines that you missed come back tomorrow.')).toBeVisible();
});
