import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { findLines } from '../../core/card/find.ts';
import { readCard } from '../../core/card/file.ts';

const { document: CARD } = expectValue(
  readCard({
    format: 'windrow.card',
    version: 1,
    title: 'T',
    season: '',
    sections: [
      {
        name: 'Long Runs',
        lines: [
          { id: 'a', pattern: 'FF 222a 333a 4444b 55b', points: 30 },
          { id: 'b', pattern: 'FF 22', note: 'Ask again' },
        ],
      },
      { name: 'Winds', lines: [{ id: 'c', pattern: 'NNNN EEEE WWWW SS', or: ['NNN EEE WWWW SSSS'], points: 25 }] },
    ],
  }),
);

test.each([
  ['222A333', ['0-0']],
  [' ff  22', ['0-0', '0-1']],
  ['long runs', ['0-0', '0-1']],
  ['eee wwwws', ['1-0']],
  ['30', ['0-0']],
  ['25', ['0-1', '1-0']],
  ['again', ['0-1']],
  ['', ['0-0', '0-1', '1-0']],
  ['999', []],
])('%j is found in the lines %j', (words, wanted) => {
  expect(findLines(CARD, words).map(({ section, line }) => `${section}-${line}`)).toEqual(wanted);
});
