import { join } from 'node:path';
import { withoutNames } from '../../core/game/evening.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { moveDurably, writeDurably } from '../files/durable.ts';
import { ifThere, quietly } from '../files/files.ts';
import { type DeskContext, filesIn } from './context.ts';
import { hasNames, loadGame } from './game-files.ts';
import { earlierRemovedPath, gameIdOf, removedIdOf, removedPath } from './places.ts';

const DAY = 86_400_000;
/** Removed games can be brought back for so long, in milliseconds. */
const KEPT = 30 * DAY;
/** Beyond that a file's age says more of the clock than of the file. */
const BELIEVED = 365 * DAY;

/**
 * Puts a game's file among those that were removed. Its time of change is then that of its removal; a version of it that
 * was removed before goes into a file of its own.
 */
export async function keepRemoved(context: DeskContext, id: string, path: string): Promise<void> {
  const { files, places } = context;
  const removed = removedPath(places, id);
  if ((await ifThere(files.info(removed))) !== undefined) {
    const names = await filesIn(context, places.removed);
    await moveDurably(context, removed, earlierRemovedPath(places, id, context.now(), names));
  }
  await files.touch(path);
  await moveDurably(context, path, removed);
}

/**
 * Lets go what was removed longer ago than it is kept. Of a file from the future, or from very long ago, the clock was or
 * is wrong: its time begins anew.
 */
export async function sweepRemoved(context: DeskContext): Promise<void> {
  const { files, places } = context;
  for (const name of await filesIn(context, places.removed)) {
    const path = join(places.removed, name);
    const info = await ifThere(files.info(path));
    if (info === undefined) continue;
    const age = context.now().getTime() - info.changedAt;
    // One that belongs to somebody else, or is held, is looked at again at the next start.
    if (age < -DAY || age > BELIEVED) await quietly(files.touch(path));
    else if (age > KEPT) await quietly(files.remove(path));
  }
}

/** Takes the players' names out of removed games, which are then kept as if removed just now; answers how many had any. */
export async function removeNamesOfRemoved(context: DeskContext): Promise<number> {
  const { removed } = context.places;
  let named = 0;
  for (const name of await filesIn(context, removed)) {
    const id = gameIdOf(name) ?? removedIdOf(name);
    const path = join(removed, name);
    const game = id === undefined ? undefined : await loadGame(context, id, path);
    if (game === undefined || !game.ok || !hasNames(game.value.record)) continue;
    await writeDurably(context, path, writeGameFile(withoutNames(game.value.record)));
    named += 1;
  }
  return named;
}
