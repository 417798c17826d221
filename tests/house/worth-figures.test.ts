import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const GAIN = /[+−]\d+\.\d\d ± \d+\.\d\d/g;

function gainsIn(file: string, line: RegExp): string[] {
  const lines = readFileSync(join(ROOT, file), 'utf8').split('\n');
  return lines.filter((text) => line.test(text)).flatMap((text) => text.match(GAIN) ?? []);
}

test('what the rules say of the worth of advice is what was played last, of every setting that was played', () => {
  const told = gainsIn('core/RULES.md', /^\| (?:exchange|play|whole game) \|/);
  expect(told).not.toEqual([]);
  expect(told.toSorted()).toEqual(gainsIn('core/future/WORTH.md', /invented cards, pooled/).toSorted());
});
