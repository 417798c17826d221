import { join } from 'node:path';
import * as v from 'valibot';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { keptChange } from './checks.ts';
import { type Problem, type Result, success } from '../../core/base/result.ts';
import { orTrouble } from '../files/trouble.ts';
import { type DeskContext, readRemakable, setAside } from './context.ts';
import { checkEvent } from './game-files.ts';
import { filesIn } from './leftovers.ts';
import { afterStep, readLog } from './log.ts';
import { gamePath, logIdOf } from './places.ts';
import type { Kept } from './preferences.ts';
import { RunningGame } from './running-game.ts';

/** What a crash left. */
export interface Recovered {
  /** The games whose logs were not folded into their files yet, as they stood at the last step that was told to be saved. */
  readonly games: readonly RunningGame[];
  /** The ids of games whose logs the file system would not give, with the reason: nothing may be written there. */
  readonly locked: ReadonlyMap<string, Problem>;
}

/** Takes up what a crash left. `paths` are the games' files by id. */
export async function recoverGames(context: DeskContext, paths: ReadonlyMap<string, string>): Promise<Recovered> {
  const games: RunningGame[] = [];
  const locked = new Map<string, Problem>();
  for (const name of await filesIn(context, context.places.open)) {
    const id = logIdOf(name);
    if (id === undefined) continue;
    const log = join(context.places.open, name);
    const text = await orTrouble('read', `the last steps of the game ${id}`, () => readLogText(context, log));
    if (!text.ok) {
      locked.set(id, text.problem);
      context.tell(text.problem.message);
      continue;
    }
    const game = await recover(context, { id, log, text: text.value, known: paths.get(id) });
    if (game !== undefined) games.push(game);
  }
  return { games, locked };
}

/** A log that is far too large is no log of ours. */
async function readLogText(context: DeskContext, log: string): Promise<Result<string>> {
  return success((await readRemakable(context, log)) ?? '');
}

interface FoundLog {
  readonly id: string;
  readonly log: string;
  readonly text: string;
  /** The game's file, if there is one. */
  readonly known: string | undefined;
}

async function recover(context: DeskContext, { id, log, text, known }: FoundLog): Promise<RunningGame | undefined> {
  const read = readLog(text);
  const game = read === undefined ? undefined : readGameFile(read.game);
  if (read === undefined || game === undefined || !game.ok) {
    const aside = await setAside(context, log);
    context.tell(`The last steps of the game ${id} could not be read. They are kept as ${aside}.`);
    return undefined;
  }
  const start = { ...game.value.record, id };
  const { record, whole } = replaySteps(start, read.steps);
  if (!whole || !read.whole) {
    const aside = await setAside(context, log);
    context.tell(
      `The last steps of the game ${id} are damaged. It stands at step ${record.events.length}; the rest is kept as ${aside}.`,
    );
  }
  return new RunningGame(context, known ?? gamePath(context.places, id, record.startedAt), record, read.base);
}

/** The game after all steps that make sense; `whole` is false when one did not, and what follows it is left out. */
function replaySteps(start: GameRecord, steps: readonly Kept[]): { record: GameRecord; whole: boolean } {
  let record = start;
  for (const step of steps) {
    const next = replayStep(record, step);
    if (next === undefined) return { record, whole: false };
    record = next;
  }
  return { record, whole: true };
}

function replayStep(record: GameRecord, step: Kept): GameRecord | undefined {
  const { length } = record.events;
  if (step['drop'] === length - 1) return afterStep(record, { drop: length - 1 });
  if (v.is(keptChange, step['change'])) return afterStep(record, { change: step['change'] });
  if (step['place'] !== length) return undefined;
  const event = checkEvent(record, step['add']);
  return event.ok ? afterStep(record, { add: event.value, place: length }) : undefined;
}
