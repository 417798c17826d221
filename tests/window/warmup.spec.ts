import { itemOfDeal } from '../../core/warmup/item.ts';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { answerProblem, answerShown, clickTiles, dealByCode, openWarmUp } from './warmup-helpers.ts';
import { expect, test } from './windrow.ts';

const DEAL = { seed: 7, tiles: 13, kind: 'any' } as const;
const CODE = formatDealCode(DEAL);
/** Here the last three tiles of the arranged rack are a costly pass. */
const COSTLY = formatDealCode({ ...DEAL, seed: 3 });

/** What the look ahead says of a choice: an interval, or that nothing was uncertain. */
const INTERVAL = /give or take|came out the same every time/;

function names(rack: string): string[] {
  const list = parseTileList(rack);
  return list.ok ? list.value.map(nameOf) : [];
}

test('a code deals the same tiles as everywhere, and the clock shows only for those who want it', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  await dealByCode(page, CODE.toLowerCase());
  expect([...(await windrow.rack())].sort()).toEqual(names(itemOfDeal(DEAL).rack).sort());
  await expect(page.getByRole('timer')).toHaveCount(0);
  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByRole('button', { name: 'Show a clock' }).click();
  await page.getByRole('button', { name: 'Deal', exact: true }).click();
  await expect(page.getByRole('timer')).toBeVisible();
});

test('a code with a slip is caught with a sentence', async ({ windrow, page }) => {
  await openWarmUp(windrow);
  await page.getByLabel('Code').fill(`${CODE.slice(0, -1)}${CODE.endsWith('Z') ? 'Y' : 'Z'}`);
  await page.getByRole('button', { name: 'Deal this one' }).click();
  await expect(page.getByText('This code has a slip')).toBeVisible();
});

test('CR-R1, CR-R2: nothing is told before the answer is given; then verdict, cost, reasons, what is as good', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  const telling = page.locator('wr-hand, wr-lean, wr-warm-up-answer, wr-tile[mark]');
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  expect(await windrow.rack()).toEqual(names(itemOfDeal(DEAL).rack));
  for (const heading of ['Which sections do you aim at?', 'Which tiles do you keep?', 'Which three do you give?']) {
    await expect(telling).toHaveCount(0);
    await page.getByRole('button', { name: 'Go on' }).click();
    await expect(page.getByRole('heading', { name: heading })).toBeFocused();
  }
  await expect(page.getByRole('button', { name: 'Give 3 tiles' })).toHaveAttribute('aria-disabled', 'true');
  await clickTiles(page, [12, 11, 10]);
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await expect(telling).toHaveCount(0);
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
  await expect(
    page.getByText(/For now it costs (nothing|\d+ games? in 100|under 1 game in 100), counted in full/),
  ).toBeVisible();
  await expect(page.getByRole('heading', { name: 'As good as the best', level: 3 })).toBeVisible();
  await expect(page.locator('.reasons li').first()).toBeVisible();
  await expect(page.locator('wr-rack wr-tile[mark]')).toHaveCount(13);
});

test('the whole exchange by mouse, the others playing, with a ledger that adds up', async ({ windrow, page }) => {
  test.setTimeout(150_000);
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  await answerProblem(page);
  for (let pass = 0; pass < 8; pass += 1) {
    await page.getByRole('button', { name: /^Play on/ }).click();
    const question = page.getByRole('heading', { name: /Which three do you give|How many would you exchange/ });
    const ledger = page.getByRole('heading', { name: 'The exchange in figures' });
    await expect(question.or(ledger)).toBeVisible();
    if (await ledger.isVisible()) break;
    expect(await windrow.rack()).toHaveLength(13);
    const courtesy = await page.getByText('How many would you exchange').isVisible();
    await clickTiles(page, courtesy ? [12] : [12, 11, 10]);
    await page.getByRole('button', { name: courtesy ? 'Give 1 tile' : 'Give 3 tiles' }).click();
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await answerShown(page);
    // CR-G2: every decision has its cost by the end of the exchange, with an interval.
    await expect(page.locator('[data-ahead]')).toHaveText(INTERVAL, { timeout: 60_000 });
  }
  const cells = page.locator('table[data-ledger] td');
  await expect(cells.first()).toBeVisible({ timeout: 30_000 });
  const amounts = (await cells.allTextContents()).map((text) => Number(text.replace('−', '-')));
  const end = amounts.pop() ?? Number.NaN;
  expect(Math.abs(amounts.reduce((sum, next) => sum + next, 0) - end)).toBeLessThan(0.05 * amounts.length + 0.05);
});

test('CR-R1, CR-R2: to stop before the second round is asked, answered with its interval, and played on', async ({
  windrow,
  page,
}) => {
  test.setTimeout(150_000);
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  await answerProblem(page);
  for (const pass of ['Pass across', 'Pass left', 'Pass left again']) {
    await page.getByRole('button', { name: /^Play on/ }).click();
    await expect(page.locator('wr-warm-up-run').getByText(pass, { exact: true })).toBeVisible();
    if (pass === 'Pass left again') break;
    await clickTiles(page, [12, 11, 10]);
    await page.getByRole('button', { name: 'Give 3 tiles' }).click();
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await answerShown(page);
  }
  await page.getByRole('button', { name: 'Stop before the second round' }).click();
  await expect(page.getByRole('heading', { name: 'Why do you stop?' })).toBeFocused();
  await expect(page.locator('wr-warm-up-answer')).toHaveCount(0);
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await expect(page.getByText('You stopped before the second round.')).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('[data-ahead]')).toHaveText(INTERVAL);
  await page.getByRole('button', { name: /^Play on/ }).click();
  await expect(page.getByRole('heading', { name: /How many would you exchange/ })).toBeFocused();
});

test('CR-K1: one decision from the deal to the answer with the keyboard alone', async ({ windrow, page }) => {
  await openWarmUp(windrow);
  const press = async (key: string, times = 1): Promise<void> => {
    for (let time = 0; time < times; time += 1) await page.keyboard.press(key);
  };
  await page.getByLabel('Code').focus();
  await page.keyboard.type(CODE);
  await press('Enter');
  const asked = page.locator('.asked');
  await expect(asked).toBeFocused();
  // From the question: Tab to what it offers.
  await press('Tab', 2);
  await press('Enter');
  await expect(page.getByRole('heading', { name: 'Which sections do you aim at?' })).toBeFocused();
  await press('Tab');
  await press('Space');
  await expect(page.locator('wr-button[aria-pressed=true], button[aria-pressed=true]').first()).toBeVisible();
  await page.getByRole('button', { name: 'Go on' }).focus();
  await press('Enter');
  await expect(page.getByRole('heading', { name: 'Which tiles do you keep?' })).toBeFocused();
  await press('Tab');
  await press('Enter');
  await expect(page.getByRole('heading', { name: 'Which three do you give?' })).toBeFocused();
  await press('Shift+Tab');
  await expect(page.locator('wr-rack [role=option]:focus')).toHaveCount(1);
  await press('End');
  await press('Space');
  await press('ArrowLeft');
  await press('Space');
  await press('ArrowLeft');
  await press('Space');
  await expect(page.getByText('3 of 3 chosen')).toBeVisible();
  await press('Tab');
  await press('Enter');
  await press('Tab');
  await page.keyboard.type('no use');
  await press('Tab');
  await press('Enter');
  await answerShown(page);
  await expect(page.getByText('no use')).toBeVisible();
});

test('CR-R5, CR-R7: a costly choice is kept, comes back the next day, and counts only then, with its interval', async ({
  windrow,
  page,
}) => {
  await page.clock.install({ time: new Date('2026-11-25T10:00:00Z') });
  await openWarmUp(windrow);
  await dealByCode(page, COSTLY);
  await answerProblem(page);
  await expect(page.getByRole('heading', { name: /^About \d+ games in 100$/ })).toBeVisible();
  await page.getByRole('tab', { name: 'Progress' }).click();
  await expect(page.getByText('Nothing to show yet')).toBeVisible();
  await expect(page.getByRole('rowheader', { name: /First pass/ })).toBeVisible();
  await page.getByRole('tab', { name: 'Practise' }).click();
  await page.getByRole('button', { name: 'Leave' }).click();
  await expect(page.getByText('No own decision is due today')).toBeVisible();
  await page.clock.setFixedTime(new Date('2026-11-26T10:00:00Z'));
  await windrow.restart();
  await windrow.go('Warm-up');
  await expect(page.getByText('1 own decision comes back today, dealt anew')).toBeVisible();
  await page.getByRole('button', { name: 'Start today’s practice' }).click();
  await expect(page.getByText('Problem 1 of 1')).toBeVisible({ timeout: 30_000 });
  await answerProblem(page);
  await page.getByRole('tab', { name: 'Progress' }).click();
  await expect(page.getByText(/[01] of 1 right/).first()).toBeVisible();
  await expect(page.getByText(/The true share is most likely between \d+ % and \d+ %\./)).toBeVisible();
  await expect(page.getByText('No change is stated on fewer than 30 answers.')).toBeVisible();
});

test('guesses are asked before the truth is shown, and calibrated after', async ({ windrow, page }) => {
  await openWarmUp(windrow);
  await page.getByRole('tab', { name: 'Guess' }).click();
  await page.getByRole('button', { name: 'Deal', exact: true }).click();
  await page.getByLabel('How many tiles away is the nearest hand?').fill('7');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page.getByText('Answer all three, and how sure you are.')).toBeVisible();
  await expect(page.locator('wr-lean')).toHaveCount(0);
  await page.getByLabel('Which section leads?').selectOption('Three Shores');
  await page.getByLabel('How many games of a hundred does the best hand win?').fill('120');
  for (const place of [0, 1, 2]) await page.getByRole('radio', { name: '70 %' }).nth(place).check({ force: true });
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page.getByText('Games of a hundred are a number from 0 to 100.')).toBeVisible();
  await page.getByLabel('How many games of a hundred does the best hand win?').fill('6');
  await page.getByLabel('How many tiles away is the nearest hand?').fill('2.5');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page.getByText('Tiles away are a whole number from 0 to 14.')).toBeVisible();
  await expect(page.locator('wr-lean')).toHaveCount(0);
  await page.getByLabel('How many tiles away is the nearest hand?').fill('7');
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page.locator('wr-lean')).toBeVisible();
  await expect(page.getByText(/The nearest hand is \d+ away\./)).toBeVisible();
  await page.getByRole('tab', { name: 'Progress' }).click();
  await expect(page.getByText(/Your score is [\d.]+\. 0 is perfect/)).toBeVisible();
  await expect(page.getByRole('row', { name: /^All 70 %/ })).toBeVisible();
});

test('an address makes a problem of any decision, or puts it on a sheet; one that can’t be says so', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  const visit = async (hash: string): Promise<void> =>
    await page.evaluate((to) => void (window.location.hash = to), hash);
  await visit('#/warm-up?rack=FF N 0 113b 4578c 22d&gone=9d 9c 1c&step=across&seat=West');
  await expect(page.getByText('You are West, with 13 tiles.')).toBeVisible();
  await expect(page.getByText('Given away before')).toBeVisible();
  await visit(`#/warm-up?deal=${CODE}&goal=sheet`);
  await expect(page.getByRole('heading', { name: 'Problem 1', exact: true })).toBeVisible();
  await expect(page.getByText(CODE)).toBeVisible();
  await visit('#/warm-up?rack=FF N');
  await expect(page.getByText('South has 13 tiles, but these are 3.')).toBeVisible();
});
