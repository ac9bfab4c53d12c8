/**
 * Stands in for Electron in tests, whose package would start a download when loaded: as much of it as main/desktop.ts uses, which notes down
 * what was asked of it. It decides nothing; what a real runtime does with the settings is shown by the tests that run where one is present.
 */
import { EventEmitter } from 'node:events';

type Handler = (...args: never[]) => unknown;

/** What a test sets before the desktop is loaded, and what was noted since. */
export const control = {
  /** Whether this is the first program of its kind. */
  first: true,
  packaged: false,
  /** In order: what was called, for tests that care about before and after. */
  order: [] as string[],
  /** Answers of the next message boxes: the button's number. */
  answers: [] as number[],
  errorBoxes: [] as [string, string][],
  messageBoxes: [] as { message: string; buttons: string[] }[],
  /** What the folder dialog answers. */
  chosen: [] as string[],
  schemes: [] as { scheme: string; privileges: Record<string, boolean> }[],
  menus: [] as { label?: string; submenu?: { label?: string; click?: () => void }[] }[][],
  crashReports: [] as Record<string, unknown>[],
  exits: [] as number[],
};

let setReady: () => void = () => {};
const ready = new Promise<void>((resolve) => {
  setReady = resolve;
});
/** Lets the program become ready. */
export const becomeReady = (): void => setReady();

class FakeApp extends EventEmitter {
  quits = 0;
  get isPackaged() {
    return control.packaged;
  }
  requestSingleInstanceLock() {
    control.order.push('lock');
    return control.first;
  }
  enableSandbox() {
    control.order.push('sandbox');
  }
  whenReady() {
    control.order.push('wait');
    return ready;
  }
  getPath(name: string) {
    return `/nowhere/${name}`;
  }
  quit() {
    this.quits++;
    control.order.push('quit');
  }
  exit(code: number) {
    control.exits.push(code);
  }
}
export const app = new FakeApp();

export class FakeSession {
  readonly handled = new Map<string, (request: Request) => Promise<Response>>();
  readonly handlers: Record<string, Handler | undefined> = {};
  spellchecker = true;
  readonly webRequest = {
    onBeforeRequest: (handler: Handler) => {
      this.handlers.request = handler;
    },
  };
  readonly protocol = {
    handle: (scheme: string, handler: (request: Request) => Promise<Response>) => {
      this.handled.set(scheme, handler);
    },
  };
  setPermissionCheckHandler(handler: Handler) {
    this.handlers.check = handler;
  }
  setPermissionRequestHandler(handler: Handler) {
    this.handlers.ask = handler;
  }
  setDevicePermissionHandler(handler: Handler) {
    this.handlers.device = handler;
  }
  setSpellCheckerEnabled(on: boolean) {
    this.spellchecker = on;
  }
}

export const sessions = new Map<string, FakeSession>();
export const session = {
  fromPartition(name: string) {
    const found = sessions.get(name) ?? new FakeSession();
    sessions.set(name, found);
    return found;
  },
  defaultSession: new FakeSession(),
};

export const protocol = {
  registerSchemesAsPrivileged(schemes: typeof control.schemes) {
    control.order.push('schemes');
    control.schemes.push(...schemes);
  },
};

export class FakeContents extends EventEmitter {
  openHandler: ((details: { url: string }) => { action: string }) | null = null;
  reloads = 0;
  crashes = 0;
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }) {
    this.openHandler = handler;
  }
  reload() {
    this.reloads++;
  }
  forcefullyCrashRenderer() {
    this.crashes++;
  }
}

export const windows: BrowserWindow[] = [];
export class BrowserWindow extends EventEmitter {
  readonly webContents = new FakeContents();
  readonly loaded: string[] = [];
  shown = 0;
  focused = 0;
  readonly options: { webPreferences: Record<string, unknown> } & Record<string, unknown>;
  constructor(options: BrowserWindow['options']) {
    super();
    this.options = options;
    windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(url: string) {
    control.order.push('load');
    this.loaded.push(url);
  }
  show() {
    this.shown++;
  }
  focus() {
    this.focused++;
  }
  isMinimized() {
    return false;
  }
  restore() {}
}

export const dialog = {
  showErrorBox: (title: string, text: string) => {
    control.errorBoxes.push([title, text]);
  },
  showMessageBox: async (options: { message: string; buttons: string[] }) => {
    control.messageBoxes.push(options);
    return { response: control.answers.shift() ?? 0 };
  },
  showOpenDialog: async () => ({ filePaths: control.chosen }),
};

export const Menu = {
  buildFromTemplate: (template: (typeof control.menus)[number]) => template,
  setApplicationMenu: (menu: (typeof control.menus)[number]) => {
    control.menus.push(menu);
  },
};

export const crashReporter = {
  start: (options: Record<string, unknown>) => {
    control.crashReports.push(options);
  },
};
