import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { linesOf } from '../../core/card/card.ts';
import { addSection, kept, startCard, view } from './card-evening.ts';
import { cardFiles } from './card-file.ts';
import { cardWords } from '../../renderer/words/card.ts';
import { choose } from './play.ts';
import { expect, test } from './windrow.ts';

const words = cardWords.line;
const FIRST = "FF 11a 11b 11c 55a' 55b' 55c'";
const OTHER = 'FFFF 1111a 111b 111c';

test('a line printed with "or" is one line: each form is typed, counted together, and read back', async ({
  windrow,
  page,
}) => {
  await windrow.open('Card');
  await startCard(windrow);
  await addSection(windrow, 'Twins');
  await page.getByRole('button', { name: cardWords.section.addLine }).click();
  const typed = page.getByLabel(words.typed);
  await typed.fill(FIRST);
  await choose(page, words.slide, words.slides[1]);
  await expect(page.locator('wr-line-form')).toContainText('45 ways');
  await choose(page, words.distinct, words.neverEqual);
  await expect(page.locator('wr-line-form')).toContainText('36 ways');

  await page.getByRole('button', { name: words.addForm }).click();
  await expect(typed).toBeFocused();
  await expect(typed).toHaveValue(FIRST);
  await typed.fill(OTHER);
  await expect(page.locator('wr-line-form')).toContainText('63 ways');
  // The first form is as it was; both are seen in the list of lines.
  await choose(page, words.forms, words.form(0));
  await expect(typed).toHaveValue(FIRST);
  await expect(page.locator('wr-card-outline')).toContainText(`${FIRST} or ${OTHER}`);
  await kept(page);
  const [text = ''] = [...(await cardFiles(windrow.folder)).values()];
  const { card, document } = expectValue(readCardFile(text));
  expect(linesOf(card)[0]?.ways).toHaveLength(63);
  expect(document.sections[0]?.lines[0]).toMatchObject({ pattern: FIRST, or: [OTHER], distinct: true });

  await view(page, 'Proof-read');
  const read = page.locator('wr-line-view');
  await expect(read).toContainText('Or:');
  await expect(read).toContainText('They are never equal to the others.');

  // A form is taken away again, and comes back by Undo.
  await view(page, 'Lines');
  await choose(page, words.forms, words.form(1));
  await page.getByRole('button', { name: words.removeForm }).click();
  await expect(typed).toHaveValue(FIRST);
  await expect(page.locator('wr-line-form')).toContainText('36 ways');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('wr-line-form')).toContainText('63 ways');
});
