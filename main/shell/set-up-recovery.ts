import type { BrowserWindow } from 'electron';
import type { ElectronParts } from './electron.ts';
import { START_PAGE } from './origin.ts';

/** Milliseconds in which a page that stopped twice is not opened a second time unasked. */
const SOON = 60_000;
/** How Electron says that a page was not wanted any more, which is no fault. */
const GIVEN_UP = -3;

const WORDS = {
  reopened: 'The window stopped working, so Windrow opened it again. What you saved is there.',
  stopped: 'The window stopped working. What you saved is safe.',
  silent: 'The window does not answer. You can wait, or open it again. What you saved is safe.',
  failed: 'The window could not be opened. What you saved is safe.',
  again: 'Open it again',
  close: 'Close Windrow',
  wait: 'Wait',
};

/** A page that is gone is opened again, once by itself, then by the person's choice; one that is silent, by their choice. */
export function setUpRecovery({ app, dialog }: Pick<ElectronParts, 'app' | 'dialog'>, window: BrowserWindow): void {
  const contents = window.webContents;
  let openedAt = Number.NEGATIVE_INFINITY;
  let isAsking = false;
  /** The page is being ended on the person's wish. */
  let isEnding = false;

  const open = (): void => {
    openedAt = performance.now();
    void window.loadURL(START_PAGE);
  };
  const ask = async (
    message: string,
    buttons: string[],
    more: { readonly signal?: AbortSignal } = {},
  ): Promise<number> => {
    isAsking = true;
    // It may have stopped before it was ever shown.
    window.show();
    const { response } = await dialog.showMessageBox(window, {
      ...more,
      type: 'warning',
      title: 'Windrow',
      message,
      buttons,
      defaultId: 0,
      cancelId: 0,
    });
    isAsking = false;
    return response;
  };
  const openIfGone = (): void => {
    if (!window.isDestroyed() && contents.isCrashed()) open();
  };
  const openOrClose = async (message: string): Promise<void> => {
    const chosen = await ask(message, [WORDS.again, WORDS.close]);
    if (chosen === 0 && !window.isDestroyed()) open();
    else app.quit();
  };
  const openAndSay = async (): Promise<void> => {
    open();
    await ask(WORDS.reopened, ['OK']);
    openIfGone();
  };
  const waitOrOpen = async (): Promise<void> => {
    const answersAgain = new AbortController();
    const stop = (): void => answersAgain.abort();
    window.once('responsive', stop);
    const chosen = await ask(WORDS.silent, [WORDS.wait, WORDS.again], { signal: answersAgain.signal });
    if (window.isDestroyed()) return;
    window.off('responsive', stop);
    // Meanwhile it may have ended by itself; then there is nothing to end.
    if (chosen === 0 || contents.isCrashed()) return openIfGone();
    isEnding = true;
    contents.forcefullyCrashRenderer();
  };

  contents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    if (isEnding) open();
    else if (!isAsking) void (performance.now() - openedAt < SOON ? openOrClose(WORDS.stopped) : openAndSay());
    isEnding = false;
  });
  contents.on('did-fail-load', (_event, code, _words, _address, isMainFrame) => {
    if (isMainFrame && code !== GIVEN_UP && !isAsking) void openOrClose(WORDS.failed);
  });
  window.on('unresponsive', () => {
    if (!isAsking) void waitOrOpen();
  });
  // The system's own helpers come back by themselves; the picture may have gone with them.
  app.on('child-process-gone', () => {
    if (!window.isDestroyed()) contents.invalidate();
  });
}
