import { expect, test } from 'vitest';
import { readTyped, writeOutTyped } from '../../core/card/typing.ts';
import { parsePattern } from '../../core/card/parse.ts';

test.each([
  ['FF222a', 'FF 222a'],
  ['2468a', '2a 4a 6a 8a'],
  ['1a2a3a', '1a 2a 3a'],
  ['112233a', '11a 22a 33a'],
  ['2026a', '2a 0 2a 6a'],
  ['ff 222A', 'FF 222a'],
  ['FF1111a2222b3333c', 'FF 1111a 2222b 3333c'],
  ['22d 33D', '22dot 33dot'],
  ['22bam 33Craks 44 dots', '22bam 33crak 44dot'],
  ['nn ee W ww x', 'NN EE W ww x'],
  ['NNEWWSS', 'NN E WW SS'],
  ['news', 'NEWS'],
  ['FFNEWS2222a', 'FF NEWS 2222a'],
  ['dddB ggg rr 00', 'DDDb GGG RR 00'],
  ['DDDcrak', 'DDDcrak'],
  ['11a=22b’', "11a= 22b'"],
  ['2468bam=', '2bam= 4bam= 6bam= 8bam='],
  ['FF, 222a; 33b', 'FF 222a 33b'],
  // What can't be understood stays.
  ['FF 11?a', 'FF 11?a'],
  ['ff2?', 'FF 2?'],
  ['2468', '2468'],
  ['FFj', 'FFj'],
  ['Dear', 'Dear'],
  ['DDDd', 'DDDdot'],
  ['dddd', 'DDDD'],
  ['22DDa', '22DDa'],
  ['22dDDa', '22dot DDa'],
  ['22D', '22dot'],
  ['222 D', '222 D'],
  ['222 d', '222dot'],
  ['', ''],
])('%s is written out as %s', (typed, written) => {
  expect(writeOutTyped(typed).text).toBe(written);
});

test('what a file may hold is left as it is', () => {
  for (const text of ['FF 1111a 2222b 3333c', "22a' 333bam= NEWS DDDa ww xx", 'NN EE WW SS 000000', '1a 1b 1c']) {
    expect(writeOutTyped(text).text).toBe(text);
  }
});

test('a fault is placed where it was typed', () => {
  const { problems, forms } = readTyped('ff222a3?');
  expect(forms).toEqual(['FF 222a 3?']);
  expect(problems[0]?.at).toBe(7);
  const [second] = readTyped('FF 222a 333a 4444a 55a or ff22q').problems;
  expect(second?.at).toBe('FF 222a 333a 4444a 55a or ff22'.length);
});

test('forms with "or" between them are the forms of one line', () => {
  const { forms, problems } = readTyped('ff222a333a4444a55a OR ff222a333a4444b55b');
  expect(forms).toEqual(['FF 222a 333a 4444a 55a', 'FF 222a 333a 4444b 55b']);
  expect(problems).toEqual([]);
  expect(readTyped('FF 222a or').forms).toEqual(['FF 222a', '']);
});

test('however it is typed, a whole line reads as its pattern', () => {
  const line = 'FF 1111a 2222b 3333c';
  const forms = [line, line.replaceAll(' ', ''), line.toLowerCase(), line.toUpperCase(), ` ${line} `];
  for (const typed of forms) expect(parsePattern(readTyped(typed).forms[0] ?? '').ok, typed).toBe(true);
});
