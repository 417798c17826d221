import { expect, test } from 'vitest';
import { judgeAdvisories, judgeElectron, supplyReport } from '../../main/package/supply.mjs';

const audit = (high: number, critical: number): string =>
  JSON.stringify({ metadata: { vulnerabilities: { low: 1, high, critical, total: 1 + high + critical } } });

test('CR-E2: a high or critical advisory on what is shipped is bad; lesser ones are told of', () => {
  expect(judgeAdvisories(audit(0, 0))).toMatchObject({ state: 'good', words: expect.stringContaining('1 in all') });
  expect(judgeAdvisories(audit(1, 0)).state).toBe('bad');
  expect(judgeAdvisories(audit(0, 1)).state).toBe('bad');
});

test('CR-E2: without an answer the check is skipped, and says so; it never passes by silence', () => {
  for (const printed of ['', '{"message":"405 Method Not Allowed"}', '[]', 'null', '{"metadata":{}}']) {
    expect(judgeAdvisories(printed)).toMatchObject({
      state: 'skipped',
      words: expect.stringContaining('not looked up'),
    });
  }
});

const DAY = 86_400_000;
const NOW = Date.parse('2026-11-25T00:00:00Z');
const releases = (days: Readonly<Record<string, number>>): string =>
  JSON.stringify(
    Object.fromEntries(
      Object.entries(days).map(([version, age]) => [version, new Date(NOW - age * DAY).toISOString()]),
    ),
  );

test('security item 16: a newer release of the same major must be taken within 14 days', () => {
  const judge = (days: Readonly<Record<string, number>>): string => judgeElectron(releases(days), '45.4.1', NOW).state;
  expect(judge({ '45.4.1': 20, '45.5.0': 13 })).toBe('good');
  expect(judge({ '45.4.1': 20, '45.5.0': 15 })).toBe('bad');
  expect(judge({ '45.4.1': 20, '45.10.0': 15 })).toBe('bad');
  expect(judge({ '45.4.1': 20, '45.4.0': 30, '44.9.9': 15, '46.0.0': 15, '45.5.0-beta.1': 15 })).toBe('good');
  expect(judge({ '45.5.0': 15 })).toBe('skipped');
  expect(judgeElectron('', '45.4.1', NOW).state).toBe('skipped');
});

test('CR-E2, security item 16: what the calendar brings is a warning, and an error before a release; always it is told', () => {
  const good = { state: 'good', words: 'All is well.' } as const;
  const bad = { state: 'bad', words: 'Too old.' } as const;
  const skipped = { state: 'skipped', words: 'No answer.' } as const;
  expect(supplyReport([good, bad], false)).toEqual({ text: 'good: All is well.\nwarning: Too old.', exitCode: 0 });
  expect(supplyReport([bad, skipped], true)).toEqual({ text: 'error: Too old.\nskipped: No answer.', exitCode: 1 });
  expect(supplyReport([good, skipped], true).exitCode).toBe(0);
});
