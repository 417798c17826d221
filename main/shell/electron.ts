import type {
  App,
  BrowserWindow,
  BrowserWindowConstructorOptions,
  Dialog,
  IpcMain,
  Menu,
  PowerMonitor,
  Protocol,
  Screen,
  Session,
} from 'electron';

/** The parts of Electron that the shell uses. Only the entry imports the real ones. */
export interface ElectronParts {
  readonly app: App;
  readonly protocol: Protocol;
  readonly ipcMain: IpcMain;
  readonly menu: typeof Menu;
  readonly dialog: Dialog;
  readonly screen: Screen;
  readonly powerMonitor: PowerMonitor;
  readonly defaultSession: () => Session;
  /** Shows a folder in the system's own window of files; an empty answer means that it worked. */
  readonly openFolder: (folder: string) => Promise<string>;
  readonly createWindow: (options: BrowserWindowConstructorOptions) => BrowserWindow;
}
