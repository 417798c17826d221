import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { linesOf } from '../../core/card/card.ts';
import { addSection, kept, lineRow, startCard, typedLine, view } from './card-evening.ts';
import { cardFiles } from './card-file.ts';
import { cardWords } from '../../renderer/words/card.ts';
import { choose } from './play.ts';
import { expect, test } from './windrow.ts';

const words = cardWords.line;
const FIRST = "FF 11a 11b 11c 55a' 55b' 55c'";
const OTHER = 'FFFF 1111a 111b 111c';

test('a line printed with "or" is one line: its forms are typed with or between them, counted together, and read back', async ({
  windrow,
  page,
}) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Twins');
  const typed = typedLine(page);
  const panel = page.locator('wr-line-panel');
  await typed.fill(FIRST);
  await choose(page, cardWords.choices.moves, cardWords.choices.move.like);
  await expect(panel).toContainText('45 ways');
  await choose(page, words.distinct, words.neverEqual);
  await expect(panel).toContainText('36 ways');

  // "or…" begins a further form as the last one, behind it in the same field.
  await page.getByRole('button', { name: cardWords.choices.or }).click();
  await expect(typed).toBeFocused();
  await expect(typed).toHaveValue(`${FIRST} or ${FIRST}`);
  await typed.fill(`${FIRST} or ${OTHER}`);
  await expect(panel).toContainText('63 ways');
  await choose(page, words.forms, words.form(1));
  await expect(page.locator('wr-line-groups [role=option]')).toHaveCount(5);
  await expect(lineRow(page, 1, 1)).toContainText('63 ways');
  await kept(page);
  const [text = ''] = [...(await cardFiles(windrow.folder)).values()];
  const { card, document } = expectValue(readCardFile(text));
  expect(linesOf(card)[0]?.ways).toHaveLength(63);
  expect(document.sections[0]?.lines[0]).toMatchObject({ pattern: FIRST, or: [OTHER], distinct: true });

  await view(page, 'Proof-read');
  await expect(page.locator('wr-line-view')).toContainText(/different/i);
  await expect(page.locator('wr-line-view')).toContainText(/, or /);

  // A form is taken away again, and comes back by Undo.
  await view(page, 'Lines');
  await typed.fill(FIRST);
  await expect(panel).toContainText('36 ways');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(panel).toContainText('63 ways');
  await expect(typed).toHaveValue(`${FIRST} or ${OTHER}`);
});

test('an "or" with nothing behind it is no form; what is left half typed never comes into another line', async ({
  windrow,
  page,
}) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Twins');
  for (const [at, key] of ['Enter', 'ArrowDown', 'Tab'].entries()) {
    await page.keyboard.type(`${OTHER} or`);
    await page.keyboard.press(key);
    await expect(lineRow(page, 1, at + 1).locator('.pattern .text')).toHaveText(OTHER);
    if (key === 'Tab') await page.keyboard.press('Enter');
    await expect(typedLine(page)).toBeFocused();
    await expect(typedLine(page)).toHaveValue('');
  }
  await expect(page.locator('wr-card-lines [role=row].line')).toHaveCount(4);
  await kept(page);
  const [text = ''] = [...(await cardFiles(windrow.folder)).values()];
  const lines = expectValue(readCardFile(text)).document.sections[0]?.lines ?? [];
  expect(lines.map(({ pattern, or }) => [pattern, or])).toEqual([1, 2, 3].map(() => [OTHER, undefined]));
});
