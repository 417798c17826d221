import { itemOfDeal } from '../../core/warmup/item.ts';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import {
  answerByKeys,
  answerProblem,
  answerShown,
  chooseTap,
  clickTiles,
  dealByCode,
  openWarmUp,
} from './warmup-helpers.ts';
import { expect, test } from './windrow.ts';

const DEAL = { seed: 7, tiles: 13, kind: 'any' } as const;
const CODE = formatDealCode(DEAL);
/** Here the last three tiles of the arranged rack are a costly pass. */
const COSTLY = formatDealCode({ ...DEAL, seed: 3 });

/** A deal whose rack holds a joker. */
const WITH_JOKER = formatDealCode({ ...DEAL, kind: 'one-joker', seed: 7 });

/** What is said of a choice. */
const VERDICT = /^Yours (is the best pass|is as good as the best|gives up (under 1|\d+) games? in 100)\.$/;

function names(rack: string): string[] {
  const list = parseTileList(rack);
  return list.ok ? list.value.map(nameOf) : [];
}

/** The places of three tiles that may be given. */
function passable(rack: readonly string[]): number[] {
  return rack.flatMap((name, place) => (name === 'joker' ? [] : [place])).slice(0, 3);
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

test('CR-R1, CR-R2: nothing is told before the answer is given; then the verdict, why, and what is as good', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  const telling = page.locator('wr-hand, wr-lean, wr-warm-up-answer, wr-tile[mark]');
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  expect(await windrow.rack()).toEqual(names(itemOfDeal(DEAL).rack));
  await expect(page.getByRole('button', { name: 'Show the answer' })).toHaveAttribute('aria-disabled', 'true');
  await clickTiles(page, [12, 11, 10]);
  await expect(telling).toHaveCount(0);
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
  await expect(page.locator('[data-ahead] h2')).toHaveText(VERDICT);
  await expect(page.locator('[data-ahead] h2')).toBeFocused();
  await expect(page.locator('wr-rack wr-tile[mark]')).toHaveCount(13);
  await expect(page.getByText('given in the best pass')).toBeVisible();
  await expect(page.locator('wr-warm-up-answer').getByText('yours', { exact: true })).toHaveCount(1);
  for (const heading of ['The rack', 'Goes', 'Stays', 'Where you read it differently']) {
    await expect(page.getByRole('heading', { name: heading, level: 3 })).toBeVisible();
  }
  await expect(page.locator('wr-lean')).toBeHidden();
  await page.getByText('Explain more').click();
  await expect(page.locator('wr-lean')).toBeVisible();
});

test('only the pass: one tap a tile and one to see the answer, and no triangle in the way', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  await expect(page.getByRole('heading', { name: 'Problem', exact: true })).toBeVisible();
  await expect(page.getByText(/Problem \d+ of/)).toHaveCount(0);
  const before = await windrow.rack();
  await page.evaluate(() =>
    document.addEventListener(
      'click',
      () => (document.body.dataset['clicks'] = `${Number(document.body.dataset['clicks'] ?? 0) + 1}`),
      true,
    ),
  );
  await clickTiles(page, passable(before));
  await expect(page.locator('wr-slots wr-tile')).toHaveCount(3);
  await expect(page.locator('wr-rack .picking')).toHaveCount(0);
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
  expect(await page.locator('body').getAttribute('data-clicks')).toBe('4');
  await page.getByRole('button', { name: 'Next problem' }).click();
  await expect(page.getByRole('heading', { name: 'What would you give?' })).toBeFocused({ timeout: 30_000 });
  await chooseTap(page, 'moves it');
  await page.locator('wr-rack [role=option]').first().click();
  await expect(page.locator('wr-rack .picking')).toHaveCount(1);
});

test('on a small screen a problem, and its answer, begin at their top', async ({ windrow, page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openWarmUp(windrow);
  await page.getByLabel('Code').scrollIntoViewIfNeeded();
  await dealByCode(page, CODE);
  const head = page.locator('wr-warm-up-run .top');
  await expect(head).toBeInViewport();
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  await clickTiles(page, [12, 11, 10]);
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
  await expect(head).toBeInViewport();
  await expect(page.locator('[data-ahead]')).toBeInViewport();
  // At the end of the answer one goes on from there.
  await page.getByText('All costs are estimates').scrollIntoViewIfNeeded();
  await page.getByRole('button', { name: 'Next problem' }).last().click();
  await expect(head).toBeInViewport({ timeout: 30_000 });
});

test('a joker stays, a fourth tile waits, and a tile in the tray goes back by a tap', async ({ windrow, page }) => {
  await openWarmUp(windrow);
  await dealByCode(page, WITH_JOKER);
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  const place = async (): Promise<unknown> => await page.getByRole('button', { name: 'Show the answer' }).boundingBox();
  const before = await place();
  await page.locator('wr-rack [role=option]').first().click();
  await expect(page.getByRole('alert').getByText('A joker is never passed')).toBeVisible();
  expect(await place()).toEqual(before);
  await clickTiles(page, [12, 11, 10]);
  await page.locator('wr-rack [role=option]').nth(9).click();
  await expect(page.getByText('Three tiles lie in the tray already')).toBeVisible();
  await page.locator('wr-slots [role=option]').first().click();
  await expect(page.locator('wr-slots wr-tile')).toHaveCount(2);
  await expect(page.getByText('Tap one more tile.')).toBeVisible();
});

test('the card is at hand: its lines, those near the rack on request, and what is aimed at comes into the answer', async ({
  windrow,
  page,
}) => {
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  const card = page.getByRole('region', { name: 'The card' });
  await expect(card.getByRole('button', { name: 'Three Shores', exact: true })).toBeVisible();
  expect(await card.locator('.aim:not(.section)').count()).toBeGreaterThan(30);
  await card.getByRole('button', { name: 'Only lines near this rack' }).click();
  await expect(card.locator('wr-hand').first()).toBeVisible();
  expect(await card.locator('.aim').count()).toBeLessThan(30);
  const line = card.locator('.aim').last();
  const name = (await line.locator('.text').textContent()) ?? '';
  await line.click();
  await expect(page.getByText(`You aim at ${name}.`)).toBeVisible();
  await chooseTap(page, 'keeps it');
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  await clickTiles(page, [0, 1]);
  await expect(page.getByText('2 tiles kept.')).toBeVisible();
  await chooseTap(page, 'gives it');
  await clickTiles(page, [12, 11, 10]);
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
  await expect(page.getByText(new RegExp(`You aim at ${name}`))).toBeVisible();
  await page.getByRole('button', { name: 'Show the card' }).click();
  await expect(card.locator('[aria-pressed=true].aim')).toHaveCount(1);
});

test('the whole exchange by mouse, the others playing, compared with Windrow’s passes on the same wall', async ({
  windrow,
  page,
}) => {
  test.setTimeout(240_000);
  await openWarmUp(windrow);
  await page.getByRole('button', { name: 'Start an exchange' }).click();
  await expect(page.getByRole('heading', { name: 'A whole exchange' })).toBeVisible();
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  const ended = page.getByRole('heading', { name: 'The exchange at its end' });
  for (let pass = 0; pass < 8; pass += 1) {
    const asked = page.getByRole('heading', { name: /What would you give|How many would you exchange/ });
    await expect(asked.or(ended)).toBeVisible();
    if (await ended.isVisible()) break;
    expect((await windrow.rack()).length).toBe(13);
    const courtesy = await page.getByText('How many would you exchange').isVisible();
    const last = (await windrow.rack()).length - 1;
    await clickTiles(page, courtesy ? [last] : [last, last - 1, last - 2]);
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await answerShown(page);
    await page.getByRole('button', { name: /^Play on/ }).click();
  }
  const cells = page.locator('table[data-ledger] td');
  await expect(cells.first()).toBeVisible({ timeout: 30_000 });
  const amounts = (await cells.allTextContents()).map((text) => Number(text.replace('−', '-')));
  const end = amounts.pop() ?? Number.NaN;
  expect(Math.abs(amounts.reduce((sum, next) => sum + next, 0) - end)).toBeLessThan(0.05 * amounts.length + 0.05);
  await expect(page.locator('[data-compared]')).toHaveText(/^On this wall /, { timeout: 90_000 });
  await expect(page.getByText(/^You would win about \d+ games? in 100\./)).toHaveCount(2);
});

test('CR-R1, CR-R2: to stop before the second round is asked, answered with its interval, and played on', async ({
  windrow,
  page,
}) => {
  test.setTimeout(150_000);
  await openWarmUp(windrow);
  await dealByCode(page, CODE);
  await answerProblem(page);
  for (const pass of ['first pass across', 'first pass to the left', 'second pass to the left']) {
    await page.getByRole('button', { name: /^Play on/ }).click();
    await expect(page.locator('wr-warm-up-run .head').getByText(pass)).toBeVisible();
    if (pass === 'second pass to the left') break;
    await clickTiles(page, [12, 11, 10]);
    await page.getByRole('button', { name: 'Show the answer' }).click();
    await answerShown(page);
  }
  await expect(page.locator('wr-warm-up-answer')).toHaveCount(0);
  await page.getByRole('button', { name: 'Stop before the second round' }).click();
  await expect(page.getByText('You stopped before the second round.')).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('[data-ahead] h2')).toHaveText(VERDICT);
  await page.getByRole('button', { name: /^Play on/ }).click();
  await expect(page.getByRole('heading', { name: /How many would you exchange/ })).toBeFocused();
});

test('CR-K1: one decision from the deal to the answer with the keyboard alone', async ({ windrow, page }) => {
  await openWarmUp(windrow);
  await page.getByLabel('Code').focus();
  await page.keyboard.type(CODE);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'What would you give?' })).toBeFocused();
  await answerByKeys(page);
  await answerShown(page);
  await expect(page.locator('[data-ahead] h2')).toBeFocused();
});

test('CR-R5, CR-R7: a costly choice is kept, comes back the next day, and counts only then, with its interval', async ({
  windrow,
  page,
}) => {
  await page.clock.install({ time: new Date('2026-11-25T10:00:00Z') });
  await openWarmUp(windrow);
  await dealByCode(page, COSTLY);
  await answerProblem(page);
  await expect(page.getByRole('heading', { name: /^Yours gives up \d+ games in 100\.$/ })).toBeVisible();
  await page.getByRole('button', { name: 'Leave' }).click();
  await expect(page.getByText('None of your own decisions comes back today')).toBeVisible();
  await page.getByRole('tab', { name: 'Progress' }).click();
  await expect(page.getByText('Nothing to show yet')).toBeVisible();
  await expect(page.getByRole('rowheader', { name: /First pass/ })).toBeVisible();
  await expect(page.getByText('tomorrow:').first()).toBeVisible();
  await expect(page.getByRole('row', { name: /November/ })).toHaveCount(1);
  await page.clock.setFixedTime(new Date('2026-11-26T10:00:00Z'));
  await windrow.restart();
  await windrow.go('Warm-up');
  await expect(page.getByText('1 of your own decisions comes back today, on new tiles')).toBeVisible();
  await page.getByRole('button', { name: 'Start today’s practice' }).click();
  await expect(page.getByText('Problem 1 of 1')).toBeVisible({ timeout: 30_000 });
  await answerProblem(page);
  await page.getByRole('button', { name: 'End', exact: true }).click();
  await page.getByRole('button', { name: 'See your progress' }).click();
  await expect(page.getByText(/[01] of 1 right/).first()).toBeVisible();
  await expect(page.getByText(/The true share is most likely between \d+ % and \d+ %\./)).toBeVisible();
  await expect(page.getByText('No change is stated on fewer than 30 answers.')).toBeVisible();
});

test('CR-R1: guesses are asked before the truth is shown, and calibrated after', async ({ windrow, page }) => {
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
  await expect(page.getByText('West, first pass across, with 13 tiles')).toBeVisible();
  await expect(page.getByText('Given away before')).toBeVisible();
  await visit(`#/warm-up?deal=${CODE}&goal=sheet`);
  await expect(page.getByRole('heading', { name: 'Problem 1', exact: true })).toBeVisible();
  await expect(page.getByText(CODE)).toBeVisible();
  await visit('#/warm-up?rack=FF N');
  await expect(page.getByText('South has 13 tiles, but these are 3.')).toBeVisible();
});
