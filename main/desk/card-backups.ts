import { join } from 'node:path';
import { makeFolders, removePatiently, writeDurably } from '../files/durable.ts';
import { type DeskContext, filesIn, readRemakable } from './context.ts';
import type { BackupEntry } from './desk.ts';
import { CARD_ENDING, stampOf } from './places.ts';

/** Dated copies of each card, the newest so many. */
const BACKUPS_KEPT = 10;

function folderOf({ places }: DeskContext, id: string): string {
  return join(places.backups, id);
}

/** The backups of a card, newest first. */
export async function listBackups(context: DeskContext, id: string): Promise<BackupEntry[]> {
  const names = (await filesIn(context, folderOf(context, id))).filter(isBackup);
  return names.sort(newestFirst).map((name) => ({ name, savedAt: momentIn(name) }));
}

export async function readBackup(context: DeskContext, id: string, name: string): Promise<string | undefined> {
  return NAME.test(name) ? await readRemakable(context, join(folderOf(context, id), name)) : undefined;
}

/** The moment, or where the newest backup is not before it, a second after that: a clock that was set back loses none. */
function laterThan(newest: BackupEntry | undefined, now: Date): Date {
  const least = newest === undefined ? 0 : Date.parse(newest.savedAt) + 1000;
  return new Date(Math.max(now.getTime(), least));
}

/** Keeps a copy of the text, unless the newest backup is the same, and lets the oldest ones go. */
export async function keepBackup(context: DeskContext, id: string, text: string): Promise<void> {
  const folder = folderOf(context, id);
  const before = await listBackups(context, id);
  const newest = before[0];
  if (newest !== undefined && (await readBackup(context, id, newest.name)) === text) return;
  await makeFolders(context.files, folder);
  const name = `${stampOf(laterThan(newest, context.now()))}${CARD_ENDING}`;
  await writeDurably(context, join(folder, name), text);
  for (const { name: old } of (await listBackups(context, id)).slice(BACKUPS_KEPT)) {
    await removePatiently(context, join(folder, old));
  }
}

const NAME = /^(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\dZ)(?:-(\d+))?\.card\.json$/;

/** Whether a name is one of a backup, with a moment that there is. */
function isBackup(name: string): boolean {
  return NAME.test(name) && !Number.isNaN(Date.parse(momentIn(name)));
}

function momentIn(name: string): string {
  return name.replace(NAME, '$1$2:$3:$4');
}

function newestFirst(one: string, other: string): number {
  const turnOf = (name: string): number => Number(NAME.exec(name)?.[5] ?? 1);
  const moments = momentIn(other).localeCompare(momentIn(one), 'en');
  return moments === 0 ? turnOf(other) - turnOf(one) : moments;
}
