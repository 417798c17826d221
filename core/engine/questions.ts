import type { Result } from '../base/result.ts';
import { advise, dead, deadly, lines, plan, read, settle } from './reading-questions.ts';

/**
 * All that the engine can be asked, one line a question. A question is a generator: it takes a
 * request, yields its progress (`undefined` only marks a place where the work may pause or stop)
 * and returns a `Result` of a document. Requests, progress and documents are plain data, which
 * survives a structured clone. Questions that nobody waits for at the first reading are loaded when
 * they are first asked.
 */
export const QUESTIONS = {
  read: () => read,
  plan: () => plan,
  advise: () => advise,
  dead: () => dead,
  deadly: () => deadly,
  lines: () => lines,
  settle: () => settle,
  rivals: async () => (await import('./exchange-questions.ts')).rivals,
  passReasons: async () => (await import('./exchange-questions.ts')).passReasonsFor,
  advisePass: async () => (await import('./exchange-questions.ts')).advisePass,
  futures: async () => (await import('./exchange-questions.ts')).futures,
  fit: async () => (await import('./exchange-questions.ts')).fit,
  fitChance: async () => (await import('./chance-questions.ts')).fitChance,
  calibrate: async () => (await import('./chance-questions.ts')).calibrate,
  gameChance: async () => (await import('./chance-questions.ts')).gameChance,
  handChance: async () => (await import('./chance-questions.ts')).handChance,
  playGames: async () => (await import('./play-questions.ts')).playGames,
  others: async () => (await import('./play-questions.ts')).others,
  open: async () => (await import('./card-questions.ts')).open,
  examine: async () => (await import('./card-questions.ts')).examine,
  lookBack: async () => (await import('./game-questions.ts')).lookBack,
  races: async () => (await import('./game-questions.ts')).races,
  judge: async () => (await import('./game-questions.ts')).judge,
  try: async () => (await import('./game-questions.ts')).tryAnother,
  figures: async () => (await import('./game-questions.ts')).figures,
  season: async () => (await import('./game-questions.ts')).season,
  find: async () => (await import('./practice-questions.ts')).find,
  redeal: async () => (await import('./practice-questions.ts')).redeal,
  answer: async () => (await import('./practice-questions.ts')).answer,
  goOn: async () => (await import('./practice-questions.ts')).goOn,
  ledger: async () => (await import('./practice-questions.ts')).ledger,
  kind: async () => (await import('./practice-questions.ts')).kind,
  throwing: async () => (await import('./practice-questions.ts')).throwing,
  truth: async () => (await import('./practice-questions.ts')).truth,
} as const;

export type QuestionName = keyof typeof QUESTIONS;

/** The generator of a question. */
export type Question<Name extends QuestionName> = Awaited<ReturnType<(typeof QUESTIONS)[Name]>>;

export type RequestOf<Name extends QuestionName> = Parameters<Question<Name>>[0];

/** What a question yields, but for `undefined`; `never` where it only pauses. */
export type ProgressOf<Name extends QuestionName> =
  ReturnType<Question<Name>> extends Generator<infer Progress, unknown, void> ? Exclude<Progress, undefined> : never;

export type DocumentOf<Name extends QuestionName> =
  ReturnType<Question<Name>> extends Generator<unknown, Result<infer Document>, void> ? Document : never;

/** What answers a question, by the name that came in a message; undefined when there is no such question. */
export async function questionNamed(name: string): Promise<Question<QuestionName> | undefined> {
  const known = Object.entries(QUESTIONS).find(([each]) => each === name);
  return await known?.[1]();
}
