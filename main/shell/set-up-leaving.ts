import type { BrowserWindow } from 'electron';
import type { ElectronParts } from './electron.ts';

const WORDS = {
  unsaved: 'Your last steps are not saved yet. If you go on now, they are lost.',
  stay: 'Stay',
  leave: 'Go on without saving',
};

/** A page that has something to save stops its window from closing: the person is asked, and staying is the usual answer. */
export function setUpLeaving({ dialog }: Pick<ElectronParts, 'dialog'>, window: BrowserWindow): void {
  window.webContents.on('will-prevent-unload', (event) => {
    const chosen = dialog.showMessageBoxSync(window, {
      type: 'warning',
      title: 'Windrow',
      message: WORDS.unsaved,
      buttons: [WORDS.stay, WORDS.leave],
      defaultId: 0,
      cancelId: 0,
    });
    // Here this lets the page go.
    if (chosen === 1) event.preventDefault();
  });
}
