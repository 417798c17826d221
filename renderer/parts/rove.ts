/**
 * Where a key takes the focus in a row of `count` things with one tab stop: Left and Right by one,
 * Home and End to its ends; null when it is not such a key. As the ARIA practices have it, a row of
 * buttons (tabs, a toolbar) goes round at its ends; a list of things (tiles, groups) stops there.
 */
export function rove(key: string, at: number, count: number, ends: 'stop' | 'round' = 'stop'): number | null {
  const last = count - 1;
  const beyond = ends === 'round';
  switch (key) {
    case 'ArrowLeft':
      return at > 0 ? at - 1 : beyond ? last : 0;
    case 'ArrowRight':
      return at < last ? at + 1 : beyond ? 0 : last;
    case 'Home':
      return 0;
    case 'End':
      return last;
    default:
      return null;
  }
}

/** Where Up and Down take the focus in several rows: to the nearest one above or below, as they are drawn now. */
export function climb(key: string, at: number, things: readonly (Element | null)[]): number | null {
  if (key !== 'ArrowUp' && key !== 'ArrowDown') return null;
  const from = things[at]?.getBoundingClientRect();
  if (!from) return null;
  let best: number | null = null;
  let least = Infinity;
  for (const [other, thing] of things.entries()) {
    const box = thing?.getBoundingClientRect();
    const down = box ? (box.top - from.top) * (key === 'ArrowDown' ? 1 : -1) : 0;
    if (!box || down <= 1) continue;
    const distance = down * 4 + Math.abs(box.left - from.left);
    if (distance < least) [best, least] = [other, distance];
  }
  return best;
}
