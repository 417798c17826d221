import { expect, test } from 'vitest';
import { fingerprint } from '../../core/base/fingerprint.ts';

// Fowler, Noll and Vo's own test vectors of FNV-1a with 64 bits, from memory.
test.each([
  ['', 'cbf29ce484222325'],
  ['a', 'af63dc4c8601ec8c'],
  ['foobar', '85944171f73967e8'],
])('the fingerprint of %j is the published %s', (text, published) => {
  expect(fingerprint(text)).toBe(published);
});
