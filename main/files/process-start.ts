import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * When a process began, in a form that no other process with its number has: on Linux the moment since the computer began,
 * and which of its beginnings that was. Undefined elsewhere, and for a process that is gone.
 *
 * @param folder where the system tells of its processes; see proc(5)
 */
export async function processStart(number: number, folder = '/proc'): Promise<string | undefined> {
  try {
    const boot = (await readFile(join(folder, 'sys/kernel/random/boot_id'), 'utf8')).trim();
    // The name of the program comes second, in brackets; it may hold blanks and brackets itself.
    const stat = await readFile(join(folder, String(number), 'stat'), 'utf8');
    return `${boot} ${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19]}`;
  } catch {
    return undefined;
  }
}
