import { part, twin, withSeason } from './journal-helpers.ts';
import { violations } from './violations.ts';
import { expect, test } from './windrow.ts';

test.setTimeout(180_000);

test('the season in numbers: every chart has its table, and the table adds up', async ({ windrow, page }) => {
  await withSeason(windrow);
  await part(page, 'Season');
  await expect(page.getByText('Measuring your games')).toBeHidden({ timeout: 60_000 });
  const wins = await twin(page, 'How often you win');
  const [all, ...seats] = wins.map(([name, won, of]) => ({ name, won: Number(won), of: Number(of) }));
  expect(all).toMatchObject({ name: 'All games', of: 64 });
  expect(seats.map(({ name }) => name)).toEqual(['East', 'South', 'West', 'North']);
  expect(seats.reduce((sum, { won }) => sum + won, 0)).toBe(all?.won);
  await expect(page.getByText(`You won ${all?.won} of 64 games that were played to the end`)).toBeVisible();
  const away = await twin(page, 'How far away your rack was');
  expect(away.map(([moment]) => moment)).toContain('1st right');
  expect(Number(away[0]?.[2])).toBeGreaterThan(Number(away.at(-1)?.[2]));
  const sections = await twin(page, 'Sections you aimed at and won');
  expect(sections.reduce((sum, [, , , , won]) => sum + Number(won), 0)).toBe(all?.won);
  const jokers = await twin(page, 'Jokers you were dealt');
  expect(jokers.reduce((sum, [, games]) => sum + Number(games), 0)).toBe(60);
  const points = await twin(page, 'Points over time');
  expect(points).toHaveLength(50);
  await page.getByRole('button', { name: 'Earlier games' }).click();
  expect(await twin(page, 'Points over time')).toHaveLength(14);
  expect(await violations(page)).toEqual([]);
});

test('the figures are kept: after a restart nothing is measured again', async ({ windrow, page }) => {
  await withSeason(windrow);
  await part(page, 'Season');
  await expect(page.getByText('Measuring your games')).toBeVisible();
  await expect(page.getByText('Measuring your games')).toBeHidden({ timeout: 60_000 });
  const before = await twin(page, 'How far away your rack was');
  await windrow.restart();
  await windrow.go('Journal');
  await part(page, 'Season');
  await expect(page.getByRole('heading', { name: 'How far away your rack was' })).toBeVisible();
  await expect(page.getByText('Measuring your games')).toBeHidden();
  expect(await twin(page, 'How far away your rack was')).toEqual(before);
});

test('CR-G6: choices are judged on request, stopped at any time, and no change is told before 30 of a kind', async ({
  windrow,
  page,
}) => {
  await withSeason(windrow);
  await page.getByRole('button', { name: 'Filters', exact: true }).click();
  await page.getByLabel('Tag', { exact: true }).selectOption('first evening');
  await expect(page.getByRole('status').filter({ hasText: '4 of 64 games' })).toBeVisible();
  await part(page, 'Season');
  await expect(page.getByText('Some games are filtered out.')).toBeVisible();
  await page.getByRole('button', { name: 'Judge the choices of 4 games' }).click();
  await expect(page.getByText('Looking back: 1 of 4')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Looking back')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Judge the choices of 3 games' })).toBeVisible();
  const cost = await twin(page, 'What your choices cost');
  const passes = cost.find(([kind]) => kind === 'Passes');
  expect(passes?.at(-1)).toMatch(/^Too few to tell: [1-7] of 30$/);
  expect(await violations(page)).toEqual([]);
});

test('the season prints: charts and open tables on white, without buttons', async ({ windrow, page }) => {
  await withSeason(windrow);
  await part(page, 'Season');
  await expect(page.getByText('Measuring your games')).toBeHidden({ timeout: 60_000 });
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await expect(page.getByRole('button', { name: 'Print this page' })).toBeHidden();
  await expect(page.getByRole('navigation').first()).toBeHidden();
  const table = page.getByRole('region', { name: 'How often you win, table' });
  expect((await table.boundingBox())?.height).toBeGreaterThan(100);
  const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect(paper).toBe('rgb(255, 255, 255)');
  const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
  expect(pdf.match(/\/Type \/Page\b/g)?.length).toBeGreaterThan(2);
});

test('examples stay apart: an example deal does not keep the example season out, and neither is among her own figures', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await page.getByRole('button', { name: 'Try an example deal' }).click();
  await windrow.saved();
  await windrow.go('Journal');
  await part(page, 'Files');
  await page.getByRole('button', { name: 'Add the example season' }).click();
  await expect(page.getByText('64 games added to look around with.')).toBeVisible({ timeout: 30_000 });
  await part(page, 'Season');
  await expect(page.getByText('From 65 games of the examples. None of them is yours.')).toBeVisible();
  await windrow.go('Table');
  await page.getByRole('button', { name: 'New game' }).click();
  await page.getByRole('button', { name: 'Begin a new game' }).click();
  await windrow.deal('J FF N 0 13b 4578c 22d');
  await page.getByRole('button', { name: 'Result' }).click();
  await page.getByRole('radio', { name: 'Wall game' }).check();
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await windrow.saved();
  await windrow.go('Journal');
  await part(page, 'Season');
  await expect(
    page.getByText('These figures are from 1 game. What you filter in the list is filtered here too.'),
  ).toBeVisible();
  await expect(page.getByText('With advice at once: you won 0 of 1.')).toBeVisible();
  await page.getByRole('group', { name: 'Whose games' }).getByRole('radio', { name: 'Examples' }).check();
  await expect(page.getByText('From 65 games of the examples. None of them is yours.')).toBeVisible();
  await page.getByRole('group', { name: 'Whose games' }).getByRole('radio', { name: 'My own' }).check();
  await expect(
    page.getByText('These figures are from 1 game. What you filter in the list is filtered here too.'),
  ).toBeVisible();
});
