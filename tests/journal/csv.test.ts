import { describe, expect, test } from 'vitest';
import { replay } from '../../core/game/state.ts';
import { TABLE_HEADER } from '../../core/journal/table-rows.ts';
import { summaryOf } from '../../core/journal/summary.ts';
import { journalCsv } from '../../renderer/places/journal/csv.ts';
import { gameRecord } from '../main/support/desks.ts';
import { readRfc4180 } from '../reference/rfc4180.ts';

const AT = '2026-11-25T18:00:00Z';

/** The table of one game whose every text is `words`, without the mark before it. */
function tableWith(words: string): readonly string[][] {
  const notes = [words, 'a second note'].map((text) => ({ type: 'noted', text, at: AT }) as const);
  const record = gameRecord('g-1', { place: words, tags: [words], events: notes });
  const card = { title: words, season: words, sections: [] };
  const summary = summaryOf(record, replay(record.events).state, card);
  const csv = journalCsv([{ summary, figures: { aways: [{ moment: 'deal', away: -3 }], aimed: words } }]);
  expect(csv.startsWith('\uFEFF')).toBe(true);
  return readRfc4180(csv.slice(1));
}

describe('the reader of the tests, by examples of RFC 4180, section 2', () => {
  test.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
    ['a, b,', [['a', ' b', '']]],
  ])('%j', (text, records) => {
    expect(readRfc4180(text)).toEqual(records);
  });

  test.each(['a,b\r\nc', 'a"b', '"a', '"a"b', 'a\nb', 'a\rb'])('%j is no such file', (text) => {
    expect(() => readRfc4180(text)).toThrow(/^RFC 4180: /);
  });
});

test('RFC 4180: a reader by its grammar finds every text again, with commas, quotes and line ends in it', () => {
  for (const words of [
    'plain',
    'a, b',
    'say "six"',
    '"',
    '""',
    'two\r\nlines',
    'two\nlines',
    ' blanks ',
    'Éclair, “quoted”',
  ]) {
    const [header, row, ...rest] = tableWith(words);
    expect(header).toEqual(TABLE_HEADER);
    expect(rest).toEqual([]);
    expect(row?.filter((cell) => cell.includes(words)).length, words).toBeGreaterThanOrEqual(5);
  }
});

/** How a spreadsheet knows a formula: by these at the start of a cell (OWASP, "CSV Injection"). */
test.each(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])(
  'a text that begins with %j is disarmed in every cell of the table, of several lines too; numbers stay numbers',
  (first) => {
    for (const words of [`${first}cmd()`, `${first}HYPERLINK("http://evil.example";"x")`, `${first}1\n${first}2`]) {
      const cells = tableWith(words)[1] ?? [];
      expect(cells.length).toBeGreaterThan(20);
      expect(cells.filter((cell) => cell.includes(words)).length).toBeGreaterThanOrEqual(5);
      const armed = cells.filter((cell) => /^[=+\-@\t\r\n＝＋－＠]/.test(cell) && !/^-?\d+$/.test(cell));
      expect(armed).toEqual([]);
      expect(cells).toContain('-3');
    }
  },
);
