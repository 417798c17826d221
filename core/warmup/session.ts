import { fingerprint } from '../base/fingerprint.ts';
import { type Random, shuffle } from '../base/random.ts';
import { dueDay, HORIZON_DAYS } from '../base/spacing.ts';
import type { PassStep } from '../exchange/steps.ts';
import { type Decision, isRight, judgementOf } from '../review/decision.ts';
import type { DealKind } from './deal-kinds.ts';
import type { AnswerEntry, MissEntry, PracticeEntry } from './history-file.ts';
import { decisionKey } from './history.ts';

/** A problem of a session: what kind of problem to deal anew, and the miss that it repeats. */
export interface SessionItem {
  /** Null for a problem that is not one of the own ones. */
  readonly miss: string | null;
  readonly kind: DealKind;
  readonly step: PassStep;
}

/** The most problems of a session, and the most seconds that it takes (CR-R6). */
export const MOST_ITEMS = 12;
const MOST_SECONDS = 600;
/** The most own misses that wait; the costliest ones, so that missed days never pile up (CR-R6). */
export const MOST_WAITING = 20;
/** Of ten problems at least seven are own ones, as long as there are own ones (CR-R5). */
const OWN_PART = 0.7;
/** With this many kinds of decision or more, no two alike follow each other (CR-R4). */
const KINDS_TO_MIX = 3;

/** Problems for those who have no own misses yet, and for the other three of ten. */
const GENERAL: readonly Omit<SessionItem, 'miss'>[] = [
  { kind: 'pair', step: 'right' },
  { kind: 'scattered', step: 'right' },
  { kind: 'two-ways', step: 'right' },
  { kind: 'one-joker', step: 'across' },
  { kind: 'two-jokers', step: 'right' },
  { kind: 'pung', step: 'left' },
];

export interface SessionPlan {
  readonly history: readonly PracticeEntry[];
  readonly today: number;
  readonly random: Random;
  readonly horizonDays?: number;
  readonly size?: number;
}

/** Own misses that are due, costliest first, at most `MOST_WAITING`. */
export function dueMisses({ history, today, horizonDays = HORIZON_DAYS }: Omit<SessionPlan, 'random'>): MissEntry[] {
  const misses = history.filter((entry): entry is MissEntry => entry.type === 'miss');
  return misses
    .filter((miss) => (dueDay(answersTo(miss, history), horizonDays) as number) <= today)
    .sort((one, other) => other.cost - one.cost || one.day - other.day)
    .slice(0, MOST_WAITING);
}

/** Making the miss counts as its first answer. */
function answersTo(
  miss: MissEntry,
  history: readonly PracticeEntry[],
): { readonly day: number; readonly right: boolean }[] {
  const later = history.filter((entry): entry is AnswerEntry => entry.type === 'answer' && entry.miss === miss.id);
  return [{ day: miss.day, right: false }, ...later.map(({ day, verdict }) => ({ day, right: isRight(verdict) }))];
}

/** The problems of a session, in the order in which they are asked. */
export function planSession(plan: SessionPlan): SessionItem[] {
  const size = Math.min(plan.size ?? MOST_ITEMS, MOST_ITEMS);
  const due = dueMisses(plan).map(({ id, kind, step }): SessionItem => ({ miss: id, kind, step }));
  const own = due.slice(0, size);
  const general = shuffle(
    GENERAL.map((each): SessionItem => ({ ...each, miss: null })),
    plan.random,
  );
  if (own.length === 0) return mixed(repeated(general, size));
  const mixedOwn = mixed(own.slice(0, Math.max(ownOf(size), size - general.length)));
  return withGeneral(mixedOwn, general, size);
}

function ownOf(size: number): number {
  return Math.ceil(size * OWN_PART);
}

function repeated(items: readonly SessionItem[], size: number): SessionItem[] {
  return Array.from({ length: size }, (_, place) => items[place % items.length] as SessionItem);
}

/** Puts general problems between own ones, never more than three of ten, never two alike side by side. */
function withGeneral(own: readonly SessionItem[], general: readonly SessionItem[], size: number): SessionItem[] {
  const room = Math.min(size - own.length, Math.floor((own.length * (1 - OWN_PART)) / OWN_PART + 1e-9));
  let items = [...own];
  for (const extra of general.slice(0, Math.max(0, room))) {
    const place = placeFor(items, extra);
    if (place >= 0) items = items.toSpliced(place, 0, extra);
  }
  return items;
}

/** Where an item stands beside none of its kind, the later the better; -1 if nowhere. */
function placeFor(items: readonly SessionItem[], extra: SessionItem): number {
  for (let place = items.length; place > 0; place -= 1) {
    const beside = [items[place - 1], items[place]];
    if (beside.every((each) => each === undefined || decisionKey(each) !== decisionKey(extra))) return place;
  }
  return -1;
}

/**
 * Orders items so that no two of one kind of decision follow each other when there are three kinds
 * or more; the rest is left for another day. With fewer kinds they take turns as
 * far as that goes.
 */
export function mixed(items: readonly SessionItem[]): SessionItem[] {
  const strict = new Set(items.map(decisionKey)).size >= KINDS_TO_MIX;
  const left = [...items];
  const order: SessionItem[] = [];
  while (left.length > 0) {
    const last = order.at(-1);
    const others = left.filter((item) => last === undefined || decisionKey(item) !== decisionKey(last));
    if (others.length === 0 && strict) break;
    const next = mostOfKind(others.length > 0 ? others : left, left);
    left.splice(left.indexOf(next), 1);
    order.push(next);
  }
  return order;
}

/** The first item of the kind of which most are left. */
function mostOfKind(items: readonly SessionItem[], left: readonly SessionItem[]): SessionItem {
  const count = (item: SessionItem): number => left.filter((each) => decisionKey(each) === decisionKey(item)).length;
  return items.reduce((most, item) => (count(item) > count(most) ? item : most));
}

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

/** The next problem with the sitting after it; null for the problem when none is left or ten minutes are over (CR-R6). */
export function nextInSitting(
  sitting: Sitting,
  now: number,
): { readonly item: SessionItem | null; readonly sitting: Sitting } {
  const [item, ...left] = sitting.left;
  const over = now - sitting.startedAt > MOST_SECONDS * 1000;
  if (item === undefined || over) return { item: null, sitting: { ...sitting, left: [] } };
  return { item, sitting: { ...sitting, left, done: sitting.done + 1 } };
}

/** A pass of a game that cost something: what a miss is made of, once the kind of its rack is known. */
export interface OwnMiss {
  /** The same for the same decision, so that it is kept once. */
  readonly id: string;
  readonly rack: string;
  readonly step: PassStep;
  readonly cost: number;
  /** Half of the interval of the cost; null for an exact one. */
  readonly halfWidth: number | null;
}

/** The passes of a looked-back game that cost more than a tie; forced passes and second-round decisions are excluded. */
export function ownMisses(gameId: string, decisions: readonly Decision[]): OwnMiss[] {
  return decisions.flatMap((decision) => {
    const { kind, step, rack, forced, place } = decision;
    const { cost, halfWidth, verdict } = judgementOf(decision);
    if (step === null || kind === 'second-round' || forced || isRight(verdict)) return [];
    return [{ id: fingerprint(`${gameId} ${place}`), rack, step, cost, halfWidth }];
  });
}
