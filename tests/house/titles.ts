import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const TESTS = resolve(import.meta.dirname, '..');

/** What all tests are called: what stands in quotes after `test(`, `it(`, `describe(` or `.each(…)(`. */
export function testTitles(): string[] {
  return readdirSync(TESTS, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(test|spec)\.ts$/.test(name))
    .flatMap((name) => titlesIn(readFileSync(join(TESTS, name), 'utf8')));
}

function titlesIn(code: string): string[] {
  return [...code.matchAll(/(?:\b(?:test|it|describe)|\))(?:\.\w+)*\(\s*(['"`])([^\n]*?)\1/g)].map(
    ([, , title = '']) => title,
  );
}
