import type { Page } from '@playwright/test';
import { seedDraws, seedOf } from '../seeded-draws.ts';
import { expect, test } from './windrow.ts';

const draws = async (page: Page): Promise<number[]> =>
  await page.evaluate(() => [...crypto.getRandomValues(new Uint32Array(3))]);

test('what the app draws for its questions is the same in every run, and other after a start', async ({
  windrow,
  page,
}, { title }) => {
  const wanted = [0, 1].map((turn) => {
    seedDraws({ seed: seedOf(title), turn });
    return [...crypto.getRandomValues(new Uint32Array(3))];
  });
  expect(wanted[0]).not.toEqual(wanted[1]);
  await windrow.open();
  const first = await page.evaluate(() => crypto.randomUUID());
  expect(await draws(page)).toEqual(wanted[0]);
  expect(await draws(page)).not.toEqual(wanted[0]);
  const tab = await page.context().newPage();
  await tab.goto(windrow.newAddress());
  expect(await draws(tab)).toEqual(wanted[0]);
  await tab.close();
  await windrow.restart();
  expect(await draws(page)).toEqual(wanted[1]);
  // Ids stay as they are: two starts must not give two games the same name.
  expect(await page.evaluate(() => crypto.randomUUID())).not.toBe(first);
});
