import { expect, test } from 'vitest';
import { readLine } from '../../core/card/line.ts';
import { textOfLines } from '../../core/card/lines-text.ts';
import { cardOfLines, holdsLines, tableOfLines } from '../../renderer/places/card/lines-file.ts';
import { withUs } from './card-file.ts';
import { SIXTY } from './sixty-lines.ts';

/** The card of 60 lines, and all that its lines say. */
const CARD = cardOfLines('Shore-card.txt', sixtyAsText());
function sixtyAsText(): string {
  const names = [...new Set(SIXTY.map(({ section }) => section))];
  return names
    .flatMap((name) => [
      `# ${name}`,
      ...SIXTY.filter(({ section }) => section === name).map(
        ({ printed, line }) =>
          `${printed} | ${line['slide']} | ${line['concealed'] === true ? 'c' : ''} | ${line['points']}`,
      ),
    ])
    .join('\n');
}

function said(card: typeof CARD): unknown {
  return card.sections.map(({ name, lines }) => ({
    name,
    lines: lines.map((fields) => {
      const { forms, slide, slide2, distinct, concealed, points, note } = readLine(fields);
      return { forms: forms.map(({ text }) => text), slide, slide2, distinct, concealed, points, note };
    }),
  }));
}

test('a text of 60 lines, as they are printed, makes a card of them, with an id for each', () => {
  expect(CARD['title']).toBe('Shore card');
  expect(CARD.sections.flatMap(({ lines }) => lines)).toEqual(
    SIXTY.map(({ line }, at) => ({ id: CARD.sections[Math.floor(at / 6)]?.lines[at % 6]?.['id'], ...line })),
  );
  expect(new Set(CARD.sections.flatMap(({ lines }) => lines.map(({ id }) => id))).size).toBe(60);
});

test.each([['sixty', CARD] as const, ['demo', withUs()] as const])(
  'the %s card goes out as text and as a table and comes in again, line by line the same',
  (_, card) => {
    expect(said(cardOfLines('x.txt', textOfLines(card)))).toEqual(said(card));
    expect(said(cardOfLines('x.csv', tableOfLines(card)))).toEqual(said(card));
  },
);

test('a table made elsewhere: other order, other separator, other words, cells left out', () => {
  const csv = 'Points;Line;C or X;Section\r\n30;FF222a333b444a55b;concealed;Runs\r\n;NNNN EEEE WWWW SS;;Runs\r\n';
  expect(cardOfLines('runs.csv', csv).sections).toEqual([
    {
      name: 'Runs',
      lines: [
        { id: 'runs-1', pattern: 'FF 222a 333b 444a 55b', slide: 0, concealed: true, points: 30 },
        { id: 'runs-2', pattern: 'NNNN EEEE WWWW SS', slide: 0, concealed: false, points: 25 },
      ],
    },
  ]);
  expect(cardOfLines('plain.csv', 'FF222a333b444a55b,any run,x,35\n').sections[0]?.lines[0]).toMatchObject({
    pattern: 'FF 222a 333b 444a 55b',
    slide: 1,
    concealed: false,
    points: 35,
  });
});

test('files of lines are known by their names', () => {
  expect(['a.txt', 'A.CSV', 'a.card.json', 'a.tsv', 'txt'].map(holdsLines)).toEqual([true, true, false, true, false]);
});
