import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { powersOf, THIRDS } from '../../core/table/weights.ts';

const TABLE = resolve(import.meta.dirname, '../../core/table');

/** What the language leaves to the engine to round: games that hang on it differ from machine to machine. */
const ROUNDED_BY_ENGINE = /\*\*=?(?!\s*\d)|\bMath\.(?:a?(?:sin|cos|tan)h?|atan2|cbrt|exp|expm1|hypot|log\w*|pow)\b/g;

test('CH-10: what the simulated table computes itself is rounded alike by all engines', () => {
  const sources = readdirSync(TABLE, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  expect(sources.length).toBeGreaterThan(20);
  const found = sources.flatMap((name) => {
    const code = readFileSync(join(TABLE, name), 'utf8').replaceAll(/\/\*[^]*?\*\/|\/\/.*/g, '');
    return [...code.matchAll(ROUNDED_BY_ENGINE)].map(([what]) => `${name}: ${what}`);
  });
  expect(found).toEqual([]);
});

/** A positive number of at least 2^-140 or so, times 2^200, exactly. */
function scaled(value: number): bigint {
  return BigInt(value * 2 ** 200);
}

test('the powers of a third that are written out are right to the last place', () => {
  expect(THIRDS).toHaveLength(17);
  const third = scaled(1 / 3);
  let exact = scaled(1);
  for (const [power, value] of THIRDS.entries()) {
    const lastPlace = scaled(2 ** (Math.floor(Math.log2(value)) - 52));
    const off = scaled(value) - exact;
    expect(off < 0n ? -off : off, `power ${power}`).toBeLessThanOrEqual(lastPlace);
    exact = (exact * third) >> 200n;
  }
});

test('powers of fractions of two are exact', () => {
  for (const [power, value] of powersOf(1 / 256).entries()) expect(scaled(value)).toBe(1n << BigInt(200 - 8 * power));
  expect(powersOf(1 / 4)).toHaveLength(18);
});
