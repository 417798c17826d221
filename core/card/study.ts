import { type Random, shuffle } from '../base/random.ts';
import { dueDay, HORIZON_DAYS } from '../base/spacing.ts';
import { askAbout, asksFor, type StudyAsk, type StudyLine, type StudyQuestion } from './study-question.ts';

/** An answer as it is kept, oldest first; all else about study is computed from these. */
export interface StudyAnswer {
  readonly lineId: string;
  readonly ask: StudyAsk;
  readonly right: boolean;
  /** Whole days since any fixed day. */
  readonly day: number;
}

/** Questions of one sitting. */
export const SITTING_SIZE = 12;
/** A missed line comes back after at least so many others, if there are that many. */
const RETRY_AFTER = 2;

/** A sitting: the question to answer now is the first of `queue`; it is over when there is none. */
export interface StudySitting {
  readonly queue: readonly StudyQuestion[];
  readonly answers: readonly StudyAnswer[];
}

export interface StudyPlan {
  readonly lines: readonly StudyLine[];
  readonly history: readonly StudyAnswer[];
  readonly today: number;
  readonly random: Random;
  readonly horizonDays?: number;
  readonly size?: number;
}

/**
 * Chooses what to ask today: lines missed last time, then lines due, then lines never asked, in
 * random order within each. Kinds of question take turns, so that no two alike follow each other.
 */
export function startSitting(plan: StudyPlan): StudySitting {
  const chosen = dueLines(plan).slice(0, plan.size ?? SITTING_SIZE);
  const queue: StudyQuestion[] = [];
  for (const line of shuffle(chosen, plan.random)) {
    const asks = shuffle([...asksFor(line)], plan.random);
    queue.push(askAbout(line, leastUsed(asks, queue), plan.random));
  }
  return { queue, answers: [] };
}

/** The kind asked least so far, but not the one asked last. */
function leastUsed(asks: readonly StudyAsk[], queue: readonly StudyQuestion[]): StudyAsk {
  const used = (ask: StudyAsk): number => queue.filter((question) => question.ask === ask).length;
  const others = asks.filter((ask) => ask !== queue.at(-1)?.ask);
  return others.reduce((least, ask) => (used(ask) < used(least) ? ask : least));
}

/**
 * Takes the answer to the first question. A miss puts the line back further down with a fresh
 * question, so that what is learnt is the line and not the picture.
 */
export function answerQuestion(sitting: StudySitting, choice: number, plan: StudyPlan): StudySitting {
  const [asked, ...left] = sitting.queue;
  if (asked === undefined) return sitting;
  const right = choice === asked.right;
  const answers = [...sitting.answers, { lineId: asked.lineId, ask: asked.ask, right, day: plan.today }];
  const line = plan.lines.find(({ id }) => id === asked.lineId);
  const queue = right || line === undefined ? left : putBack(left, line, asked.ask, plan.random);
  return { queue, answers };
}

/** Lines to ask today, most urgent first; lines whose day has not come are left out. */
export function dueLines({ lines, history, today, random, horizonDays = HORIZON_DAYS }: StudyPlan): StudyLine[] {
  const missed: StudyLine[] = [];
  const due: StudyLine[] = [];
  const fresh: StudyLine[] = [];
  for (const line of shuffle([...lines], random)) {
    const answers = history.filter(({ lineId }) => lineId === line.id);
    const day = dueDay(answers, horizonDays);
    if (day === undefined) fresh.push(line);
    else if (day <= today) (answers.at(-1)?.right === true ? due : missed).push(line);
  }
  return [...missed, ...due, ...fresh];
}

/** Of the three kinds or more that a line has, two neighbours leave one. */
function putBack(left: readonly StudyQuestion[], line: StudyLine, ask: StudyAsk, random: Random): StudyQuestion[] {
  const place = Math.min(RETRY_AFTER, left.length);
  const neighbours = [left[place - 1]?.ask, left[place]?.ask];
  const kinds = [ask, ...shuffle([...asksFor(line)], random)];
  const kind = kinds.find((other) => !neighbours.includes(other)) as StudyAsk;
  return left.toSpliced(place, 0, askAbout(line, kind, random));
}
