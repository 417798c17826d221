import { EventEmitter } from 'node:events';
import type { BrowserWindowConstructorOptions, IpcMainInvokeEvent, MenuItemConstructorOptions } from 'electron';
import type { ElectronParts } from '../../../main/shell/electron.ts';

type Handler = (event: unknown, ...given: unknown[]) => Promise<unknown>;

/** Everything that the shell asked of Electron. */
export class ElectronStub {
  readonly log: string[] = [];
  readonly app = new AppStub(this.log);
  readonly windows: WindowStub[] = [];
  readonly handlers = new Map<string, Handler>();
  readonly schemes: unknown[] = [];
  readonly errors: string[] = [];
  /** Sentences shown in boxes of their own. */
  readonly messages: string[] = [];
  /** Folders that were shown. */
  readonly folders: string[] = [];
  menu: readonly MenuItemConstructorOptions[] | null = null;
  protocolHandler: ((request: Request) => Promise<Response>) | undefined;
  readonly session = new SessionStub();

  /** The stub in Electron's clothes: only what the shell calls is there. */
  parts(): ElectronParts {
    const parts: unknown = {
      app: this.app,
      protocol: {
        registerSchemesAsPrivileged: (schemes: unknown[]) => {
          this.log.push('schemes');
          this.schemes.push(...schemes);
        },
        handle: (scheme: string, handler: (request: Request) => Promise<Response>) => {
          this.log.push(`protocol ${scheme}`);
          this.protocolHandler = handler;
        },
      },
      ipcMain: { handle: (channel: string, handler: Handler) => this.handlers.set(channel, handler) },
      menu: {
        buildFromTemplate: (template: MenuItemConstructorOptions[]) => template,
        setApplicationMenu: (template: MenuItemConstructorOptions[]) => {
          this.menu = template;
        },
      },
      dialog: {
        showErrorBox: (title: string, words: string) => this.errors.push(`${title}: ${words}`),
        showMessageBox: async (_window: unknown, { message }: { message: string }) => void this.messages.push(message),
      },
      screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
      defaultSession: () => this.session,
      openFolder: async (folder: string) => {
        this.folders.push(folder);
        return '';
      },
      createWindow: (options: BrowserWindowConstructorOptions) => {
        this.log.push('window');
        const window = new WindowStub(options);
        this.windows.push(window);
        return window;
      },
    };
    return parts as ElectronParts;
  }

  /** A call as the preload script sends it; from the window's own page unless told otherwise. */
  async invoke(channel: string, given: readonly unknown[], frame: object | null = OUR_FRAME): Promise<unknown> {
    const handler = this.handlers.get(channel);
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
    const event: Partial<IpcMainInvokeEvent> | { senderFrame: object | null } = { senderFrame: frame };
    return await handler(event, ...given);
  }
}

export const OUR_FRAME = { url: 'app://windrow/index.html#/table', parent: null };

class AppStub extends EventEmitter {
  readonly isPackaged = true;
  alone = true;
  quits = 0;
  readonly #log: string[];

  constructor(log: string[]) {
    super();
    this.#log = log;
  }

  requestSingleInstanceLock(): boolean {
    this.#log.push('single instance');
    return this.alone;
  }

  enableSandbox(): void {
    this.#log.push('sandbox');
  }

  async whenReady(): Promise<void> {
    this.#log.push('ready');
  }

  quit(): void {
    this.quits += 1;
  }
}

class WindowStub extends EventEmitter {
  readonly options: BrowserWindowConstructorOptions;
  readonly loaded: string[] = [];
  shown = false;
  maximized = false;
  focused = false;

  constructor(options: BrowserWindowConstructorOptions) {
    super();
    this.options = options;
  }

  async loadURL(address: string): Promise<void> {
    this.loaded.push(address);
  }

  show(): void {
    this.shown = true;
  }

  maximize(): void {
    this.maximized = true;
  }

  isMaximized(): boolean {
    return this.maximized;
  }

  isMinimized(): boolean {
    return false;
  }

  focus(): void {
    this.focused = true;
  }

  getNormalBounds(): object {
    return { x: 10, y: 20, width: 1000, height: 700 };
  }
}

/** A page's contents as `web-contents-created` gives it. */
export class ContentsStub extends EventEmitter {
  openHandler: ((details: { url: string }) => { action: string }) | undefined;

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }

  /** Whether an event with this name is stopped. */
  stops(name: string, url: string): boolean {
    let stopped = false;
    this.emit(name, { url, preventDefault: () => (stopped = true) }, url);
    return stopped;
  }
}

type Answer<Value> = (value: Value) => void;

class SessionStub {
  requestHandler: ((contents: null, permission: string, answer: Answer<boolean>) => void) | undefined;
  checkHandler: ((contents: null, permission: string) => boolean) | undefined;
  deviceHandler: (() => boolean) | undefined;
  spellChecker = true;
  beforeRequest: ((details: { url: string }, answer: Answer<{ cancel: boolean }>) => void) | undefined;

  setPermissionRequestHandler(handler: NonNullable<SessionStub['requestHandler']>): void {
    this.requestHandler = handler;
  }

  setPermissionCheckHandler(handler: NonNullable<SessionStub['checkHandler']>): void {
    this.checkHandler = handler;
  }

  setDevicePermissionHandler(handler: () => boolean): void {
    this.deviceHandler = handler;
  }

  setSpellCheckerEnabled(enabled: boolean): void {
    this.spellChecker = enabled;
  }

  readonly webRequest = {
    onBeforeRequest: (handler: NonNullable<SessionStub['beforeRequest']>): void => {
      this.beforeRequest = handler;
    },
  };
}
