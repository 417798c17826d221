import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const COMPANY: Readonly<Record<string, string>> = { beginner: 'beginners', planner: 'planners' };
const GAIN = /[+−]\d+\.\d\d ± \d+\.\d\d/g;

/** The cells of a table's rows that match. */
function rowsIn(file: string, line: RegExp): string[][] {
  const lines = readFileSync(join(ROOT, file), 'utf8').split('\n');
  return lines.filter((text) => line.test(text)).map((text) => text.split('|').map((cell) => cell.trim()));
}

/** Each gain that the rules tell, as "part, against, among: gain". */
function told(): string[] {
  return rowsIn('core/RULES.md', /^\| (?:exchange|play|whole game) \|/).flatMap(
    ([, part, against = '', among = '', gains = '']) => {
      const all = gains.match(GAIN) ?? [];
      return against
        .split(', ')
        .flatMap((rule, at) =>
          among.split(', ').map((company, place) => `${part}, ${rule}, ${company}: ${all[at + place] ?? ''}`),
        );
    },
  );
}

/** Each gain that was played, likewise; a part is a chapter of the page. */
function played(): string[] {
  const [, ...chapters] = readFileSync(join(ROOT, 'core/future/WORTH.md'), 'utf8').split(/^## In /m);
  return chapters.flatMap((chapter) => {
    const part = chapter.split('\n', 1)[0]?.replace(/^the /, '') ?? '';
    return chapter
      .split('\n')
      .filter((text) => text.includes('invented cards, pooled'))
      .map((text) => text.split('|').map((cell) => cell.trim()))
      .map(
        ([, , against, among, , , gain = '']) =>
          `${part}, ${against}, ${COMPANY[among ?? ''] ?? among}: ${gain.match(GAIN)?.[0] ?? ''}`,
      );
  });
}

test('what the rules say of the worth of advice is what was played last, of every setting that was played', () => {
  expect(told()).not.toEqual([]);
  expect(told().toSorted()).toEqual(played().toSorted());
});
