/**
 * Puts a value at the end of a map, as the one that was used last, and drops the oldest ones beyond `most`; returns the
 * value.
 */
export function keepRecent<Key, Value>(kept: Map<Key, Value>, key: Key, value: Value, most: number): Value {
  kept.delete(key);
  kept.set(key, value);
  for (const oldest of kept.keys()) {
    if (kept.size <= most) break;
    kept.delete(oldest);
  }
  return value;
}
