import type { Page } from '@playwright/test';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { itemOfDeal } from '../../core/warmup/item.ts';
import { kindsOf, parseTileList } from '../../core/tiles/text.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { windrowAlone as command } from '../cli/run-windrow.ts';
import { answerByKeys, answerShown, chooseTap, clickTiles, dealByCode, openWarmUp } from './warmup-helpers.ts';
import { expect, test, type Windrow } from './windrow.ts';

/** The places of tiles that may be given, the last ones first. */
async function lastThree(windrow: Windrow): Promise<number[]> {
  const rack = await windrow.rack();
  return rack.flatMap((name, place) => (name === 'joker' ? [] : [place])).slice(-3);
}

/** Answers by the mouse: two tiles kept, a line aimed at, three given. */
async function answerByMouse(windrow: Windrow, page: Page): Promise<void> {
  await page.locator('wr-card-at-hand .aim').nth(3).click();
  await chooseTap(page, 'keeps it');
  await clickTiles(page, [0, 1]);
  await chooseTap(page, 'gives it');
  await clickTiles(page, await lastThree(windrow));
  await page.getByRole('button', { name: 'Show the answer' }).click();
}

test('a practice of twelve: by mouse, by keys and at 700 px; then its list, its sum, and any answer again', async ({
  windrow,
  page,
}) => {
  test.setTimeout(300_000);
  await page.setViewportSize({ width: 1024, height: 700 });
  await openWarmUp(windrow);
  await page.getByRole('button', { name: 'Start today’s practice' }).click();
  const sizes: number[] = [];
  for (let problem = 1; problem <= 12; problem += 1) {
    await expect(page.getByRole('heading', { name: `Problem ${problem} of 12` })).toBeVisible({ timeout: 60_000 });
    if (problem === 9) await page.setViewportSize({ width: 700, height: 800 });
    sizes.push((await windrow.rack()).length);
    if (problem === 4) {
      await page.getByRole('button', { name: 'Skip' }).click();
      continue;
    }
    if (problem <= 4 || problem > 8) await answerByMouse(windrow, page);
    else await answerByKeys(page);
    await answerShown(page);
    if (problem === 6) {
      await page.getByRole('button', { name: 'Back', exact: true }).click();
      await expect(page.getByRole('heading', { name: 'Problem 5 of 12' })).toBeVisible();
      await answerShown(page);
      await page.getByRole('button', { name: 'Next problem' }).first().click();
      await expect(page.getByRole('heading', { name: 'Problem 6 of 12' })).toBeVisible();
    }
    await page.getByRole('button', { name: 'Next problem' }).first().click();
  }
  // Thirteen and fourteen tiles take turns.
  expect(sizes).toEqual([13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14]);
  const summary = page.locator('wr-practice-summary');
  await expect(summary.getByRole('heading', { name: 'Your practice' })).toBeFocused({ timeout: 30_000 });
  await expect(
    summary.getByText(/^You answered 11 problems(\. You gave up .* at each, \d+ in all\.| and gave up nothing)/),
  ).toBeVisible();
  const all = summary.locator('ol').last().locator('li');
  await expect(all).toHaveCount(11);
  await expect(summary.getByText(/Work on .*: \d+ decisions? there gave up|Nothing here needs work/)).toBeVisible();
  const cost = (await all.nth(10).locator('.cost').textContent())?.trim() ?? '';
  await all.nth(10).getByRole('button', { name: 'Open the answer to problem 11' }).click();
  await expect(page.getByRole('heading', { name: 'The answer', exact: true })).toBeVisible();
  await answerShown(page);
  await expect(page.getByText('This is an answer that you gave before.')).toBeVisible();
  await expect(page.locator('[data-ahead] h2')).toHaveText(
    cost === 'nothing' ? /^Yours is (the best pass|as good as the best)\.$/ : `Yours gives up ${cost}.`,
  );
  await page.getByRole('button', { name: 'Leave' }).last().click();
  // On another day it is still there.
  await windrow.restart();
  await windrow.go('Warm-up');
  await page.getByRole('tab', { name: 'Progress' }).click();
  await page
    .getByRole('button', { name: /^Open the practice of/ })
    .first()
    .click();
  await expect(page.locator('wr-practice-summary ol').last().locator('li')).toHaveCount(11);
  await page.getByRole('button', { name: 'Open the answer to problem 1', exact: true }).last().click();
  await answerShown(page);
});

test('a pupil answers a deal by its code, sends a code back, and the teacher counts it', async ({ windrow, page }) => {
  await openWarmUp(windrow);
  const code = formatDealCode({ seed: 3, tiles: 13, kind: 'any' });
  await dealByCode(page, code);
  await answerByMouse(windrow, page);
  await answerShown(page);
  const answer = (await page.locator('wr-answer-code .code').textContent()) ?? '';
  expect(answer.replaceAll('-', '')).toHaveLength(10);
  await page.getByRole('button', { name: 'Leave' }).click();
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await page.getByRole('button', { name: 'A new sheet' }).click();
  await page.getByRole('textbox', { name: 'Code of a deal' }).fill(code);
  await page.getByRole('button', { name: 'Add: Code of a deal' }).click();
  await page.getByText('Answers of the class').first().click();
  await page.getByLabel('Codes of the class').fill(`${answer}\n${answer.slice(0, -1)}`);
  await page.getByRole('button', { name: 'Count them' }).click();
  await expect(page.getByText(/^1 answer is counted/)).toBeVisible();
  await expect(page.getByText('1 code was not counted')).toBeVisible();
});

interface Advised {
  readonly give: readonly string[];
  readonly verdict: string;
  readonly costs: number;
}

test('a practice answer says the same as the Table and the command of the same deal', async ({ windrow, page }) => {
  test.setTimeout(120_000);
  const deal = { seed: 3, tiles: 13, kind: 'any' } as const;
  const { rack } = itemOfDeal(deal);
  const ran = await command(['pass', '--rack', rack, '--advice', '--json']);
  const advised: readonly Advised[] = JSON.parse(ran.out).options;
  await openWarmUp(windrow);
  await dealByCode(page, formatDealCode(deal));
  const given = advised.at(-1)?.give ?? [];
  await page.getByRole('button', { name: 'Arrange for me' }).click();
  const names = await windrow.rack();
  const wanted = given.map((code) => nameOf(kindsOf(code)[0] as never));
  await clickTiles(page, placesOf(names, wanted));
  await page.getByRole('button', { name: 'Show the answer' }).click();
  await answerShown(page);
  const practised = await rowsOf(page.locator('wr-warm-up-answer .pass'));
  const said = (await page.getByText(/^Before this pass you would win/).textContent()) ?? '';
  // The command: the same passes in the same order, with the same verdicts and costs.
  expect(practised.map(({ tiles }) => tiles)).toEqual(advised.map(({ give }) => tileNamesOf(give)));
  expect(practised.map(({ words }) => words)).toEqual(advised.map(wordsOf));
  // The Table.
  await windrow.go('Table');
  await windrow.deal(rack);
  await expect(page.locator('wr-give-panel .said strong')).toHaveText(/^(The best choice|As good as any)/, {
    timeout: 30_000,
  });
  const offered = await page
    .locator('wr-slots .offer')
    .evaluateAll((slots) => slots.map((slot) => slot.getAttribute('aria-label') ?? ''));
  const listed = await rowsOf(page.locator('wr-plan-panel .list li:not(.filler) .row'));
  expect(offered.map((label) => label.replace(/,? ?(offered|place).*$/i, '').replace(/^offered: /i, ''))).toHaveLength(
    3,
  );
  expect(listed.map(({ tiles }) => tiles)).toEqual(practised.slice(1).map(({ tiles }) => tiles));
  expect(listed.map(({ words }) => words.replace(/^about /, ''))).toEqual(practised.slice(1).map(({ words }) => words));
  const chance = (await page.locator('wr-give-panel .chance').getByRole('button').first().textContent()) ?? '';
  expect(/\d+/.exec(said)?.[0]).toBe(/\d+/.exec(chance)?.[0]);
});

/** The rows of a list of passes: the tiles by name, and what is said of them. */
async function rowsOf(
  rows: ReturnType<Page['locator']>,
): Promise<{ readonly tiles: string; readonly words: string }[]> {
  return await rows.evaluateAll((all) =>
    all.map((row) => ({
      tiles: row.querySelector('.tiles')?.getAttribute('aria-label') ?? '',
      words: (row.querySelector('.name + span strong') ?? row.querySelector('.name + span'))?.textContent?.trim() ?? '',
    })),
  );
}

function tileNamesOf(give: readonly string[]): string {
  const list = parseTileList(give.join(' '));
  return list.ok ? list.value.map(nameOf).join(', ') : '';
}

function wordsOf({ verdict, costs }: Advised): string {
  if (verdict === 'best') return 'best';
  return verdict === 'as good' ? 'as good' : `${costs < 1 ? 'under 1' : costs} in 100 behind`;
}

/** Where tiles with these names lie, each place once. */
function placesOf(rack: readonly string[], names: readonly string[]): number[] {
  const places: number[] = [];
  for (const name of names) places.push(rack.findIndex((each, place) => each === name && !places.includes(place)));
  return places;
}
