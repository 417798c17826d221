import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { cardMark } from '../../core/card/mark.ts';
import { shippedChance } from '../../core/chance/card-chance.ts';
import { TABLE_KINDS, type TableKind } from '../../core/table/kinds.ts';
import { percent } from '../../renderer/words/numbers.ts';
import { lookBack, part, withSeason } from './journal-helpers.ts';
import { violations } from './violations.ts';
import { fillFolder, finishedGames } from './many-games.ts';
import { choose } from './play.ts';
import { expect, test } from './windrow.ts';

/** The share of wall games in the demo card's own games. */
function wallGamesAt(kind: TableKind): number {
  const file = readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8');
  return shippedChance(cardMark(expectValue(readCardFile(file)).document), kind)?.table.wallGames ?? -1;
}

async function season(page: Page): Promise<void> {
  await part(page, 'Season');
  await expect(page.getByRole('heading', { name: 'How your table plays' })).toBeVisible();
}

test('after ten finished games the season says how her table compares, not before', async ({ windrow, page }) => {
  await fillFolder(windrow.folder, finishedGames(1, 8));
  await windrow.open('Journal');
  await season(page);
  await expect(page.getByText('So far: 9.')).toBeVisible();
  await expect(page.getByText('Wall games: ')).toBeHidden();
});

test('the kind that fits is offered with its ranges, and chosen by a key; the games that are there keep theirs', async ({
  windrow,
  page,
}) => {
  await fillFolder(windrow.folder, finishedGames(14, 26));
  await windrow.open('Journal');
  await season(page);
  await expect(
    page.getByText('From 40 games of yours that were finished with the card in use.', { exact: false }),
  ).toBeVisible();
  await expect(page.getByText('Wall games: 14 of 40, 35 %, likely between 22 % and 50 %.')).toBeVisible();
  const [quick, club, relaxed] = TABLE_KINDS.map((kind) => percent(wallGamesAt(kind)));
  await expect(page.getByText(`Quick ${quick}, club ${club}, relaxed ${relaxed}.`)).toBeVisible();
  await expect(page.getByText(/^Your games fit the relaxed table .* the club table that you use/)).toBeVisible();
  expect(await violations(page)).toEqual([]);
  const button = page.getByRole('button', { name: 'Use the relaxed table' });
  expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await button.focus();
  await page.keyboard.press('Enter');
  const said = page.getByText('Your games clearly fit the relaxed table best. It is the one that you use.');
  await expect(said).toBeFocused();
  await expect(button).toBeHidden();
  await windrow.go('Settings');
  await expect(
    page.getByRole('group', { name: 'Kind of table' }).getByRole('radio', { name: 'Relaxed' }),
  ).toBeChecked();
});

test('a look-back says which kind it used, and keeps it when another kind is chosen', async ({ windrow, page }) => {
  test.setTimeout(180_000);
  await withSeason(windrow);
  await lookBack(page, 'demo-20261119-3');
  await expect(page.getByText('Chances are those at a club table.')).toBeVisible();
  await windrow.go('Settings');
  await choose(page, 'Kind of table', 'Relaxed');
  await windrow.go('Journal');
  await page.evaluate(() => (window.location.hash = '#/journal/game/demo-20261119-3'));
  // Kept as it is: nothing is looked at again.
  await expect(page.locator('wr-story')).toBeVisible({ timeout: 2000 });
  await expect(page.getByText('Chances are those at a club table.')).toBeVisible();
});
