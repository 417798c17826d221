import { type Rate, rateOf } from '../base/statistics.ts';
import { isRight } from '../review/decision.ts';
import type { DealKind } from './deal-kinds.ts';
import type { AnswerEntry, PracticeEntry } from './history-file.ts';
import { givenUp, type Phase, phaseOf } from './history.ts';
import type { SessionItem } from './session.ts';

/** The most seconds that a sitting takes (CR-R6). */
const MOST_SECONDS = 600;

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

/** What a sitting came to. */
export interface SittingSummary {
  /** In the order in which they were answered. */
  readonly answers: readonly AnswerEntry[];
  readonly right: Rate;
  /** Chance to win given up in all, as a sum of fractions of 1. */
  readonly cost: number;
  /** The answers that cost most, at most three; none that is as good as the best. */
  readonly another: readonly AnswerEntry[];
  /** What to work on; null where nothing cost anything that counts, and on fewer than three answers. */
  readonly workOn: WorkOn | null;
}

/** Decisions that are alike: of one phase of the exchange, or on one kind of rack. */
interface WorkOn {
  readonly phase: Phase | null;
  readonly kind: DealKind | null;
  /** Decisions of this kind that cost something, and what they cost together. */
  readonly decisions: number;
  readonly cost: number;
}

/** How many answers are worth another look. */
const ANOTHER_LOOK = 3;
/** On fewer answers nothing is said of what to work on. */
const FEWEST_TO_JUDGE = 3;

export function summaryOf(answers: readonly AnswerEntry[]): SittingSummary {
  const wrong = answers.filter(({ verdict }) => !isRight(verdict)).sort((one, other) => other.cost - one.cost);
  return {
    answers,
    right: rateOf(answers.length - wrong.length, answers.length),
    cost: givenUpBy(answers),
    another: wrong.slice(0, ANOTHER_LOOK),
    workOn: answers.length < FEWEST_TO_JUDGE ? null : workOn(wrong),
  };
}

/** What cost most together among what cost something twice or more; else the one that cost most. */
function workOn(wrong: readonly AnswerEntry[]): WorkOn | null {
  const [worst] = wrong;
  if (worst === undefined) return null;
  const phases = groups(wrong, ({ step }) => phaseOf(step)).map(([phase, each]) => ({
    phase,
    kind: null,
    ...sumOf(each),
  }));
  const kinds = groups(wrong, ({ kind }) => kind).map(([kind, each]) => ({ phase: null, kind, ...sumOf(each) }));
  const alike = [...kinds, ...phases].filter(({ decisions, kind }) => decisions > 1 && kind !== 'any');
  alike.sort((one, other) => other.cost - one.cost);
  return alike[0] ?? { phase: phaseOf(worst.step), kind: worst.kind, ...sumOf([worst]) };
}

/** What answers gave up together. */
export function givenUpBy(answers: readonly AnswerEntry[]): number {
  return answers.reduce((sum, answer) => sum + givenUp(answer), 0);
}

function sumOf(answers: readonly AnswerEntry[]): Pick<WorkOn, 'decisions' | 'cost'> {
  return { decisions: answers.length, cost: givenUpBy(answers) };
}

function groups<Name>(answers: readonly AnswerEntry[], nameOf: (answer: AnswerEntry) => Name): [Name, AnswerEntry[]][] {
  const names = [...new Set(answers.map(nameOf))];
  return names.map((name) => [name, answers.filter((answer) => nameOf(answer) === name)]);
}

/** The answers of a history that can be opened again, the newest first: sitting by sitting, single deals day by day. */
export function sittingsOf(history: readonly PracticeEntry[]): readonly (readonly AnswerEntry[])[] {
  const answers = history.filter((entry): entry is AnswerEntry => entry.type === 'answer' && entry.asked !== undefined);
  return groups(answers, ({ sitting, day }) => sitting ?? `day ${day}`)
    .map(([, each]) => each)
    .reverse();
}
