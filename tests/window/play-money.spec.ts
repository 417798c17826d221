import type { Page } from '@playwright/test';
import { choose, tableRows } from './play.ts';
import { expect, test } from './windrow.ts';

/** Writes into a field and leaves it. */
async function write(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
}

async function winOf(page: Page, winner: string, points: string): Promise<void> {
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Who won?', winner);
  await choose(page, 'How?', 'By own draw');
  await page.getByLabel('Points', { exact: true }).fill(points);
  await choose(page, 'Jokers in it?', 'Without jokers');
  await page.getByRole('button', { name: 'Enter the result' }).click();
}

/** What each seat gains, from East to North. */
async function gains(page: Page): Promise<string[]> {
  return (await tableRows(page, 'Who pays what')).map((row) => row[1] ?? '');
}

// Worked by hand: own draw doubles, no jokers double again.
test('every rule of payment is a setting: points, multiples, a fixed stake, a limit, no money', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.go('Settings');
  await expect(page.getByText('If you play for stakes, follow local law').first()).toBeVisible();
  // The example: 25 by discard.
  expect(await gains(page)).toEqual(['−25', '+100', '−50', '−25']);
  await write(page, 'The discarder pays, times', '4');
  await write(page, 'The others pay, times', '0');
  await expect.poll(async () => await gains(page)).toEqual(['0', '+100', '−100', '0']);
  await choose(page, 'What is paid', 'A fixed stake');
  await write(page, 'Stake of a win', '10');
  await expect.poll(async () => await gains(page)).toEqual(['0', '+40', '−40', '0']);
  await write(page, 'The most that one player pays', '15');
  await expect.poll(async () => await gains(page)).toEqual(['0', '+15', '−15', '0']);
  await write(page, 'The most that one player pays', 'all');
  await expect(page.getByText('Write a number from 0 to 1000000.')).toBeVisible();
  await write(page, 'The most that one player pays', '15');

  // The stake of 10 would be 40 by own draw without jokers, but nobody pays more than 15.
  await windrow.go('Table');
  await winOf(page, 'North', '50');
  expect(await gains(page)).toEqual(['−15', '−15', '−15', '+45']);
  await windrow.saved();
  await windrow.restart();
  expect(await gains(page)).toEqual(['−15', '−15', '−15', '+45']);
});

test('a game keeps the rules that it began with, until it is given those of the Settings', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await winOf(page, 'East', '30');
  // 30, own draw doubles, no jokers double: 120 from each.
  expect(await gains(page)).toEqual(['+360', '−120', '−120', '−120']);
  await windrow.go('Settings');
  await choose(page, 'What is paid', 'No money');
  await windrow.go('Table');
  expect(await gains(page)).toEqual(['+360', '−120', '−120', '−120']);
  await page.getByText('Rules of payment').click();
  await expect(page.getByText('follow local law')).toBeVisible();
  await page.getByRole('button', { name: 'Use the rules of the Settings' }).click();
  await expect.poll(async () => await gains(page)).toEqual(['0', '0', '0', '0']);
  await expect(page.getByText('Nobody pays.').first()).toBeVisible();
});
