import { randomBytes } from 'node:crypto';
import { homedir, hostname } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import type { Result } from '../../core/base/result.ts';
import { version } from '../../package.json';
import { DEMO_CARD_TEXT } from '../demo-card.ts';
import { FORMAT_PAGES } from '../format-pages.ts';
import { nodeFiles } from '../files/node-files.ts';
import { errorCode } from '../files/files.ts';
import { processStart } from '../files/process-start.ts';
import { aboutPage, deskFolder } from './folder.ts';
import { createDeskService, type DeskOptions, type DeskService } from './service.ts';

/** Locks of this process. */
const HELD = new Set<string>();

/** The folder that is used when none is named. */
export function usualFolder(): string {
  return deskFolder({ platform: process.platform, home: homedir(), variables: process.env });
}

/** Opens the desk on the real file system and clock. */
export async function openDesk(
  chosen: Pick<DeskOptions, 'folder' | 'host'> & Partial<DeskOptions>,
): Promise<Result<DeskService>> {
  return await createDeskService({
    files: nodeFiles,
    pause: async (milliseconds) => await pause(milliseconds),
    freshName: () => randomBytes(9).toString('hex'),
    now: () => new Date(),
    appVersion: version,
    demoCard: DEMO_CARD_TEXT,
    aboutPage: aboutPage(version, FORMAT_PAGES),
    running: { process: process.pid, computer: hostname(), isAlive, startOf: processStart, held: HELD },
    every: (milliseconds, call) => {
      const timer = setInterval(call, milliseconds);
      timer.unref();
      return () => clearInterval(timer);
    },
    ...chosen,
  });
}

/** Whether a process with this number runs; one of another user does too. */
function isAlive(number: number): boolean {
  try {
    process.kill(number, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}
