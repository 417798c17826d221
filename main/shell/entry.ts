import { app, BrowserWindow, dialog, ipcMain, Menu, powerMonitor, protocol, screen, session, shell } from 'electron';
import Store from 'electron-store';
import { join, resolve } from 'node:path';
import { openDesk, usualFolder } from '../desk/open.ts';
import { runShell } from './shell.ts';

// Not awaited here: Electron gets ready only after this file has run.
runShell({
  electron: {
    app,
    protocol,
    ipcMain,
    menu: Menu,
    dialog,
    screen,
    powerMonitor,
    defaultSession: () => session.defaultSession,
    openFolder: (folder) => shell.openPath(folder),
    createWindow: (options) => new BrowserWindow(options),
  },
  folder: resolve(usualFolder()),
  root: join(import.meta.dirname, '../renderer'),
  preload: join(import.meta.dirname, 'preload.cjs'),
  platform: process.platform,
  argv: process.argv.slice(1),
  openDesk,
  createStore: (options) => new Store(options),
}).catch((error: unknown) => {
  dialog.showErrorBox('Windrow', error instanceof Error ? error.message : String(error));
  app.exit(1);
});
