import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { formatAnswerCode } from '../../core/warmup/answer-code.ts';
import { formatDealCode } from '../../core/warmup/deal-code.ts';
import { itemOfDeal, type WarmUpItem } from '../../core/warmup/item.ts';
import { readSheetFile } from '../../core/warmup/sheet-file.ts';
import type { Sheet } from '../../core/warmup/sheet.ts';
import { DEMO_TEXT } from '../warmup/demo.ts';
import { openWarmUp } from './warmup-helpers.ts';
import { expect, test, type Windrow } from './windrow.ts';

const { card } = expectValue(readCardFile(DEMO_TEXT));
/** J F R 1346b 3889c 26d, and another deal of South. */
const [FIRST, SECOND, ELSEWHERE] = [1, 20_261_125, 72].map((seed) => itemOfDeal({ seed, tiles: 13, kind: 'any' })) as [
  WarmUpItem,
  WarmUpItem,
  WarmUpItem,
];

function code(item: WarmUpItem, give: string, keeps: string, aim: string): string {
  return formatAnswerCode(item, { aims: aim === '' ? [] : [aim], keeps, give, blind: 0, stops: false }, card);
}

async function keptSheet(windrow: Windrow): Promise<Sheet> {
  await expect(windrow.page.locator('[data-sheet-saved=saved]')).toBeVisible();
  const folder = join(windrow.folder, 'practice', 'sheets');
  const [name] = (await readdir(folder)).filter((each) => each.endsWith('.sheet.json'));
  return expectValue(readSheetFile(await readFile(join(folder, name ?? ''), 'utf8')));
}

async function addByCode(page: Page, item: WarmUpItem): Promise<void> {
  await page.getByRole('textbox', { name: 'Code of a deal' }).fill(item.code ?? '');
  await page.getByRole('button', { name: 'Add: Code of a deal' }).click();
}

test('a class of twelve, typed and pasted: five bad ones with a sentence each, the others side by side', async ({
  windrow,
  page,
}) => {
  test.setTimeout(180_000);
  await openWarmUp(windrow);
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await page.getByRole('button', { name: 'A new sheet' }).click();
  await addByCode(page, FIRST);
  await addByCode(page, SECOND);
  const own = page.getByRole('region', { name: 'Problem 1' });
  await own.getByText('Answers of the class').click();

  // Four people answered in the room.
  const type = async (give: string, keeps: string, aim: string, people: number): Promise<void> => {
    await own.getByLabel('Tiles given').fill(give);
    await own.getByLabel('Tiles kept, if said').fill(keeps);
    await own.getByLabel('Aimed at').selectOption({ label: aim });
    await own.getByLabel('People').fill(String(people));
    await own.getByRole('button', { name: 'Add', exact: true }).click();
  };
  await type('2d 6d 9d', 'J F', 'One Shore', 1);
  await expect(page.getByText('This rack is short of nine dot: type tiles that it holds.')).toBeVisible();
  await expect(own.getByLabel('Tiles kept, if said')).toHaveValue('J F');
  await type('26d 9c', 'J 1346b', 'One Shore', 3);
  await type('26d R', 'J F 1346b', 'Two Shores', 1);

  // Eight answered at home, one of them another problem; four codes are bad, and one came twice.
  const good = [
    code(FIRST, '26d R', 'J 1346b', 'section:One Shore'),
    code(FIRST, '26d 3c', 'J 1346b', 'line:one-shore-1'),
    code(FIRST, '26d R', 'J 146b', 'section:One Shore'),
    code(FIRST, '146b', 'J F 88c', 'section:Two Shores'),
    code(FIRST, '13b R', 'J F 88c', 'section:Two Shores'),
    code(FIRST, '46b R', 'J F', 'section:Two Shores'),
    code(FIRST, '26d 1b', 'J', ''),
    code(SECOND, '2c 6c 3d', 'J F', 'section:Weather'),
  ];
  const [one, two] = good as [string, string];
  const slip = `${one.startsWith('2') ? '3' : '2'}${one.slice(1)}`;
  const bad = [
    slip,
    two.slice(0, 9),
    code(ELSEWHERE, giveOf(ELSEWHERE), '', ''),
    formatDealCode({ seed: 5, tiles: 13, kind: 'any' }),
  ];
  const text = [good.slice(0, 4).join('\n'), ...bad, good.slice(4).join(', '), two].join('\n');
  await own.getByLabel('Codes of the class').fill(text);
  await own.getByRole('button', { name: 'Count them' }).click();
  await expect(page.getByText('8 answers are counted: 7 at problem 1, 1 at problem 2.')).toBeVisible();
  const told = page.locator('wr-answer-codes li .bad');
  await expect(told).toHaveText([
    'This code has a slip: a sign is wrong, or two are exchanged. Compare it again.',
    'An answer’s code has 10 signs, but this one has 7: it is cut short.',
    'This is an answer to another deal, or on another card: no problem here fits it.',
    'This is the code of a deal: ask for the code that stands under the answer.',
  ]);
  await expect(own.getByLabel('Codes of the class')).toHaveValue(bad.join('\n'));
  await expect(page.getByText('The same answer is counted already.')).toBeVisible();
  await page.getByRole('button', { name: `Count ${two} again` }).click();
  await expect(page.getByText('The same answer is counted already.')).toHaveCount(0);

  // The class beside itself: twelve at the first problem.
  const all = page.locator('wr-class-answers').first();
  await expect(all.getByText(/^\d+ of 12 made a choice that nothing beats\.$/)).toBeVisible({ timeout: 120_000 });
  await expect(all.getByText('One Shore: 7')).toBeVisible();
  await expect(all.getByText('Two Shores: 4')).toBeVisible();
  await expect(all.getByText('Not said: 1')).toBeVisible();
  await expect(all.locator('.schools')).toHaveText(
    '7 keep the one bam and the four bam and aim at One Shore; 4 keep the flower and aim at Two Shores. 1 thinks otherwise.',
  );
  await expect(all.getByText('12 of 12', { exact: true })).toBeVisible();
  const sheet = await keptSheet(windrow);
  expect(sheet.problems.map(({ answers }) => answers.reduce((sum, { people }) => sum + people, 0))).toEqual([12, 1]);

  // One less, and back again; a mended code counts.
  await all
    .getByRole('button', { name: /^One less for/ })
    .first()
    .click();
  await expect(all.getByText(/^\d+ of 11 made/)).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(all.getByText(/^\d+ of 12 made/)).toBeVisible({ timeout: 60_000 });
  expect((await keptSheet(windrow)).problems.map(({ answers }) => answers)).toEqual(
    sheet.problems.map(({ answers }) => answers),
  );
});

/** The last three tiles of a rack that may be given, as text. */
function giveOf({ rack }: WarmUpItem): string {
  const last = /(\d+)([bcd])$/.exec(rack);
  const [numbers = '', suit = ''] = last?.slice(1) ?? [];
  if (numbers.length < 3) throw new Error(`${rack} does not end on three tiles of a suit`);
  return `${numbers.slice(-3)}${suit}`;
}
