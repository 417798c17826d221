import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import type { LineDocument } from '../../core/card/document.ts';
import { readLine, understoodLines } from '../../core/card/line.ts';
import { formatGroup, type Pattern, type PatternGroup, suitIn, symbolOf } from '../../core/card/pattern.ts';
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
  const { forms, slide, slide2, distinct, concealed, points } = readLine(line);
  return { forms: forms.map(({ text }) => text), slide, slide2, distinct, concealed, points };
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
  await expect(page.locator('wr-line-panel')).toBeVisible();
}

/** Goes to a view of the Card place. */
export async function view(page: Page, name: string): Promise<void> {
  await page.getByRole('tab', { name, exact: true }).click();
}

/** Waits until the card is on disk. */
export async function kept(page: Page): Promise<void> {
  await expect(page.locator('[data-card-saved=saved]')).toBeVisible();
}

/** The row of a line, by its section and place, both counted from 1. */
export function lineRow(page: Page, section: number, line: number): Locator {
  return page
    .locator('wr-card-lines [role=rowgroup]')
    .nth(section - 1)
    .locator('.line')
    .nth(line - 1);
}

/** The cell in which a line is typed. */
export function typedLine(page: Page): Locator {
  return page.getByRole('combobox', { name: 'Line', exact: true });
}

const SUITS = { a: 'first suit', b: 'second suit', c: 'third suit', bam: 'bams', crak: 'craks', dot: 'dots' };
const SIZES = ['1 single', '2 pair', '3 pung', '4 kong', '5 quint', '6 sextet'];
const MOVEMENTS = { first: 'moves with the line', second: 'is a second number', stays: 'stays' };
const SLIDES = ['these numbers only', 'any number', 'evens or odds', 'by threes'];
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
  D: 'any dragon',
  NEWS: 'N E W S, one each',
};

/** Builds one line by clicks alone in the row for a new line, its builder open; counts the clicks. */
export async function buildByClicks(page: Page, line: LineDocument): Promise<number> {
  const builder = new Builder(page);
  const { forms, slide, slide2, concealed, points } = readLine(line);
  for (const group of forms[0].pattern) await builder.add(group);
  for (const [at, { pattern }] of forms.slice(1).entries()) await builder.otherForm(forms[at]?.pattern ?? [], pattern);
  if (slide !== 0) await builder.move(SLIDES[slide] ?? '');
  if (slide2 !== 1) await builder.choose('The second number', SLIDES[slide2] ?? '');
  if (concealed) await builder.choose('Concealed or exposed', 'C, concealed');
  if (points !== 25) await builder.choose('Points', String(points));
  return builder.clicks;
}

class Builder {
  clicks = 0;
  readonly #page: Page;
  #size = 2;
  #isNamed = false;
  #movement = 'moves with the line';

  constructor(page: Page) {
    this.#page = page;
  }

  /** Begins a further form, which is a copy of the last, and changes what differs in it. */
  async otherForm(last: Pattern, form: Pattern): Promise<void> {
    await this.press(this.#page.getByRole('button', { name: 'or…' }));
    await this.press(this.#page.getByRole('group', { name: 'Forms of the line' }).getByRole('radio').last());
    for (const [at, group] of form.entries()) {
      const before = last[at];
      if (before !== undefined && formatGroup(before) === formatGroup(group)) continue;
      await this.press(this.#page.locator('wr-line-groups [role=option]').nth(at));
      this.#size = before?.size ?? this.#size;
      await this.add(group);
    }
  }

  async add({ tile, size }: PatternGroup): Promise<void> {
    const [symbol, suit] = [symbolOf(tile), suitIn(tile)];
    if (symbol !== 'NEWS' && size !== this.#size) {
      await this.choose('How many', SIZES[size - 1] ?? '');
      this.#size = size;
    }
    const isNamed = suit !== undefined && suit.length > 1;
    if (suit !== undefined && isNamed !== this.#isNamed) {
      const which = this.#page.locator('wr-group-picker').getByRole('group', { name: 'Suits', exact: true });
      await this.press(which.getByRole('radio', { name: isNamed ? 'bams, craks, dots' : 'any suit', exact: true }));
      this.#isNamed = isNamed;
    }
    if (tile.is === 'number' && MOVEMENTS[tile.movement] !== this.#movement) {
      await this.choose('This number', MOVEMENTS[tile.movement]);
      this.#movement = MOVEMENTS[tile.movement];
    }
    const ofSuit = suit === undefined ? '' : SUITS[suit];
    const name = suit === undefined ? (WORDS[symbol] ?? symbol) : `${symbol === 'D' ? 'dragon' : symbol}, ${ofSuit}`;
    await this.press(this.#page.locator('wr-group-picker').getByRole('button', { name, exact: true }));
  }

  /** Any number is called a run or like numbers where it is one: choosing either is the same. */
  async move(name: string): Promise<void> {
    await this.choose('Numbers', name);
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

/**
 * Types one line by the sentence on the screen, "Enter: next line. Tab: next cell.", without blanks as the examples
 * there show, and nothing else; what stands in a cell as it should is passed over. Counts the key strokes.
 */
export async function typeLine(page: Page, line: LineDocument, printed = formsOf(line)): Promise<number> {
  const { slide, concealed, points } = readLine(line);
  const cells: string[] = [
    printed.replaceAll(/(?<!\bor) (?!or\b)/g, ''),
    slide === 0 ? '' : String(slide),
    concealed ? 'c' : '',
    points === 25 ? '' : String(points),
  ];
  const filled = cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
  const keys = [...filled.flatMap((cell, at) => (at === 0 ? [...cell] : ['Tab', ...cell])), 'Enter'];
  for (const key of keys) await page.keyboard.press(key === ' ' ? 'Space' : key);
  return keys.length;
}

function formsOf(line: LineDocument): string {
  return readLine(line)
    .forms.map(({ text }) => text)
    .join(' or ');
}

/** The lines of the only card in a folder that is not the demo card, as its file says. */
export function linesIn(text: string): readonly LineDocument[] {
  const document = withUs(text);
  expect(understoodLines(document).length).toBeGreaterThan(0);
  return document.sections.flatMap(({ lines }) => lines);
}
