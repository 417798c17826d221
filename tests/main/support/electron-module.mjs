/**
 * Stands in for the module `electron` when the built entry runs in plain Node: just enough for a
 * start, one call from the window and the end. What happened is written to standard output.
 */
import { EventEmitter } from 'node:events';
import { register } from 'node:module';

/** Run with `--import`: whoever imports `electron` gets this file. */
if (!process.env['WINDROW_ELECTRON_STUB']) {
  process.env['WINDROW_ELECTRON_STUB'] = 'registered';
  const hook = `export const resolve = (name, context, next) =>
    name === 'electron' ? { url: ${JSON.stringify(import.meta.url)} + '?electron', shortCircuit: true } : next(name, context);`;
  register(`data:text/javascript,${encodeURIComponent(hook)}`);
}

const folder = process.env['WINDROW_FOLDER'] ?? '';
/** The processor time, in µs, that was used before the entry is loaded. */
const before = process.cpuUsage();
/** @type {Map<string, (event: object, ...given: unknown[]) => Promise<unknown>>} */
const handlers = new Map();

export const app = Object.assign(new EventEmitter(), {
  isPackaged: true,
  requestSingleInstanceLock: () => true,
  enableSandbox: () => undefined,
  whenReady: async () => undefined,
  getPath: () => folder,
  getVersion: () => '0.0.0',
  exit: (/** @type {number} */ code) => process.exit(code),
  quit: () => {
    let held = false;
    app.emit('will-quit', { preventDefault: () => (held = true) });
    if (!held) process.exit(0);
  },
});

export class BrowserWindow extends EventEmitter {
  /** @param {object} options */
  constructor(options) {
    super();
    console.log(JSON.stringify({ window: options }));
  }

  async loadURL(/** @type {string} */ address) {
    const { user, system } = process.cpuUsage(before);
    console.log(JSON.stringify({ address, startMs: (user + system) / 1000 }));
    setTimeout(() => void this.#use(), 0);
  }

  async #use() {
    const event = { senderFrame: { url: 'app://windrow/index.html', parent: null } };
    for (const [call, ...given] of JSON.parse(process.env['WINDROW_CALLS'] ?? '[]')) {
      console.log(JSON.stringify({ call, result: await handlers.get(`desk:${call}`)?.(event, ...given) }));
    }
    console.log(JSON.stringify({ holding: process.getActiveResourcesInfo() }));
    this.emit('close');
    app.emit('window-all-closed');
  }

  getNormalBounds() {
    return { x: 1, y: 2, width: 800, height: 600 };
  }

  isMaximized() {
    return false;
  }

  isDestroyed() {
    return false;
  }

  webContents = new EventEmitter();
}

export const protocol = { registerSchemesAsPrivileged: () => undefined, handle: () => undefined };
export const ipcMain = Object.assign(new EventEmitter(), {
  handle: (
    /** @type {string} */ channel,
    /** @type {(event: object, ...given: unknown[]) => Promise<unknown>} */ handler,
  ) => handlers.set(channel, handler),
});
export const Menu = { buildFromTemplate: () => null, setApplicationMenu: () => undefined };
export const dialog = {
  showErrorBox: (/** @type {string} */ title, /** @type {string} */ words) =>
    console.log(JSON.stringify({ error: `${title}: ${words}` })),
};
export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] };
export const shell = {};
export const powerMonitor = new EventEmitter();
export const session = {
  defaultSession: Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: () => undefined,
    setPermissionCheckHandler: () => undefined,
    setDevicePermissionHandler: () => undefined,
    setSpellCheckerEnabled: () => undefined,
    webRequest: { onBeforeRequest: () => undefined },
  }),
};
// oxlint-disable-next-line import/no-default-export -- the settings library imports the default
export default { app, BrowserWindow, protocol, ipcMain, Menu, dialog, screen, powerMonitor, shell, session };
