import * as v from 'valibot';
import { failure, type Result, success } from '../../core/base/result.ts';
import { STUDY_ASKS } from '../../core/card/study-question.ts';
import { writeLine } from '../../core/game/file/write-game-file.ts';
import { makeFolders, writeDurably } from '../files/durable.ts';
import { type DeskContext, readText, setAside } from './context.ts';
import type { CardProgress } from './desk.ts';
import { progressPath } from './places.ts';
import { parseObject } from './preferences.ts';

const KIND = 'windrow.card-progress';
const SCHEMA_VERSION = 1;

const answer = v.object({
  lineId: v.pipe(v.string(), v.maxLength(80)),
  ask: v.picklist(STUDY_ASKS),
  right: v.boolean(),
  day: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000)),
});

/** Bounded well above what a card of 300 lines and years of study come to. */
export const cardProgress: v.GenericSchema<unknown, CardProgress> = v.object({
  confirmed: v.pipe(v.array(v.pipe(v.string(), v.maxLength(5000))), v.maxLength(300)),
  answers: v.pipe(v.array(answer), v.maxLength(6000)),
});

const NO_PROGRESS: CardProgress = { confirmed: [], answers: [] };

/**
 * How far a person has come with a card: a small file beside the cards, so that the card file
 * itself says only what is printed. One that can't be read is set aside, and counting starts anew.
 */
export async function readCardProgress(context: DeskContext, id: string): Promise<Result<CardProgress>> {
  const path = progressPath(context.places, id);
  const text = await readText(context, path);
  if (text === undefined) return success(NO_PROGRESS);
  const kept = parseObject(text);
  if (isNewer(kept)) return newer();
  const read = v.safeParse(cardProgress, kept);
  if (read.success) return success(read.output);
  const name = await setAside(context, path);
  context.tell(`What you have proof-read and studied of a card could not be read. The old file is kept as ${name}.`);
  return success(NO_PROGRESS);
}

export async function saveCardProgress(
  context: DeskContext,
  id: string,
  { confirmed, answers }: CardProgress,
): Promise<Result<null>> {
  const path = progressPath(context.places, id);
  const before = await readCardProgress(context, id);
  if (!before.ok) return before;
  await makeFolders(context.files, context.places.progress);
  const file = { kind: KIND, schemaVersion: SCHEMA_VERSION, appVersion: context.appVersion, confirmed, answers };
  const sorted: unknown = JSON.parse(writeLine(file));
  await writeDurably(context, path, `${JSON.stringify(sorted, null, 2)}\n`);
  return success(null);
}

function isNewer(kept: Readonly<Record<string, unknown>> | undefined): boolean {
  const version = kept?.['schemaVersion'];
  return typeof version === 'number' && version > SCHEMA_VERSION;
}

function newer(): Result<never> {
  return failure('newer-version', 'A newer Windrow keeps what you studied of this card. Use that one here.');
}
