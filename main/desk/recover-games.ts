import { join } from 'node:path';
import { type Problem, type Result, success } from '../../core/base/result.ts';
import { orTrouble } from '../files/trouble.ts';
import { type DeskContext, filesIn, keepCopy, readRemakable, setAside } from './context.ts';
import { gameOfLog } from './log.ts';
import { gamePath, logIdOf } from './places.ts';
import { RunningGame } from './running-game.ts';

/** What a crash left. */
export interface Recovered {
  /** The games whose logs were not folded into their files yet, as they stood at the last step that was acknowledged. */
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
      context.notify(text.problem.message);
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
  const read = gameOfLog(text);
  if (read === undefined) {
    const copy = await setAside(context, log);
    context.notify(`The last steps of the game ${id} could not be read. They are kept as ${copy}.`);
    return undefined;
  }
  const record = { ...read.game.record, id };
  if (!read.whole) {
    // A copy: until the game is folded into its file, the log alone has its steps.
    const copy = await keepCopy(context, log);
    context.notify(
      `The last steps of the game ${id} are damaged. It stands at step ${record.events.length}; the rest is kept as ${copy}.`,
    );
  }
  return new RunningGame(
    context,
    known ?? gamePath(context.places, id, record.startedAt),
    { ...read.game, record },
    read.base,
  );
}
