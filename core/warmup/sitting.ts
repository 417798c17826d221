import { MOST_SECONDS, type SessionItem } from './session.ts';

/** A sitting of practice: what is still to come, and when it began. */
export interface Sitting {
  readonly left: readonly SessionItem[];
  readonly done: number;
  readonly of: number;
  /** Milliseconds since any fixed moment. */
  readonly startedAt: number;
}

export function beginSitting(items: readonly SessionItem[], now: number): Sitting {
  return { left: items, done: 0, of: items.length, startedAt: now };
}

/** The next problem with the sitting after it; null for the problem when none is left or ten minutes are over (R6). */
export function nextInSitting(
  sitting: Sitting,
  now: number,
): { readonly item: SessionItem | null; readonly sitting: Sitting } {
  const [item, ...left] = sitting.left;
  const over = now - sitting.startedAt > MOST_SECONDS * 1000;
  if (item === undefined || over) return { item: null, sitting: { ...sitting, left: [] } };
  return { item, sitting: { ...sitting, left, done: sitting.done + 1 } };
}
