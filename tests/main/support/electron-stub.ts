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
  /** Which button a person presses in such a box; the first unless told otherwise. */
  press: (message: string) => number | Promise<number> = () => 0;
  readonly powerMonitor = new EventEmitter();
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
        showMessageBox: async (window: WindowStub, options: { message: string; signal?: AbortSignal }) =>
          await this.#showMessage(window, options),
        showMessageBoxSync: (window: WindowStub, { message, cancelId }: { message: string; cancelId: number }) => {
          window.mustBeThere();
          this.messages.push(message);
          return this.leaves ? 1 : cancelId;
        },
      },
      screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
      powerMonitor: this.powerMonitor,
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

  /** Whether the person leaves when asked about what is not saved. */
  leaves = false;

  /** The box closes with its first button when its signal says so. */
  async #showMessage(
    window: WindowStub,
    { message, signal }: { message: string; signal?: AbortSignal },
  ): Promise<{ response: number }> {
    window.mustBeThere();
    this.messages.push(message);
    const closed = new Promise<number>((done) => signal?.addEventListener('abort', () => done(0)));
    return { response: await Promise.race([closed, this.press(message)]) };
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
  userModelId: string | undefined;
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

  setAppUserModelId(id: string): void {
    this.userModelId = id;
  }
}

class WindowStub extends EventEmitter {
  readonly options: BrowserWindowConstructorOptions;
  readonly loaded: string[] = [];
  shown = false;
  maximized = false;
  minimized = false;
  focused = false;
  readonly webContents = new ContentsStub();
  #destroyed = false;

  constructor(options: BrowserWindowConstructorOptions) {
    super();
    this.options = options;
  }

  /** As when a window was closed: what is then called of it throws. */
  destroy(): void {
    this.#destroyed = true;
    this.emit('closed');
  }

  isDestroyed(): boolean {
    return this.#destroyed;
  }

  mustBeThere(): void {
    if (this.#destroyed) throw new TypeError('Object has been destroyed');
  }

  async loadURL(address: string): Promise<void> {
    this.webContents.crashed = false;
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
    this.mustBeThere();
    return this.minimized;
  }

  restore(): void {
    this.minimized = false;
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
  /** Channels on which the page was told something. */
  readonly told: string[] = [];
  crashed = false;
  /** How often the whole picture was drawn anew. */
  repaints = 0;

  send(channel: string): void {
    this.told.push(channel);
  }

  isCrashed(): boolean {
    return this.crashed;
  }

  invalidate(): void {
    this.repaints += 1;
  }

  /** As a page ends: of itself, by a fault, or because it was told to. */
  end(reason: string): void {
    this.crashed = true;
    this.emit('render-process-gone', {}, { reason, exitCode: 1 });
  }

  forcefullyCrashRenderer(): void {
    setTimeout(() => this.end('killed'), 0);
  }

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

/** A file on its way out of the page, as `will-download` gives it. */
export class DownloadStub extends EventEmitter {
  readonly #url: string;
  options: { defaultPath?: string } | undefined;

  constructor(url: string) {
    super();
    this.#url = url;
  }

  getURL(): string {
    return this.#url;
  }

  getFilename(): string {
    return 'spring.card.json';
  }

  setSaveDialogOptions(options: { defaultPath?: string }): void {
    this.options = options;
  }
}

type Answer<Value> = (value: Value) => void;

/** What Electron says of who asks for a permission. */
interface Asked {
  readonly isMainFrame: boolean;
  readonly requestingUrl?: string;
}

class SessionStub extends EventEmitter {
  requestHandler: ((contents: null, permission: string, answer: Answer<boolean>, asked: Asked) => void) | undefined;
  checkHandler: ((contents: null, permission: string, origin: string, asked: Asked) => boolean) | undefined;
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

  /** What the two handlers of permissions say, the one that is asked and the one that is only looked up. */
  grants(permission: string, asked: Asked): boolean[] {
    const given: boolean[] = [];
    this.requestHandler?.(null, permission, (granted) => given.push(granted), asked);
    given.push(this.checkHandler?.(null, permission, 'app://windrow/', asked) ?? true);
    return given;
  }

  /** Whether a request to this address is let through. */
  loads(url: string): boolean {
    let cancelled = true;
    this.beforeRequest?.({ url }, ({ cancel }) => (cancelled = cancel));
    return !cancelled;
  }

  readonly webRequest = {
    onBeforeRequest: (handler: NonNullable<SessionStub['beforeRequest']>): void => {
      this.beforeRequest = handler;
    },
  };
}
