/**
 * Where a key takes the focus in a row of `count` things with one tab stop: Left and Right by one,
 * stopping at the ends, Home and End to them. Null when it is not such a key.
 */
export function rove(key: string, at: number, count: number): number | null {
  const last = count - 1;
  switch (key) {
    case 'ArrowLeft':
      return Math.max(0, at - 1);
    case 'ArrowRight':
      return Math.min(last, at + 1);
    case 'Home':
      return 0;
    case 'End':
      return last;
    default:
      return null;
  }
}
