import { join } from 'node:path';
import { UNFINISHED } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
import type { DeskContext } from './context.ts';

const DAY = 86_400_000;

/** The names of the files in a folder; those left unfinished by a crash go when a day old. */
export async function filesIn(context: DeskContext, folder: string): Promise<string[]> {
  const names = ((await ifThere(context.files.list(folder))) ?? [])
    .filter((entry) => !entry.folder)
    .map(({ name }) => name);
  for (const name of names) {
    if (name.endsWith(UNFINISHED)) await sweep(context, join(folder, name), DAY);
  }
  return names.filter((name) => !name.endsWith(UNFINISHED));
}

/** Removes a file that was last changed longer ago than `age` milliseconds. */
export async function sweep({ files, now }: DeskContext, path: string, age: number): Promise<void> {
  const info = await ifThere(files.info(path));
  if (info !== undefined && now().getTime() - info.changedAt > age) await ifThere(files.remove(path));
}
