/** As in core/card/check-line.ts: whole, from 0 to 1000. */
const MOST_POINTS = 1000;

/** The points that a text says; null when it says none. */
export function pointsFrom(text: string): number | null {
  if (!/^\s*\d{1,4}\s*$/.test(text)) return null;
  const points = Number(text);
  return points <= MOST_POINTS ? points : null;
}
