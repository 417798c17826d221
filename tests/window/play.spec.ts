import { choose, field, layOpenAtOnce, straightToPlay, tableRows, type } from './play.ts';
import { expect, test } from './windrow.ts';

test.describe.configure({ timeout: 120_000 });

const DEAL = 'J FF N 0 13b 4578c 22d';

test('after the exchange the Table goes on into play: draws and discards in turn, typed in one row', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await expect(page.getByRole('heading', { name: 'What did Left (East) discard?' })).toBeVisible();
  await type(page, '9c 5c N 1d 2d');
  await expect(page.getByText('Discards on the table: 4')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What did Left (East) discard?' })).toBeVisible();
  expect(await windrow.rack()).toEqual([
    'joker',
    'flower',
    'flower',
    'white dragon',
    'one bam',
    'three bam',
    'four crak',
    'five crak',
    'five crak',
    'seven crak',
    'eight crak',
    'two dot',
    'two dot',
  ]);
});

test('the dealer has advice for the first discard, though the passes were left out', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal('JJ FF NE 0 1389b 25c 7d', 'East');
  await page.getByRole('button', { name: 'Go on to play' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Table: Play');
  const others = page.locator('wr-advice-list');
  await expect(others.locator('li').nth(2)).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('wr-advice-panel').getByRole('button', { name: /^Discard / })).toBeVisible();
  await others.getByRole('button', { name: 'Show more' }).click();
  await expect(others.locator('li').nth(6)).toBeVisible();
  await expect(others.getByText('…', { exact: true })).toHaveCount(0, { timeout: 60_000 });
  await expect(others.locator('li').nth(6)).toBeVisible();
  await page.getByRole('button', { name: /passes/ }).click();
  await expect(page.locator('wr-plan-panel li').nth(2)).toBeVisible({ timeout: 30_000 });
});

test('tiles that were set aside are in the rack again once the passes are left out', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal('JJ FF NE 0 1389b 25c 7d', 'East');
  for (const name of ['north wind', 'white dragon']) {
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).click();
    await page.getByRole('button', { name: 'Set aside', exact: true }).click();
  }
  expect(await windrow.rack()).toHaveLength(12);
  await page.getByRole('button', { name: 'Go on to play' }).click();
  await expect(field(page)).toBeFocused();
  expect(await windrow.rack()).toHaveLength(14);
  await page.locator('wr-rack [role=option][aria-label^="white dragon"]').click();
  const rack = page.locator('wr-rack-panel');
  await expect(rack.getByRole('button', { name: 'Set aside', exact: true })).toHaveCount(0);
  await rack.getByRole('button', { name: 'Discard', exact: true }).click();
  await expect(page.getByText('Discards on the table: 1')).toBeVisible();
  expect(await windrow.rack()).toHaveLength(13);
});

test('a tile a click: the likely seat is chosen, and any other may be', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await page.getByRole('button', { name: /^nine crak/ }).click();
  await expect(page.getByRole('heading', { name: 'What did you draw?' })).toBeVisible();
  await choose(page, 'Whose tile?', 'Across');
  await page.getByRole('button', { name: /^nine crak/ }).click();
  await expect(page.getByText('Discards on the table: 2')).toBeVisible();
  await choose(page, 'Whose tile?', 'You');
  await page.getByRole('button', { name: /^five crak/ }).click();
  await page.locator('wr-rack [role=option][aria-label^="north wind"]').click();
  await page.getByRole('button', { name: 'Discard', exact: true }).click();
  await expect(page.getByText('Discards on the table: 3')).toBeVisible();
  expect(await windrow.rack()).not.toContain('north wind');
});

test('who logs only own tiles is asked for no others', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await choose(page, 'Whose tile?', 'You');
  await type(page, '9d 9d');
  await choose(page, 'Whose tile?', 'You');
  await type(page, '9d 9d 8d 8d 1d');
  expect(await windrow.rack()).toContain('one dot');
  await expect(page.getByText('Discards on the table: 3')).toBeVisible();
});

test('own exposures fix the hands to come, dead hands are struck out, and undo brings them back', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, 'J FF 0 111b 13d 5578c');
  await type(page, '1b');
  await expect(page.getByText('Call the one bam of Left?')).toBeVisible();
  await page.getByRole('button', { name: /^Lay open one bam, one bam, one bam, one bam/ }).click();
  await expect(page.getByRole('heading', { name: 'What do you discard?' })).toBeVisible();
  await expect(page.getByText(/hands struck out/)).toBeVisible();
  const hands = page.locator('wr-hand');
  const words = await hands.evaluateAll((all) =>
    all.map((hand) => hand.shadowRoot?.querySelector('[role=img]')?.getAttribute('aria-label') ?? ''),
  );
  expect(words.length).toBeGreaterThan(0);
  expect(words.filter((hand) => !/one bam/.test(hand))).toEqual([]);
  await page.getByText(/hands struck out/).click();
  await expect(page.getByText('it must stay concealed').first()).toBeVisible();
  await expect(page.getByText('it has no place for your open groups').first()).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await windrow.rack()).toHaveLength(13);
  await expect(page.getByText('it must stay concealed')).toHaveCount(0);
});

test('a joker laid open stays in its group: it completes no other, until it is swapped', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, 'J F 11b 222d 333b 44d 9c');
  await type(page, '1b');
  // Nobody is advised to show a joker that the group does not need: it is logged as it was laid open.
  await expect(page.getByRole('button', { name: 'Lay open one bam, one bam, one bam', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Lay open joker, one bam, one bam', exact: true })).toHaveCount(0);
  await layOpenAtOnce(page, 'You', '11b J');
  await type(page, '9c');
  await expect(page.getByRole('heading', { name: /^What did .* discard\?$/ })).toBeVisible();
  const nearest = page.locator('wr-hand').first().locator('[role=img]');
  await expect(nearest).toHaveAttribute(
    'aria-label',
    /^Two Shores, 1st line: pair of flowers, 1 here and 1 missing; pung of one bams, 2 here and 1 by joker; .*; pung of four dots, 2 here and 1 missing$/,
  );
  await choose(page, 'Whose tile?', 'You');
  await type(page, 'F');
  await expect(page.getByRole('heading', { name: 'What do you discard?' })).toBeVisible();
  await expect(page.getByText(/Your hand is complete/)).toHaveCount(0);
  await page.getByRole('button', { name: /^You take the joker/ }).click();
  await expect(page.getByText(/Your hand is complete: Two Shores, 1st line/)).toBeVisible();
});

test("another's group is typed or clicked, and its joker taken with the tile", async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await type(page, '9c');
  await choose(page, 'What happened?', 'A group laid open');
  await choose(page, 'Whose tile?', 'Across');
  await page.getByRole('button', { name: /^nine crak/ }).click();
  await page.getByRole('button', { name: /^joker/ }).click();
  await page.getByRole('button', { name: 'Lay it open' }).click();
  await expect(page.getByRole('heading', { name: 'What did Across (North) discard?' })).toBeVisible();
  await type(page, '1d');
  await choose(page, 'What happened?', 'A group laid open');
  await choose(page, 'Whose tile?', 'Right');
  await type(page, '222d J');
  await expect(page.getByText(/The set has only 4 two dots/).first()).toBeVisible();
  await choose(page, 'What happened?', 'One tile');
  await choose(page, 'Whose tile?', 'You');
  await type(page, '9c');
  await page.getByRole('button', { name: /^You take the joker/ }).click();
  expect((await windrow.rack()).filter((name) => name === 'joker')).toHaveLength(2);
  await expect(field(page)).toBeFocused();
});

test('a running count of what is still unseen, kind by kind, says "gone" in words', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await expect(page.getByText('Still unseen: 139 tiles')).toBeVisible();
  for (const turn of ['East', 'South', 'West', 'North']) {
    await choose(page, 'Whose tile?', 'Right');
    await type(page, '9b');
    await expect(page.getByText(`Discards on the table: ${'ESWN'.indexOf(turn.charAt(0)) + 1}`)).toBeVisible();
  }
  await page.getByText('Still unseen: 135 tiles').click();
  await expect(page.getByText('Bams: 30')).toBeVisible();
  await expect(page.locator('wr-unseen-panel li').filter({ hasText: 'gone' })).toHaveCount(1);
});

test('the count of unseen tiles holds those passed on too, and agrees with the tray beside it', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await windrow.deal(DEAL);
  for (const name of ['north wind', 'white dragon', 'one bam']) {
    await page.locator(`wr-rack [role=option][aria-label^="${name}"]`).click();
    await page.getByRole('button', { name: 'Set aside', exact: true }).click();
  }
  await page.getByRole('button', { name: 'Give 3 tiles' }).click();
  await type(page, '9d 3c 6c');
  await page.getByRole('button', { name: 'Go on to play' }).click();
  await page.getByText('Still unseen: 139 tiles').click();
  await expect(page.getByText('Those that you passed on are among them')).toBeVisible();
  // Jokers, flowers, north winds, …
  await expect(page.locator('wr-unseen-panel li').nth(2)).toHaveText('4');
  await expect(page.getByRole('button', { name: /^north wind/ })).toHaveAccessibleName(/4 left/);
});

test('what can not be is said beside the field, and nothing typed is lost', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  await type(page, '9c 5d 8b 9d');
  await expect(page.getByText(/There is no eight bam in your rack/)).toBeVisible();
  await expect(field(page)).toHaveValue('9c 5d 8b 9d');
  await expect(page.getByText('Discards on the table: 0')).toBeVisible();
});

test('a complete hand is told, and the win is entered with what is known', async ({ windrow, page }) => {
  await windrow.open();
  await straightToPlay(windrow, 'F 111b 222d 333b 444d');
  await type(page, 'F');
  await expect(page.getByText(/The flower completes Two Shores, 1st line, 5 points/)).toBeVisible();
  await page.getByRole('button', { name: 'Enter your win' }).click();
  await expect(page.getByRole('group', { name: 'Whose discard?' }).getByRole('radio', { name: 'Left' })).toBeChecked();
  await expect(page.getByRole('radio', { name: 'Without jokers' })).toBeChecked();
  // 5, jokerless doubles: the discarder pays double. By hand, from the default rules: 20, 10, 10.
  expect(await tableRows(page, 'Who pays what')).toEqual([
    ['You (South)', '+40', 'gets 40'],
    ['Right (West)', '−10', 'pays 10'],
    ['Across (North)', '−10', 'pays 10'],
    ['Left (East)', '−20', 'pays 20'],
  ]);
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect(page.getByRole('heading', { name: 'You won by the discard of Left', exact: true })).toBeVisible();
});

test('the target is kept until another hand is clearly better, and then the change is offered', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, '111b 222d 333b 444d N');
  await expect(page.getByText(/Stay with Two Shores, 1st line/)).toBeVisible();
  for (const flowers of ['F F F', 'F F F', 'F F']) {
    await choose(page, 'Whose tile?', 'Right');
    await type(page, flowers);
  }
  await expect(page.getByText(/Your target is dead: Two Shores, 1st line\. Time to change to /)).toBeVisible();
  await page.getByRole('button', { name: /^Aim at/ }).click();
  await expect(page.locator('wr-target-line').getByText(/^Stay with /)).toBeVisible();
});

test('a game may be just a result: no deal, no pass, no tile', async ({ windrow, page }) => {
  await windrow.open();
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Wall game');
  await choose(page, 'Where did you sit?', 'West');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect(page.getByRole('heading', { name: 'Wall game', exact: true })).toBeVisible();
  // Without a deal there is nothing to look back at.
  await expect(page.getByRole('button', { name: 'Look back', exact: true })).toBeHidden();
  await windrow.saved();
  await windrow.restart();
  await expect(page.getByRole('heading', { name: 'Wall game', exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('heading', { name: 'What were you dealt?' })).toBeVisible();
});

test('a game may be just deal and passes, and a result can be changed and undone', async ({ windrow, page }) => {
  await windrow.open();
  await windrow.deal(DEAL);
  await page.getByRole('button', { name: 'Result', exact: true }).click();
  await choose(page, 'The game', 'Abandoned');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect(page.getByRole('heading', { name: 'Abandoned', exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Change the result' }).click();
  await choose(page, 'The game', 'Somebody won');
  await choose(page, 'Who won?', 'Across');
  await choose(page, 'How?', 'By own draw');
  await page.getByLabel('Points', { exact: true }).fill('thirty');
  await expect(page.getByText('Write a number of 0 or more.').first()).toBeVisible();
  await page.getByLabel('Points', { exact: true }).fill('30');
  await page.getByRole('button', { name: 'Enter the result' }).click();
  await expect(page.getByRole('heading', { name: 'Across (North) won by own draw' })).toBeVisible();
  // 30 by own draw: everybody pays double. By hand: 60 each.
  expect(await tableRows(page, 'Who pays what')).toContainEqual(['Across (North)', '+180', 'gets 180']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('heading', { name: 'Pass three to the right' })).toBeVisible();
});

test('the chance to win is said as the game stands, in whole games of a hundred, and follows what is discarded', async ({
  windrow,
  page,
}) => {
  await windrow.open();
  await straightToPlay(windrow, DEAL);
  const chance = page.getByRole('button', { name: /explain Chance/ });
  const games = async (): Promise<number> => {
    const [, count = ''] = /^\s*Chance: about (\d+) in 100\s*$/.exec((await chance.textContent()) ?? '') ?? [];
    return count === '' ? Number.NaN : Number(count);
  };
  await expect.poll(games).toBeGreaterThan(0);
  const before = await games();
  // A draw that helps nothing, and two flowers and a joker thrown away for it.
  await type(page, '9c 9d f');
  await expect.poll(games).toBeLessThan(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(games).toBe(before);
});
