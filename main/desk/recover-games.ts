import { join } from 'node:path';
import * as v from 'valibot';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { keptChange } from './checks.ts';
import { type DeskContext, readText, setAside } from './context.ts';
import { checkEvent } from './game-files.ts';
import { filesIn } from './leftovers.ts';
import { afterStep, readLog } from './log.ts';
import { gamePath, logIdOf } from './places.ts';
import type { Kept } from './preferences.ts';
import { RunningGame } from './running-game.ts';

/**
 * What a crash left: the games whose logs were not folded into their files yet, as they stood at
 * the last step that was told to be saved. `paths` are the games' files by id.
 */
export async function recoverGames(context: DeskContext, paths: ReadonlyMap<string, string>): Promise<RunningGame[]> {
  const recovered: RunningGame[] = [];
  for (const name of await filesIn(context, context.places.open)) {
    const id = logIdOf(name);
    const game =
      id === undefined ? undefined : await recover(context, id, join(context.places.open, name), paths.get(id));
    if (game !== undefined) recovered.push(game);
  }
  return recovered;
}

async function recover(
  context: DeskContext,
  id: string,
  log: string,
  known: string | undefined,
): Promise<RunningGame | undefined> {
  const read = readLog((await readText(context, log)) ?? '');
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
