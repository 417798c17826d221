import { readFile } from 'node:fs/promises';
import type { Socket } from 'node:net';

/** Where Linux lists the connections of this computer, each with the number of the user whose it is. */
const TABLES = ['/proc/net/tcp', '/proc/net/tcp6'];
const ESTABLISHED = '01';

/**
 * True when the other end of a connection within this computer is a program of the user who runs
 * this one; false also where the system does not tell.
 */
export async function isOwnConnection({ localPort = 0, remotePort = 0 }: Socket): Promise<boolean> {
  const me = process.getuid?.();
  const tables = await Promise.all(TABLES.map(async (path) => await readFile(path, 'utf8').catch(() => '')));
  const owners = tables.flatMap((table) => ownersIn(table, remotePort, localPort));
  return owners.length > 0 && owners.every((owner) => owner === me);
}

/**
 * Whose the open connections from one port to another are, by a table of the system. All addresses
 * count: what another user opens between the same ports makes it doubtful, never ours.
 */
function ownersIn(table: string, from: number, to: number): readonly number[] {
  return table.split('\n').flatMap((line) => {
    const [, local = '', remote = '', state, , , , owner] = line.trim().split(/\s+/);
    return state === ESTABLISHED && portOf(local) === from && portOf(remote) === to ? [Number(owner)] : [];
  });
}

/** The port of an address such as `0100007F:B461`. */
function portOf(address: string): number {
  return Number.parseInt(address.split(':')[1] ?? '', 16);
}
