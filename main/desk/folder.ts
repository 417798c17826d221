import { join } from 'node:path';
import { removePatiently, writeDurably } from '../files/durable.ts';
import { ifThere, quietly } from '../files/files.ts';
import { type DeskContext, readText } from './context.ts';

/** What decides where the desk's folder is. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly variables: Readonly<Record<string, string | undefined>>;
}

/**
 * The desk's folder, the same for the desktop shell and the browser host: `WINDROW_FOLDER` if it
 * is set, else a folder of ours where the system keeps the data of programs.
 */
export function deskFolder({ platform, home, variables }: Surroundings): string {
  const chosen = variables['WINDROW_FOLDER'];
  if (chosen !== undefined && chosen !== '') return chosen;
  if (platform === 'win32') return join(variables['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Windrow', 'Desk');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Windrow', 'Desk');
  return join(variables['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'windrow');
}

/** Begins the page, and so distinguishes it from a file of somebody else. */
const HEADING = "Windrow's files, explained";

/** The page that lies among a person's files and says what each of them is, made of the pages of file forms. */
export function aboutPage(version: string, pages: readonly string[]): string {
  const lead = [
    `${HEADING} (${version})`,
    'Windrow writes this page. A new version writes it anew, so keep no notes of your own in it.',
    'Where it names a page such as core/game/FORMAT.md, that page follows below.',
  ];
  return [lead.join('\n'), ...pages.map((page) => page.trim())].join(`\n\n${'-'.repeat(72)}\n\n`).concat('\n');
}

/** Puts the page in its place, unless it is there or somebody else's file has its name. It is not worth a word when that fails. */
export async function keepAboutPage(context: DeskContext, page: string): Promise<void> {
  await quietly(writeWhereDue(context, page));
}

async function writeWhereDue(context: DeskContext, page: string): Promise<void> {
  const there = await readText(context, context.places.about);
  const isDue = there === undefined || (there !== page && there.startsWith(HEADING));
  if (isDue) await writeDurably(context, context.places.about, page);
}

/** Files of ours directly in the desk's folder, with what was set aside or left of them; the lock goes when the desk closes. */
const AT_THE_TOP =
  /^(?:(?:preferences\.json|draft\.json|index\.jsonl|about-these-files\.txt)(?:\..+)?|in-use\.json\..+)$/;
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
    if (!entry.folder && ours.test(entry.name)) await removePatiently(context, path);
  }
  await files.syncFolder(folder);
}
