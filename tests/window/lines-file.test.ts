import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readLine } from '../../core/card/line.ts';
import { textOfLines } from '../../core/card/lines-text.ts';
import { cardOfLines, holdsLines, tableOfLines } from '../../renderer/places/card/lines-file.ts';
import { readRfc4180 } from '../reference/rfc4180.ts';
import { withUs } from './card-file.ts';
import { SIXTY } from './sixty-lines.ts';

/** The card of 60 lines, and all that its lines say. */
const CARD = expectValue(cardOfLines('Shore-card.txt', sixtyAsText()));
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
    expect(said(expectValue(cardOfLines('x.txt', textOfLines(card))))).toEqual(said(card));
    expect(said(expectValue(cardOfLines('x.csv', tableOfLines(card))))).toEqual(said(card));
  },
);

test('RFC 4180: the table of a card is read by its grammar, one line of the card in each', () => {
  const [header, ...rows] = readRfc4180(tableOfLines(CARD).replace(/^\uFEFF/, ''));
  expect(header?.[1]).toBe('Line');
  const forms = SIXTY.map(({ line }) =>
    [line['pattern'], ...((line['or'] as string[] | undefined) ?? [])].join(' or '),
  );
  expect(rows.map((row) => row[1])).toEqual(forms);
});

test('a table made elsewhere: other order, other separator, other words, cells left out', () => {
  const csv = 'Points;Line;C or X;Section\r\n30;FF222a333b444a55b;concealed;Runs\r\n;NNNN EEEE WWWW SS;;Runs\r\n';
  expect(expectValue(cardOfLines('runs.csv', csv)).sections).toEqual([
    {
      name: 'Runs',
      lines: [
        { id: 'runs-1', pattern: 'FF 222a 333b 444a 55b', slide: 0, concealed: true, points: 30 },
        { id: 'runs-2', pattern: 'NNNN EEEE WWWW SS', slide: 0, concealed: false, points: 25 },
      ],
    },
  ]);
  expect(expectValue(cardOfLines('plain.csv', 'FF222a333b444a55b,any run,x,35\n')).sections[0]?.lines[0]).toMatchObject(
    {
      pattern: 'FF 222a 333b 444a 55b',
      slide: 1,
      concealed: false,
      points: 35,
    },
  );
});

test('files of lines are known by their names', () => {
  expect(['a.txt', 'A.CSV', 'a.card.json', 'a.tsv', 'txt'].map(holdsLines)).toEqual([true, true, false, true, false]);
});

test('a text keeps title, season and sections of one name; what a spreadsheet would take for a formula comes back', () => {
  const card = withUs();
  const twice = { ...card, title: 'Mine', season: '2027', sections: [...card.sections, ...card.sections.slice(0, 1)] };
  const back = expectValue(cardOfLines('mine-2027.lines.txt', textOfLines(twice)));
  expect([back['title'], back['season']]).toEqual(['Mine', '2027']);
  expect(said(back)).toEqual(said(twice));
  const noted = { ...card, sections: [{ name: '-like', lines: [{ pattern: 'FF 222a 333b 444a 55b', note: '=1+1' }] }] };
  expect(said(expectValue(cardOfLines('x.csv', tableOfLines(noted))))).toEqual(said(noted));
  expect(expectValue(cardOfLines('thursday-card.lines.csv', tableOfLines(card)))['title']).toBe('thursday card');
});

test('rows copied from the table go in with their head, without it, and without the section', () => {
  const lines = (text: string): unknown => expectValue(cardOfLines('x.txt', text)).sections;
  const one = [
    {
      name: 'Runs',
      lines: [{ id: 'runs-1', pattern: 'FF 222a 333b 444a 55b', slide: 1, concealed: true, points: 30 }],
    },
  ];
  expect(lines('Section\tLine\tMoves\tC or X\tPoints\r\nRuns\tFF 222a 333b 444a 55b\t1 any number\tC\t30\r\n')).toEqual(
    one,
  );
  expect(lines('Runs\tFF 222a 333b 444a 55b\t1\tC\t30')).toEqual(one);
});

test('a letter, a head alone and an empty file are no lines', () => {
  const letter = 'Dear Anne,\nthank you for the tiles and the tea.\nSee you on Thursday.';
  const codes = ['letter.txt', 'head.csv', 'none.txt', 'none.csv'].map((name, at) => {
    const card = cardOfLines(name, [letter, 'Section,Line\n', '', ''][at] ?? '');
    return card.ok ? 'ok' : card.problem.code;
  });
  expect(codes).toEqual(['no-lines', 'no-lines', 'no-lines', 'no-lines']);
});
