import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { replay } from '../../core/game/state.ts';
import { summaryOf } from '../../core/journal/summary.ts';
import { journalCsv } from '../../renderer/places/journal/csv.ts';
import { gameRecord } from '../main/support/desks.ts';

const AT = '2026-11-25T18:00:00Z';

/** The cells of the table of one game whose every text is `words`. */
function cellsWith(words: string): readonly string[] {
  const notes = [words, 'a second note'].map((text) => ({ type: 'noted', text, at: AT }) as const);
  const record = gameRecord('g-1', { place: words, tags: [words], events: notes });
  const card = { title: words, season: words, sections: [] };
  const summary = summaryOf(record, replay(record.events).state, card);
  const csv = journalCsv([{ summary, figures: { aways: [{ moment: 'deal', away: -3 }], aimed: words } }]);
  return Papa.parse<string[]>(csv.slice(1), { skipEmptyLines: true }).data[1] ?? [];
}

/** How a spreadsheet knows a formula: by these at the start of a cell (OWASP, "CSV Injection"). */
test.each(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])(
  'a text that begins with %j is disarmed in every cell of the table, of several lines too; numbers stay numbers',
  (first) => {
    for (const words of [`${first}cmd()`, `${first}HYPERLINK("http://evil.example";"x")`, `${first}1\n${first}2`]) {
      const cells = cellsWith(words);
      expect(cells.length).toBeGreaterThan(20);
      expect(cells.filter((cell) => cell.includes(words)).length).toBeGreaterThanOrEqual(5);
      const armed = cells.filter((cell) => /^[=+\-@\t\r\n＝＋－＠]/.test(cell) && !/^-?\d+$/.test(cell));
      expect(armed).toEqual([]);
      expect(cells).toContain('-3');
    }
  },
);
