import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { PlaceMap } from '../../core/reading/deficit-tree.ts';

test('a map of places agrees with a Map, as it grows and after', () => {
  const random = randomFromSeed(103);
  const map = new PlaceMap(2);
  const plain = new Map<number, number>();
  for (let round = 0; round < 4_000; round += 1) {
    // Keys that share their last digits, too.
    const key = round % 3 === 0 ? random.below(64) * 65_536 : random.below(3_000);
    expect(map.get(key)).toBe(plain.get(key) ?? -1);
    map.set(key, round);
    plain.set(key, round);
  }
  for (const [key, value] of plain) expect(map.get(key)).toBe(value);
  expect(map.get(3_001)).toBe(-1);
});

test('a full map finds every key, also those whose places run past its end', () => {
  const map = new PlaceMap(2);
  const keys = Array.from({ length: 500 }, (_, place) => place * 7_919);
  for (const [value, key] of keys.entries()) {
    map.set(key, value);
    map.set(key, value + 1);
  }
  expect(keys.map((key) => map.get(key))).toEqual(keys.map((_, value) => value + 1));
  expect(keys.map((key) => map.get(key + 1))).toEqual(keys.map(() => -1));
});
