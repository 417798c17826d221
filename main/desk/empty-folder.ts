import { join } from 'node:path';
import { ifThere } from '../files/files.ts';
import type { DeskContext } from './context.ts';

/** Files of ours directly in the desk's folder, with what was set aside or left of them; the lock goes when the desk closes. */
const AT_THE_TOP = /^(?:(?:preferences\.json|index\.jsonl|about-these-files\.txt)(?:\..+)?|in-use\.json\..+)$/;
/** Files of ours in the folders below, whatever was set aside of them included. */
const BELOW = /\.jsonl?(?:\..+)?$/;

/**
 * Deletes every file of ours for good: games, logs, removed games, cards with their backups and
 * progress, practice, findings, the index and the settings. What others put into the folder stays.
 * Rejects with a file error when a file can't be removed; the others that are left still open.
 */
export async function emptyFolder(context: DeskContext): Promise<void> {
  const { folder, open, games, removed, cards, practice, findings } = context.places;
  for (const below of [open, games, removed, cards, practice, findings]) await removeFiles(context, below, BELOW, true);
  await removeFiles(context, folder, AT_THE_TOP, false);
}

async function removeFiles(context: DeskContext, folder: string, ours: RegExp, deep: boolean): Promise<void> {
  const { files } = context;
  const found = await ifThere(files.list(folder));
  if (found === undefined) return;
  for (const entry of found) {
    const path = join(folder, entry.name);
    if (entry.folder && deep) await removeFiles(context, path, ours, deep);
    if (!entry.folder && ours.test(entry.name)) await ifThere(files.remove(path));
  }
  await files.syncFolder(folder);
}
