import type { Page } from '@playwright/test';
import { choose, field, tableRows, totals, type } from './play.ts';
import { expect, test, type Windrow } from './windrow.ts';

test.use({ weighs: 'when-asked' });

/**
 * An evening of four games at one table. The payments are worked by hand from the default rules
 * (common practice, no source): the discarder pays double, the others single; by own draw
 * everybody pays double; without jokers all of it doubles, save for singles and pairs.
 */

/** Gives the first three tiles that are no jokers. */
async function give(page: Page): Promise<void> {
  for (let tile = 0; tile < 3; tile += 1) {
    await page.locator('wr-rack [role=option]:not([aria-label^="joker"])').nth(3).click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
}

async function exchange(page: Page): Promise<void> {
  for (const came of ['9d 3c 5d', '6c 2d e', '6c 5c 1d']) {
    await give(page);
    await type(page, came);
  }
  await page.getByRole('button', { name: 'Somebody stops here' }).click();
  await page.getByRole('button', { name: 'No courtesy pass' }).click();
  await expect(field(page)).toBeVisible();
}

async function next(windrow: Windrow, seat: string): Promise<void> {
  const { page } = windrow;
  await expect(page.getByText(`you sit ${seat}`)).toBeVisible();
  await page.getByRole('button', { name: 'Next game of this evening' }).click();
  await expect(page.getByRole('radio', { name: seat })).toBeChecked();
}

test('four games by mouse: totals run on, East goes round, place and people stay', async ({ windrow, page }) => {
  test.setTimeout(240_000);
  await windrow.open();

  // 1. South; the passes, some play; West wins 5 by South's discard, with jokers: 10, 5, 5.
  await windrow.deal('J FF N 0 13b 4578c 22d', 'South');
  await exchange(page);
  for (const name of [/^nine crak/, /^eight bam/, /^eight bam/, /^one dot/]) {
    await page.getByRole('button', { name }).click();
  }
  await expect(page.getByText('Discards on the table: 3')).toBeVisible();
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Who won?', 'Right');
  await choose(page, 'How?', 'By discard');
  await choose(page, 'Whose discard?', 'You');
  await page.getByLabel('Which hand?').selectOption('one-shore-1');
  await choose(page, 'Jokers in it?', 'With jokers');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect(page.getByRole('heading', { name: 'Right (West) won by your discard' })).toBeVisible();
  expect(await tableRows(page, 'Who pays what')).toEqual([
    ['You (South)', '−10', 'pays 10'],
    ['Right (West)', '+20', 'gets 20'],
    ['Across (North)', '−5', 'pays 5'],
    ['Left (East)', '−5', 'pays 5'],
  ]);
  await page.getByRole('textbox', { name: 'Place' }).fill('Lakeside library');
  await page.getByText('Names, if you like').click();
  await page.getByLabel('Name of Right (West)').fill('Heron');
  await page.getByLabel('Name of Right (West)').blur();
  expect(await totals(page)).toEqual(['−10', '+20', '−5', '−5']);

  // 2. East; only the result: own draw, 25, without jokers: everybody pays 100.
  await next(windrow, 'East');
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Where did you sit?', 'East');
  await choose(page, 'Who won?', 'East');
  await choose(page, 'How?', 'By own draw');
  await page.getByLabel('Points', { exact: true }).fill('25');
  await choose(page, 'Jokers in it?', 'Without jokers');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect(page.getByRole('heading', { name: 'You won by own draw', exact: true })).toBeVisible();
  await expect.poll(async () => await totals(page)).toEqual(['+290', '−80', '−105', '−105']);
  await expect(page.getByRole('textbox', { name: 'Place' })).toHaveValue('Lakeside library');
  await expect(page.getByRole('columnheader', { name: 'Heron' })).toBeVisible();

  // 3. North; a wall game, with the window closed and the host stopped in between.
  await next(windrow, 'North');
  await windrow.saved();
  await windrow.deal('J FF N 0 13b 4578c 22d', 'North');
  await windrow.saved();
  await windrow.restart();
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Wall game');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect.poll(async () => await totals(page)).toEqual(['+290', '−80', '−105', '−105']);
  // What is read aloud: how each game ended stands beside its number.
  expect(await tableRows(page, 'Points of this evening')).toEqual([
    ['1 West won by your discard', '−10', '+20', '−5', '−5'],
    ['2 You won by own draw', '+300', '−100', '−100', '−100'],
    ['3 Wall game', '0', '0', '0', '0'],
  ]);

  // 4. West; the player at the left (South) wins 50, singles and pairs, by the discard of the one across: 100, 50, 50.
  await next(windrow, 'West');
  await windrow.deal('FF N 0 13b 4578c 22d 9d', 'West');
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Who won?', 'Left');
  await choose(page, 'How?', 'By discard');
  await choose(page, 'Whose discard?', 'Across');
  await page.getByLabel('Points', { exact: true }).fill('50');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect.poll(async () => await totals(page)).toEqual(['+240', '−130', '−205', '+95']);
  await windrow.saved();
  await windrow.restart();
  await expect.poll(async () => await totals(page)).toEqual(['+240', '−130', '−205', '+95']);
  await expect(page.getByText('you sit South')).toBeVisible();

  // Names are gone everywhere after one action.
  await windrow.go('Settings');
  await page.getByRole('button', { name: 'Remove all names' }).click();
  await page.getByRole('button', { name: 'Remove all names' }).last().click();
  await expect(page.getByText('Names are gone from 4 games.')).toBeVisible();
  await windrow.go('Table');
  await expect(page.getByRole('columnheader', { name: 'Right' })).toBeVisible();
  await expect(page.getByText('Heron')).toHaveCount(0);
});

/** The innermost focused element, as its name and words. */
async function focused(page: Page): Promise<string> {
  return await page.evaluate(() => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
    const root = element?.getRootNode();
    const host = root instanceof ShadowRoot ? root.host : null;
    const label = element?.getAttribute('aria-label') ?? '';
    const own = label === '' ? (element?.textContent?.trim() ?? '') : label;
    const type =
      element instanceof HTMLInputElement ? `${element.type} ${element.parentElement?.textContent ?? ''}` : '';
    const legend = element?.closest('fieldset')?.querySelector('legend')?.textContent ?? '';
    return [element?.localName, own, type, host?.textContent?.trim() ?? '', legend].join('|');
  });
}

/** Presses Tab until the focus is on what answers to a description; fails if it is ever lost on the way. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    if (wanted.test(await focused(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${wanted}; the focus is on "${await focused(page)}"`);
}

async function press(page: Page, button: string): Promise<void> {
  await tabTo(page, new RegExp(`^button\\|[^|]*\\|[^|]*\\|${button}`));
  await page.keyboard.press('Enter');
}

/** Goes to a bar of choices and moves along it with the arrows. */
async function pick(page: Page, group: string, value: string): Promise<void> {
  await tabTo(page, new RegExp(`^input\\|.*radio.*\\|${group.replace('?', '\\?')}$`, 's'));
  const wanted = page.getByRole('group', { name: group }).getByRole('radio', { name: value, exact: true });
  for (let steps = 0; steps < 5 && !(await wanted.isChecked()); steps += 1) await page.keyboard.press('ArrowRight');
  await expect(wanted).toBeChecked();
}

/** Gives the three tiles that stand after the fourth in the rack. */
async function giveByKeys(page: Page): Promise<void> {
  for (let tile = 0; tile < 3; tile += 1) {
    await tabTo(page, /^wr-tile/);
    await page.keyboard.press('Home');
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    // A person sees it lie in the tray before she goes on.
    await expect(page.locator('wr-slots .slot.tile')).toHaveCount(tile + 1);
  }
  await press(page, 'Give 3 tiles');
}

test('CR-K1: a whole game by keys alone: deal, passes, play, a group, the result, and the next game', async ({
  windrow,
  page,
}) => {
  test.setTimeout(240_000);
  await windrow.open();
  await pick(page, 'Your seat', 'South');
  await tabTo(page, /^input\|.*text/);
  await page.keyboard.type('j ff n 0 13b 4578c 22d');
  await page.keyboard.press('Enter');
  for (const came of ['9d 3c 5d', '6c 2d e', '6c 5c 1d']) {
    await giveByKeys(page);
    await expect(page.getByText('0 of 3 entered')).toBeVisible();
    await expect(field(page)).toBeFocused();
    await page.keyboard.type(came);
    await page.keyboard.press('Enter');
  }
  await press(page, 'Somebody stops here');
  await press(page, 'No courtesy pass');
  await expect(field(page)).toBeFocused();
  // Two turns round the table, each tile typed; the field keeps the focus.
  for (const tiles of ['9c', '8b', '8b', 'n', '4d', '7b', '1b', '1b', '1d', '9c']) {
    await page.keyboard.type(tiles);
    await page.keyboard.press('Enter');
    await expect(field(page)).toBeFocused();
    await expect(field(page)).toHaveValue('');
  }
  await page.keyboard.press('Shift+Tab');
  await pick(page, 'What happened?', 'A group laid open');
  await tabTo(page, /^input\|.*text/);
  await page.keyboard.type('9c j j');
  await page.keyboard.press('Enter');
  await expect(field(page)).toBeFocused();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+Shift+z');
  // The game's actions are one tab stop; the arrows go along them.
  await tabTo(page, /^button\|[^|]*\|[^|]*\|Undo/);
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  expect(await focused(page)).toContain('Result');
  await page.keyboard.press('Enter');
  await pick(page, 'The game', 'Somebody won');
  await pick(page, 'Who won?', 'Left');
  await pick(page, 'How?', 'By own draw');
  await tabTo(page, /^select/);
  await page.keyboard.press('ArrowDown');
  await press(page, 'Enter the result');
  await expect(page.getByRole('heading', { name: 'Left (East) won by own draw' })).toBeVisible();
  expect(await focused(page)).toContain('Next game of this evening');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Type your tiles')).toBeFocused();
  await expect(page.getByRole('radio', { name: 'East' })).toBeChecked();
});
