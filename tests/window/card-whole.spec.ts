import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { moveLine } from '../../core/card/edit.ts';
import { writeCardFile } from '../../core/card/file.ts';
import type { CardDocument } from '../../core/card/document.ts';
import { view } from './card-evening.ts';
import { withUs } from './card-file.ts';
import { expect, test, type Windrow } from './windrow.ts';

test.use({ weighs: 'when-asked' });

const NUMBERS = [1, 2, 3, 4, 5, 6];

/** Sixty lines in six sections, each written as no other. */
const SIXTY: CardDocument = {
  ...withUs(),
  title: 'Harbour card',
  season: '2027',
  sections: NUMBERS.map((number) => ({
    name: `Pier ${number}`,
    lines: Array.from({ length: 10 }, (_, at) => ({
      id: `p${number}-${at}`,
      pattern: `FF ${number}${number}a ${'123456789'[at % 9]}bam ${'NEWS'[at % 4]} 222b 3333c`,
      or: at === 3 ? [`FFF ${number}b NNN 2222a 333c`] : [],
      points: 25 + at,
      concealed: at === 5,
      note: at === 7 ? `Seen on pier ${number}` : '',
    })),
  })),
};

async function openSixty(windrow: Windrow): Promise<void> {
  const cards = join(windrow.folder, 'cards');
  await mkdir(cards, { recursive: true });
  await writeFile(join(cards, 'sixty.card.json'), writeCardFile(SIXTY));
  await windrow.open('Card');
  await view(windrow.page, 'Cards');
  await windrow.page.getByRole('button', { name: 'Open, Harbour card' }).click();
  await expect(windrow.page.locator('wr-card-lines')).toBeVisible();
  await view(windrow.page, 'Whole card');
}

test('sixty lines are on one page, in columns that break with the room there is', async ({ windrow, page }) => {
  await openSixty(windrow);
  const whole = page.locator('wr-card-whole');
  await expect(whole.getByRole('heading', { level: 2 })).toHaveText(/Harbour card\s+2027/);
  await expect(whole.getByRole('heading', { level: 3 })).toHaveText(NUMBERS.map((number) => `Pier ${number}`));
  const lines = whole.getByRole('listitem');
  await expect(lines).toHaveCount(60);
  for (const each of await lines.all()) await expect(each).toBeVisible();
  await expect(lines.nth(3)).toContainText('or FFF 1b NNN 2222a 333c');
  await expect(whole.getByRole('button', { name: /^line 6 .* concealed, 30 points$/ })).toHaveCount(6);
  const columns = async (): Promise<number> =>
    new Set(await lines.evaluateAll((all) => all.map((each) => Math.round(each.getBoundingClientRect().left)))).size;
  await page.setViewportSize({ width: 1440, height: 900 });
  expect(await columns()).toBe(2);
  await page.setViewportSize({ width: 700, height: 900 });
  expect(await columns()).toBe(1);
});

test('a line is found as one types, by keys alone, and leads to where it is edited', async ({ windrow, page }) => {
  await openSixty(windrow);
  const whole = page.locator('wr-card-whole');
  const lines = whole.getByRole('listitem');
  const status = whole.getByRole('status');
  const field = page.getByLabel('Find a line');
  await expect(status).toHaveText('60 lines');
  for (const [typed, count] of [
    ['33A 4BAM', 1],
    ['pier 2', 10],
    ['nnn2222', 6],
    ['34', 6],
    ['seen on', 6],
  ] as const) {
    await field.fill(typed);
    await expect(status).toHaveText(`${count} of 60 lines found`);
    await expect(lines).toHaveCount(count);
  }
  await field.fill('zzz');
  await expect(status).toHaveText('No line is found. Try fewer letters.');
  await page.keyboard.press('Escape');
  await expect(field).toHaveValue('');
  await expect(field).toBeFocused();
  await expect(lines).toHaveCount(60);

  await page.keyboard.type('Pier 3');
  await page.keyboard.press('ArrowDown');
  const focused = whole.locator('button:focus');
  await expect(focused).toHaveAttribute('data-at', '0');
  for (const [key, at] of [
    ['ArrowDown', '1'],
    ['End', '9'],
    ['ArrowUp', '8'],
    ['Home', '0'],
  ] as const) {
    await page.keyboard.press(key);
    await expect(focused).toHaveAttribute('data-at', at);
  }
  await expect(whole.locator('li button[tabindex="0"]')).toHaveCount(1);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: 'Lines' })).toHaveAttribute('aria-selected', 'true');
  await expect(page.locator('wr-card-lines [role=rowgroup]').nth(2).locator('[role=row].now .place')).toHaveText('2');
});

test('on paper there is the card and nothing else, every line of it, no letter under 11 pt', async ({
  windrow,
  page,
}) => {
  await openSixty(windrow);
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  const paper = page.locator('wr-card-paper');
  for (const format of ['A4', 'Letter']) {
    await page.getByRole('button', { name: 'Print the card' }).click();
    await page.emulateMedia({ media: 'print' });
    await expect(paper).toBeVisible();
    await expect(page.locator('wr-shell')).toBeHidden();
    await expect(paper.getByRole('listitem')).toHaveCount(60);
    const sizes = await paper.evaluate((element) =>
      [...(element.shadowRoot?.querySelectorAll('h1, h2, p, span') ?? [])].map((each) =>
        Number.parseFloat(getComputedStyle(each).fontSize),
      ),
    );
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual((11 * 96) / 72 - 0.01);
    const pdf = (await page.pdf({ format })).toString('latin1');
    const pages = pdf.match(/\/Type\s*\/Page\b/g) ?? [];
    // Six sections, none of them cut.
    expect(pages.length).toBeGreaterThanOrEqual(2);
    expect(pages.length).toBeLessThanOrEqual(3);
    // The browser has told that it printed.
    await expect(paper).toHaveCount(0);
    await page.emulateMedia({ media: 'screen' });
  }
});

test('a line that was moved has the name of its new place at the Table', async ({ windrow, page }) => {
  const card = withUs();
  const section = card.sections.findIndex(({ name }) => name === 'Three Shores');
  const count = card.sections[section]?.lines.length ?? 0;
  const moved = moveLine(card, { section, line: 0 }, { section, line: count - 1 });
  const cards = join(windrow.folder, 'cards');
  await mkdir(cards, { recursive: true });
  await writeFile(join(cards, 'moved.card.json'), writeCardFile({ ...moved, title: 'Moved' }));
  await windrow.open('Card');
  await view(page, 'Cards');
  await page.locator('.card', { hasText: 'Moved' }).getByRole('button', { name: 'Use at the Table' }).click();
  await windrow.go('Table');
  await windrow.deal('J FF N 0 13b 4578c 22d');
  const named = page.getByText(/^Three Shores, \d+(st|nd|rd|th) line$/);
  await expect(named.first()).toHaveText(new RegExp(`^Three Shores, ${count}(st|nd|rd|th) line$`));
  await expect(page.locator('wr-table-place').getByText(/three-shores-\d/)).toHaveCount(0);
});
