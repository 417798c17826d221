import * as v from 'valibot';
import { failure, type Result, success } from '../../core/base/result.ts';
import { writeLine } from '../../core/game/file/write-game-file.ts';
import { makeFolders, writeDurably } from '../files/durable.ts';
import { cardProgress } from './checks.ts';
import { type DeskContext, parseObject, readText, setAside } from './context.ts';
import type { CardProgress } from './desk.ts';
import { progressPath } from './places.ts';

const KIND = 'windrow.card-progress';
const SCHEMA_VERSION = 1;

const NO_PROGRESS: CardProgress = { confirmed: [], answers: [] };

/**
 * How far a person has come with each card: small files beside the cards, so that a card file
 * itself says only what is printed. One that can't be read is set aside, and counting starts anew.
 */
export class ProgressShelf {
  readonly #context: DeskContext;

  constructor(context: DeskContext) {
    this.#context = context;
  }

  async read(id: string): Promise<Result<CardProgress>> {
    const path = progressPath(this.#context.places, id);
    const text = await readText(this.#context, path);
    if (text === undefined) return success(NO_PROGRESS);
    const kept = parseObject(text);
    if (isNewer(kept)) return newer();
    const read = v.safeParse(cardProgress, kept);
    if (read.success) return success(read.output);
    const name = await setAside(this.#context, path);
    this.#context.notify(
      `What you have proof-read and studied of a card could not be read. The old file is kept as ${name}.`,
    );
    return success(NO_PROGRESS);
  }

  async save(id: string, progress: CardProgress): Promise<Result<null>> {
    const before = await this.read(id);
    if (!before.ok) return before;
    const { confirmed, answers, meant } = { ...before.value, ...progress };
    const { files, places, appVersion } = this.#context;
    await makeFolders(files, places.progress);
    const file = {
      kind: KIND,
      schemaVersion: SCHEMA_VERSION,
      appVersion,
      confirmed,
      answers,
      ...(meant === undefined ? {} : { meant }),
    };
    const sorted: unknown = JSON.parse(writeLine(file));
    await writeDurably(this.#context, progressPath(places, id), `${JSON.stringify(sorted, null, 2)}\n`);
    return success(null);
  }
}

function isNewer(kept: Readonly<Record<string, unknown>> | undefined): boolean {
  const version = kept?.['schemaVersion'];
  return typeof version === 'number' && version > SCHEMA_VERSION;
}

function newer(): Result<never> {
  return failure('newer-version', 'A newer Windrow keeps what you studied of this card. Use that one here.');
}
