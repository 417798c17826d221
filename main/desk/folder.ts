import { join } from 'node:path';

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
