import type { DeskService } from '../desk/service.ts';
import type { ElectronParts } from './electron.ts';

/** Milliseconds that putting away may take. What was saved is on the disk before; this only tidies. */
const LONGEST_END = 5_000;

/** The app ends with its window, once the desk has put everything away, or could not in good time. */
export function setUpEnd({ app }: Pick<ElectronParts, 'app'>, desk: Pick<DeskService, 'close'>): void {
  let putAway = false;
  const putAwayAndQuit = async (): Promise<void> => {
    await Promise.race([settled(desk.close()), pause(LONGEST_END)]);
    putAway = true;
    app.quit();
  };
  app.on('window-all-closed', () => app.quit());
  app.on('will-quit', (event) => {
    if (putAway) return;
    event.preventDefault();
    void putAwayAndQuit();
  });
}

/** The end of a piece of work, good or bad: a fault in it must not keep the app alive without a window. */
async function settled(work: Promise<void>): Promise<void> {
  await Promise.allSettled([work]);
}

async function pause(milliseconds: number): Promise<void> {
  await new Promise((done) => {
    setTimeout(done, milliseconds);
  });
}
