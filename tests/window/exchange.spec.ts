import type { Locator, Page } from '@playwright/test';
import { openChoices, storyTold } from './journal-helpers.ts';
import { expect, test, type Windrow } from './windrow.ts';

/**
 * A whole exchange, three times over: by dragging, by clicks alone, by keys alone; each with the
 * window closed and the host stopped in between. All three must end with the same rack.
 */
const DEAL = 'J FF N 0 13b 4578c 22d';

interface Step {
  readonly title: string;
  /** Names of the tiles to give. */
  readonly give: readonly string[];
  /** What comes in, typed and by name. */
  readonly typed: string;
  readonly named: readonly string[];
}

const FIRST: readonly Step[] = [
  {
    title: 'Pass three to the right',
    give: ['north wind', 'white dragon', 'one bam'],
    typed: '9d 3c f',
    named: ['nine dot', 'three crak', 'flower'],
  },
  {
    title: 'Pass three across',
    give: ['nine dot', 'three bam', 'three crak'],
    typed: '6c 2d e',
    named: ['six crak', 'two dot', 'east wind'],
  },
  {
    title: 'Pass three to the left',
    give: ['east wind', 'four crak', 'eight crak'],
    typed: '6c 5c 1d',
    named: ['six crak', 'five crak', 'one dot'],
  },
];

const SECOND: readonly Step[] = [
  {
    title: 'Second round: pass three to the left',
    give: ['one dot', 'seven crak', 'flower'],
    typed: '2c 9b 9b',
    named: ['two crak', 'nine bam', 'nine bam'],
  },
  {
    title: 'Second round: pass three across',
    give: ['two crak', 'nine bam', 'nine bam'],
    typed: '6c 4d s',
    named: ['six crak', 'four dot', 'south wind'],
  },
];

const END = ['joker', 'flower', 'flower', 'five crak', 'five crak', 'six crak', 'six crak', 'six crak', 'two dot'];

/** How a person works the window. */
interface Hand {
  /** Puts a tile of the rack into the tray. */
  setAside(windrow: Windrow, name: string): Promise<void>;
  /** Presses a button by its words. */
  press(windrow: Windrow, button: string | RegExp): Promise<void>;
  /** Chooses one of a bar of choices. */
  choose(windrow: Windrow, group: string, value: string): Promise<void>;
  enterDeal(windrow: Windrow): Promise<void>;
  takeIn(windrow: Windrow, step: Step): Promise<void>;
}

function tile(page: Page, name: string): Locator {
  return page.locator(`wr-rack [role=option][aria-label^="${name}"]`).first();
}

async function dragTo(page: Page, from: Locator, to: Locator): Promise<void> {
  const start = await from.boundingBox();
  const end = await to.boundingBox();
  if (start === null || end === null) throw new Error('nothing there to drag');
  await page.mouse.move(start.x + start.width / 2, start.y + start.height / 2);
  await page.mouse.down();
  await page.mouse.move(start.x + start.width / 2 + 10, start.y + start.height / 2, { steps: 2 });
  await page.mouse.move(end.x + end.width / 2, end.y + end.height / 2, { steps: 6 });
  await page.mouse.up();
}

/** Everything by pointer, tiles by dragging. */
const dragging: Hand = {
  setAside: async ({ page }, name) => await dragTo(page, tile(page, name), page.locator('wr-slots')),
  press: async ({ page }, button) => await page.getByRole('button', { name: button }).click(),
  choose: async ({ page }, group, value) =>
    await page.getByRole('group', { name: group }).getByRole('radio', { name: value, exact: true }).click(),
  enterDeal: async ({ page }) => {
    await page.getByRole('radio', { name: 'South' }).click();
    for (const name of [
      'joker',
      'flower',
      'flower',
      'north wind',
      'white dragon',
      'one bam',
      'three bam',
      'four crak',
    ]) {
      await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
    }
    for (const name of ['five crak', 'seven crak', 'eight crak', 'two dot', 'two dot']) {
      await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
    }
    await page.getByRole('button', { name: 'That is my deal' }).click();
  },
  takeIn: async ({ page }, { named }) => {
    for (const name of named) await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
  },
};

/** Everything by single clicks, no drag. */
const clicking: Hand = {
  ...dragging,
  setAside: async ({ page }, name) => {
    await tile(page, name).click();
    await page.getByRole('button', { name: 'Set aside' }).click();
  },
};

/** Presses Tab until the focus is on something that answers to a description. */
async function tabTo(page: Page, wanted: (focused: string) => boolean, most = 60): Promise<void> {
  for (let presses = 0; presses <= most; presses += 1) {
    if (wanted(await focusedName(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came there; the focus is on "${await focusedName(page)}"`);
}

/** The innermost focused element as "role name". */
async function focusedName(page: Page): Promise<string> {
  return await page.evaluate(() => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
    const host = element?.getRootNode();
    const inside = element?.getAttribute('aria-label') ?? element?.textContent?.trim() ?? '';
    const outside = host instanceof ShadowRoot ? (host.host.textContent?.trim() ?? '') : '';
    const type =
      element instanceof HTMLInputElement ? `${element.type} ${element.parentElement?.textContent?.trim() ?? ''}` : '';
    return `${element?.localName} ${inside || outside} ${type}`.trim();
  });
}

/** Everything by keys: no pointer, and nothing focused but by Tab and arrows. */
const typing: Hand = {
  setAside: async ({ page }, name) => {
    await tabTo(page, (focused) => focused.startsWith('wr-tile'));
    await page.keyboard.press('Home');
    for (let steps = 0; !(await focusedName(page)).startsWith(`wr-tile ${name}`); steps += 1) {
      if (steps > 14) throw new Error(`the arrows never came to ${name}`);
      await page.keyboard.press('ArrowRight');
    }
    await page.keyboard.press('Enter');
  },
  press: async ({ page }, button) => {
    const fits = (focused: string): boolean =>
      focused.startsWith('button') &&
      (typeof button === 'string' ? focused.includes(button) : button.test(focused.slice(7)));
    await tabTo(page, fits);
    await page.keyboard.press('Enter');
  },
  choose: async ({ page }, group, value) => {
    await page.getByRole('group', { name: group }).getByRole('radio').first().waitFor();
    await tabTo(page, (focused) => focused.startsWith('input') && focused.includes('radio'));
    for (let steps = 0; steps < 4 && !(await focusedName(page)).endsWith(`radio ${value}`); steps += 1) {
      await page.keyboard.press('ArrowRight');
    }
  },
  enterDeal: async ({ page }) => {
    await tabTo(page, (focused) => focused.includes('radio'));
    await page.keyboard.press('ArrowRight');
    await tabTo(page, (focused) => focused.startsWith('input') && focused.includes('text'));
    await page.keyboard.type(DEAL.toLowerCase());
    await page.keyboard.press('Enter');
  },
  takeIn: async ({ page }, { typed }) => {
    await tabTo(page, (focused) => focused.startsWith('input') && focused.includes('text'));
    await page.keyboard.type(typed);
    await page.keyboard.press('Enter');
  },
};

async function pass(windrow: Windrow, hand: Hand, step: Step): Promise<void> {
  await expect(windrow.page.getByRole('heading', { name: step.title })).toBeVisible();
  for (const name of step.give) await hand.setAside(windrow, name);
  await hand.press(windrow, 'Give 3 tiles');
  await hand.takeIn(windrow, step);
}

async function wholeExchange(windrow: Windrow, hand: Hand): Promise<void> {
  const { page } = windrow;
  await windrow.open();
  await hand.enterDeal(windrow);
  for (const step of FIRST) await pass(windrow, hand, step);
  await windrow.saved();
  await windrow.restart();
  for (const step of SECOND) await pass(windrow, hand, step);
  await expect(page.getByRole('heading', { name: 'Second round: pass three to the right' })).toBeVisible();
  for (const name of ['four dot', 'south wind', 'two dot']) await hand.setAside(windrow, name);
  await hand.press(windrow, 'Give 3 tiles');
  await hand.takeIn(windrow, {
    title: '',
    give: [],
    typed: 'g 8d 3b',
    named: ['green dragon', 'eight dot', 'three bam'],
  });
  await expect(page.getByRole('heading', { name: 'Courtesy pass with' })).toBeVisible();
  await hand.press(windrow, 'No courtesy pass');
  await expect(page.getByRole('heading', { name: 'What did Left (East) discard?' })).toBeVisible();
  const rack = await windrow.rack();
  expect(rack).toHaveLength(13);
  expect(rack).toEqual(expect.arrayContaining(END));
  await windrow.saved();
  await windrow.restart();
  expect(await windrow.rack()).toEqual(rack);
}

test.describe('a whole exchange, with a restart in between', () => {
  test.use({ weighs: 'when-asked' });
  test('by mouse, tiles dragged', async ({ windrow }) => await wholeExchange(windrow, dragging));
  test('CR-W1: by single clicks alone', async ({ windrow }) => await wholeExchange(windrow, clicking));
  test('CR-K1: by keys alone', async ({ windrow }) => await wholeExchange(windrow, typing));
});

test('the second round can be stopped before it starts, and undone', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  for (const step of FIRST) await pass(windrow, clicking, step);
  await page.getByRole('button', { name: 'Somebody stops here' }).click();
  await expect(page.getByRole('heading', { name: 'Courtesy pass with' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('heading', { name: 'Second round: pass three to the left' })).toBeVisible();
});

test("a player's own stop is logged as theirs, so that the look-back can judge it", async ({ windrow, page }) => {
  test.setTimeout(240_000);
  await windrow.open();
  await windrow.deal(DEAL);
  for (const step of FIRST) await pass(windrow, clicking, step);
  await page.getByRole('button', { name: 'Stop here', exact: true }).click({ timeout: 60_000 });
  await expect(page.getByRole('heading', { name: 'Courtesy pass with' })).toBeVisible();
  await windrow.saved();
  await windrow.go('Journal');
  await page.getByRole('link', { name: /^Look back at/ }).click();
  await storyTold(page);
  await openChoices(page);
  await page.getByText('All choices as a table').click();
  const round = page.getByRole('row').filter({ hasText: '4. A second round or not' });
  await expect(round).toContainText('to stop', { timeout: 120_000 });
});

test('a blind pass hands on tiles unseen, and as many fewer come in', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  for (const step of FIRST.slice(0, 2)) await pass(windrow, clicking, step);
  await clicking.choose(windrow, 'Blind pass', '2');
  await clicking.setAside(windrow, 'east wind');
  await page.getByRole('button', { name: 'Give 1 and 2 blind' }).click();
  await expect(page.getByText('0 of 1 entered')).toBeVisible();
  await page.getByRole('button', { name: /^six crak/ }).click();
  await expect(page.getByRole('heading', { name: 'Second round: pass three to the left' })).toBeVisible();
  expect(await windrow.rack()).toHaveLength(13);
});

test('a choice with tiles handed on unseen is laid in the tray as a whole, and can be taken back', async ({
  windrow,
  page,
}) => {
  test.setTimeout(120_000);
  await windrow.open();
  await windrow.deal(DEAL);
  for (const step of FIRST.slice(0, 2)) await pass(windrow, clicking, step);
  await page.getByRole('button', { name: /and 2 blind: .*Lay it into the tray$/ }).click({ timeout: 60_000 });
  await expect(page.getByRole('button', { name: 'Give 1 and 2 blind', exact: true })).toBeEnabled();
  await expect(page.getByRole('radio', { name: '2', exact: true })).toBeChecked();
  await clicking.choose(windrow, 'Blind pass', 'None');
  await expect(page.getByRole('button', { name: 'Give 3 tiles' })).toBeVisible();
  await expect(page.getByText('Choose 2 more')).toBeVisible();
});

test('in the courtesy the smaller number counts', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  for (const step of FIRST) await pass(windrow, clicking, step);
  await page.getByRole('button', { name: 'Somebody stops here' }).click();
  await clicking.choose(windrow, 'You ask for', '3');
  await clicking.choose(windrow, 'Across asks for', '1');
  await expect(page.getByRole('button', { name: 'Give 1 tile' })).toBeVisible();
  await clicking.setAside(windrow, 'one dot');
  await page.getByRole('button', { name: 'Give 1 tile' }).click();
  await page.getByRole('button', { name: /^six crak/ }).click();
  await expect(page.getByRole('heading', { name: 'What did Left (East) discard?' })).toBeVisible();
});

test('a joker is never passed: it stays in the rack, and the window says why', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await dragTo(page, tile(page, 'joker'), page.locator('wr-slots'));
  expect(await windrow.rack()).toHaveLength(13);
  await expect(page.locator('#announcer')).toContainText('joker');
});

test('a tile that cannot come in is refused beside the field, and what was typed stays', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal('J FF N 0 13b 478c 222d');
  for (const name of ['north wind', 'white dragon', 'one bam']) await clicking.setAside(windrow, name);
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  const field = page.getByLabel('Type it, or click it');
  await field.fill('22d');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/The set has only 4 two dots/).first()).toBeVisible();
  await expect(field).toHaveValue('22d');
  await expect(page.getByText('0 of 3 entered')).toBeVisible();
  await field.fill('9d');
  await page.keyboard.press('Enter');
  await field.fill('3b 3b 3b');
  await page.keyboard.press('Enter');
  await expect(page.getByText('These are three tiles, but only two are still to come.')).toBeVisible();
  await expect(field).toHaveValue('3b 3b 3b');
  await expect(page.getByText('1 of 3 entered')).toBeVisible();
});
