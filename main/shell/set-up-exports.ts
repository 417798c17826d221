import type { Session } from 'electron';
import type { ElectronParts } from './electron.ts';
import { isOurExport } from './origin.ts';

/** Asks the person where a file goes that our page gives out, and says when it could not be written. Nothing else is saved. */
export function setUpExports({ dialog }: Pick<ElectronParts, 'dialog'>, session: Session): void {
  session.on('will-download', (event, item) => {
    if (!isOurExport(item.getURL())) {
      event.preventDefault();
      return;
    }
    const name = item.getFilename();
    item.setSaveDialogOptions({ title: 'Save as', defaultPath: name });
    item.once('done', (_event, state) => {
      if (state === 'interrupted') dialog.showErrorBox('Windrow', notSaved(name));
    });
  });
}

function notSaved(name: string): string {
  return `${name} could not be saved there. Make room on the disk, or choose another place.`;
}
