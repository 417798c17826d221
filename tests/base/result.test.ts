import { expect, test } from 'vitest';
import { expectValue, failure, success } from '../../core/base/result.ts';

test('a value that must be there is given back; a problem in its place is an error of ours, told in its words', () => {
  expect(expectValue(success(0))).toBe(0);
  expect(() => expectValue(failure('bad-tiles', 'The 5 at place 1 has no suit.'))).toThrow(
    'The 5 at place 1 has no suit.',
  );
});

test('a problem has a place only where one is told, the first place too', () => {
  expect(failure('a', 'No.')).toEqual({ ok: false, problem: { code: 'a', message: 'No.' } });
  expect(failure('a', 'No.', 0).problem.at).toBe(0);
});
