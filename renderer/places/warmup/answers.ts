import type { Outcome } from '../../worker/client.ts';
import type { Answered } from '../../worker/calls.ts';
import { warmUpWords } from '../../words/warmup.ts';

/** An outcome as an answer with words; null when a newer question took its place. */
export function answerOf<Value>(outcome: Outcome<Answered<Value>>): Answered<Value> | null {
  if (outcome.status === 'done') return outcome.value;
  if (outcome.status === 'cancelled') return null;
  return { ok: false, message: `${warmUpWords.failed} ${outcome.message}` };
}

/** What an outcome tells; null where it tells nothing. */
export function valueOf<Value>(outcome: Outcome<Answered<Value>>): Value | null {
  return outcome.status === 'done' && outcome.value.ok ? outcome.value.value : null;
}

/** A fresh random seed, 0 to 2^32 - 1. */
export function freshSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}

/** Whole local days since 1970. */
export function today(now: Date = new Date()): number {
  return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / 86_400_000);
}
