import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';

const HOUSE = resolve(import.meta.dirname, '../..');
const text = readFileSync(resolve(HOUSE, 'CHANGELOG.md'), 'utf8');
const versions = [...text.matchAll(/^## (\d+\.\d+\.\d+) \((\d{4}-\d\d-\d\d)\)$/gm)].map(([, name = '', day = '']) => ({
  name,
  day,
}));

test('every chapter of the changelog is a version with its day, the newest first', () => {
  expect(versions).toHaveLength(text.match(/^## /gm)?.length ?? 0);
  expect(versions.length).toBeGreaterThan(1);
  const days = versions.map(({ day }) => day);
  expect(days).toEqual(days.toSorted((one, other) => other.localeCompare(one)));
});

test('its first version is the one that is built, in the lock file too', () => {
  const { version }: { version: string } = JSON.parse(readFileSync(resolve(HOUSE, 'package.json'), 'utf8'));
  const lock: { version: string; packages: Record<string, { version: string }> } = JSON.parse(
    readFileSync(resolve(HOUSE, 'package-lock.json'), 'utf8'),
  );
  expect([versions[0]?.name, lock.version, lock.packages['']?.version]).toEqual([version, version, version]);
});

test('every version has its files kept for tests, and every one that has them a chapter', () => {
  const kept = readdirSync(resolve(HOUSE, 'tests/golden')).filter((name) => /^\d/.test(name));
  expect(kept.length).toBeGreaterThan(0);
  expect(new Set(kept)).toEqual(new Set(versions.map(({ name }) => name)));
});
