import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { type LineDocument, textField } from '../../core/card/document.ts';
import { readLine, understoodLines } from '../../core/card/line.ts';
import { type PatternGroup, suitIn, symbolOf } from '../../core/card/pattern.ts';
import { withUs } from './card-file.ts';
import type { Windrow } from './windrow.ts';

/** The demo card in its first order, with points from 25 to 75 in fives as cards usually have. */
const FIRST_CARD = readFileSync(new URL('../golden/0.1.0/card.json', import.meta.url), 'utf8');

/** Twenty lines of it, every kind of group and movement among them, as a player would enter them. */
export const TWENTY: readonly LineDocument[] = withUs(FIRST_CARD)
  .sections.flatMap(({ lines }) => lines.slice(0, 2))
  .slice(0, 20);

/** What a line says, so that two ways of entering can be compared; ids differ. */
export function saidBy(line: LineDocument): unknown {
  const { pattern, slide, slide2, concealed, points } = readLine(line);
  return { pattern, slide, slide2, concealed, points };
}

/** Agrees to the caution, starts an empty card and comes to its lines. */
export async function startCard({ page }: Windrow, title = 'Thursday card'): Promise<void> {
  await page.getByRole('button', { name: 'Start an empty card' }).click();
  const agree = page.getByRole('button', { name: 'I understand' });
  if (await agree.isVisible()) await agree.click();
  await page.getByLabel('Title of the card').fill(title);
  await page.getByLabel('Season').fill('2027');
  await page.getByRole('button', { name: 'Start the card' }).click();
  await expect(page.getByRole('heading', { name: 'This card has no sections yet.' })).toBeVisible();
}

export async function addSection({ page }: Windrow, name: string): Promise<void> {
  await page.getByLabel('Name of the new section').fill(name);
  await page.getByRole('button', { name: 'Add the section' }).click();
}

/** Makes the demo card one's own, to have something to change. */
export async function copyDemo({ page }: Windrow): Promise<void> {
  await page.getByRole('button', { name: 'Make a copy' }).click();
  await expect(page.locator('wr-line-form')).toBeVisible();
}

/** Goes to a view of the Card place. */
export async function view(page: Page, name: string): Promise<void> {
  await page.getByRole('tab', { name, exact: true }).click();
}

/** Waits until the card is on disk. */
export async function kept(page: Page): Promise<void> {
  await expect(page.locator('[data-card-saved=saved]')).toBeVisible();
}

const SUITS = { a: 'first suit', b: 'second suit', c: 'third suit', bam: 'bams', crak: 'craks', dot: 'dots' };
const SIZES = ['1 single', '2 pair', '3 pung', '4 kong', '5 quint', '6 sextet'];
const MOVEMENTS = { first: 'with the line', second: 'apart', stays: 'stays' };
const SLIDES = ['as printed', 'by any amount', 'by even amounts', 'by threes'];
const WORDS: Readonly<Record<string, string>> = {
  F: 'flower',
  N: 'north wind',
  E: 'east wind',
  W: 'west wind',
  S: 'south wind',
  G: 'green dragon',
  R: 'red dragon',
  0: 'white dragon',
  w: 'any wind',
  x: 'another wind',
  NEWS: 'N E W S, one each',
};

/** Builds one line by clicks alone on an empty line; counts the clicks. */
export async function buildByClicks(page: Page, line: LineDocument): Promise<number> {
  const builder = new Builder(page);
  const { pattern, slide, slide2, concealed, points } = readLine(line);
  for (const group of pattern) await builder.add(group);
  if (slide !== 0) await builder.choose('How the numbers move', SLIDES[slide] ?? '');
  if (slide2 !== 1) await builder.choose('How the numbers that move apart move', SLIDES[slide2] ?? '');
  if (concealed) await builder.choose('Exposure', 'concealed');
  for (let shown = 25; shown < points; shown += 5) await builder.press(page.getByRole('button', { name: '5 more' }));
  return builder.clicks;
}

class Builder {
  clicks = 0;
  readonly #page: Page;
  #size = 2;
  #suit = 'first suit';
  #movement = 'with the line';

  constructor(page: Page) {
    this.#page = page;
  }

  async add({ tile, size }: PatternGroup): Promise<void> {
    const [symbol, suit] = [symbolOf(tile), suitIn(tile)];
    if (symbol !== 'NEWS' && size !== this.#size) {
      await this.choose('How many', SIZES[size - 1] ?? '');
      this.#size = size;
    }
    if (suit !== undefined && SUITS[suit] !== this.#suit) {
      await this.choose('Suit', SUITS[suit]);
      this.#suit = SUITS[suit];
    }
    const isNumber = tile.is === 'number';
    if (isNumber && MOVEMENTS[tile.movement] !== this.#movement) {
      await this.choose('When numbers move', MOVEMENTS[tile.movement]);
      this.#movement = MOVEMENTS[tile.movement];
    }
    const dragon = suit === undefined ? 'any dragon' : 'dragon of a suit';
    const name = isNumber ? `number ${symbol}` : symbol === 'D' ? dragon : (WORDS[symbol] ?? symbol);
    await this.press(this.#page.getByRole('button', { name, exact: true }));
  }

  async choose(group: string, name: string): Promise<void> {
    await this.press(
      this.#page.getByRole('group', { name: group, exact: true }).getByRole('radio', { name, exact: true }),
    );
  }

  async press(target: Locator): Promise<void> {
    await target.click();
    this.clicks += 1;
  }
}

/** Types one line into the row of the grid that has the focus, and goes on to the next row; counts the key strokes. */
export async function typeLine(page: Page, line: LineDocument): Promise<number> {
  const { slide, slide2, concealed, points } = readLine(line);
  const keys: string[] = [...textField(line, 'pattern'), 'Tab'];
  keys.push(...(slide === 0 ? [] : [String(slide)]), 'ArrowRight');
  if (!concealed && slide2 === 1) keys.push(...(points === 25 ? ['F2'] : String(points)), 'Enter');
  else {
    keys.push(...(points === 25 ? ['ArrowRight'] : [...String(points), 'Tab']), ...(concealed ? ['c'] : []));
    keys.push('ArrowRight', ...(slide2 === 1 ? [] : [String(slide2)]), 'ArrowDown', 'Home');
  }
  for (const key of keys) await page.keyboard.press(key === ' ' ? 'Space' : key);
  return keys.length;
}

/** The lines of the only card in a folder that is not the demo card, as its file says. */
export function linesIn(text: string): readonly LineDocument[] {
  const document = withUs(text);
  expect(understoodLines(document).length).toBeGreaterThan(0);
  return document.sections.flatMap(({ lines }) => lines);
}
