import { fingerprint } from '../base/fingerprint.ts';
import { type Random, shuffle } from '../base/random.ts';
import type { PassStep } from '../exchange/steps.ts';
import { type Decision, isRight, judgementOf } from '../review/decision.ts';
import type { DealKind } from './deal-kinds.ts';
import type { PracticeEntry } from './history-file.ts';
import { decisionKey } from './history.ts';
import { dueMisses } from './returns.ts';

/** A problem of a session: what kind of problem to deal anew, and the miss that it repeats. */
export interface SessionItem {
  /** Null for a problem that is not one of the own ones. */
  readonly miss: string | null;
  readonly kind: DealKind;
  readonly step: PassStep;
}

/** The most problems of a session (CR-R6). */
export const MOST_ITEMS = 12;
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
