import { EventEmitter } from "node:events";
import type * as E from "electron";

/** Everything the program did to Electron, in the order it did it. */
export const log: string[] = [];

type Invoke = (event: E.IpcMainInvokeEvent, request: unknown) => unknown;

const channels = new Map<string, Invoke>();

/** Where the next message claims to come from. */
export const sender: { frame: Pick<E.WebFrameMain, "url" | "parent"> | null } = {
  frame: { url: "counterpoise://app/", parent: null },
};

/** What the preload put into the page's world. */
export const exposed = new Map<string, unknown>();

/** Switches of the command line and their values. */
export const switches = new Map<string, string | undefined>();

/** What the program registered. */
export const registered: {
  schemes: readonly E.CustomScheme[];
  protocol?: { readonly scheme: string; readonly answer: (request: Request) => Response | Promise<Response> };
  menu: readonly E.MenuItemConstructorOptions[];
} = { schemes: [], menu: [] };

/** Contents of a window or of whatever else a page might try to open. */
export class FakeContents extends EventEmitter {
  openHandler: Parameters<E.WebContents["setWindowOpenHandler"]>[0] | undefined;
  printed = 0;

  setWindowOpenHandler(handler: Parameters<E.WebContents["setWindowOpenHandler"]>[0]): void {
    this.openHandler = handler;
  }

  print(): void {
    this.printed += 1;
  }
}

/** Windows opened so far. */
export const windows: FakeWindow[] = [];

class FakeWindow extends EventEmitter {
  readonly webContents = new FakeContents();
  readonly options: E.BrowserWindowConstructorOptions;
  shown = false;
  focused = 0;
  address = "";

  constructor(options: E.BrowserWindowConstructorOptions) {
    super();
    this.options = options;
    log.push("window opened");
    windows.push(this);
    appEvents.emit("web-contents-created", {}, this.webContents);
  }

  async loadURL(address: string): Promise<void> {
    log.push("page loaded");
    this.address = address;
  }

  show(): void {
    this.shown = true;
  }

  isMinimized(): boolean {
    return false;
  }

  restore(): void {}

  focus(): void {
    this.focused += 1;
  }
}

/** Events of the program as a whole. */
export const appEvents = new EventEmitter();

/** What the default session was told. */
export const sessionRules: {
  permissionRequest?: NonNullable<Parameters<E.Session["setPermissionRequestHandler"]>[0]>;
  permissionCheck?: () => boolean;
  device?: () => boolean;
  beforeRequest?: (
    details: Pick<E.OnBeforeRequestListenerDetails, "url">,
    callback: (response: E.CallbackResponse) => void,
  ) => void;
  spellChecker?: boolean;
  readonly events: EventEmitter;
} = { events: new EventEmitter() };

export const app = {
  requestSingleInstanceLock: () => true,
  enableSandbox: () => {
    log.push("sandbox enabled");
  },
  whenReady: async () => {
    log.push("ready");
  },
  quit: () => {
    log.push("quit");
  },
  exit: (code?: number) => {
    log.push(`exit ${code}`);
  },
  commandLine: {
    appendSwitch: (name: string, value?: string) => {
      switches.set(name, value);
    },
  },
  on: (event: string, listener: (...given: unknown[]) => void) => appEvents.on(event, listener),
} satisfies Pick<
  { readonly [Name in keyof E.App]: unknown },
  "requestSingleInstanceLock" | "enableSandbox" | "whenReady" | "quit" | "exit" | "commandLine" | "on"
>;

export const ipcMain = {
  handle: (channel: string, listener: Invoke) => {
    if (channels.has(channel)) throw new Error(`Channel ${channel} is taken.`);
    channels.set(channel, listener);
  },
} satisfies Pick<E.IpcMain, "handle">;

/** Names of all channels the window answers. */
export const channelNames = (): readonly string[] => [...channels.keys()];

export const ipcRenderer = {
  invoke: async (channel: string, request: unknown) => {
    const listener = channels.get(channel);
    if (listener === undefined) throw new Error(`No handler registered for '${channel}'`);
    const event = { senderFrame: sender.frame } as E.IpcMainInvokeEvent;
    return structuredClone(await listener(event, structuredClone(request)));
  },
} satisfies Pick<E.IpcRenderer, "invoke">;

export const contextBridge = {
  exposeInMainWorld: (name: string, api: unknown) => {
    exposed.set(name, api);
  },
} satisfies Pick<E.ContextBridge, "exposeInMainWorld">;

export const protocol = {
  registerSchemesAsPrivileged: (schemes: E.CustomScheme[]) => {
    log.push("schemes registered");
    registered.schemes = schemes;
  },
  handle: (scheme: string, answer: (request: Request) => Response | Promise<Response>) => {
    registered.protocol = { scheme, answer };
  },
} satisfies Pick<E.Protocol, "registerSchemesAsPrivileged" | "handle">;

export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler: NonNullable<(typeof sessionRules)["permissionRequest"]>) => {
      sessionRules.permissionRequest = handler;
    },
    setPermissionCheckHandler: (handler: () => boolean) => {
      sessionRules.permissionCheck = handler;
    },
    setDevicePermissionHandler: (handler: () => boolean) => {
      sessionRules.device = handler;
    },
    setDisplayMediaRequestHandler: () => {},
    setSpellCheckerEnabled: (enabled: boolean) => {
      sessionRules.spellChecker = enabled;
    },
    webRequest: {
      onBeforeRequest: (listener: NonNullable<(typeof sessionRules)["beforeRequest"]>) => {
        sessionRules.beforeRequest = listener;
      },
    },
    on: (event: string, listener: (...given: unknown[]) => void) => sessionRules.events.on(event, listener),
  },
};

/** What the person does in the system's dialog for folders; undefined: leaves it. */
export const chosen: { folder: string | undefined } = { folder: undefined };

export const dialog = {
  showOpenDialog: async () => ({
    canceled: chosen.folder === undefined,
    filePaths: chosen.folder === undefined ? [] : [chosen.folder],
  }),
} satisfies Pick<E.Dialog, "showOpenDialog">;

/** A key store that turns each byte round; `isThere` and `backend` can be set. */
export const keyStore: { isThere: boolean; backend: ReturnType<E.SafeStorage["getSelectedStorageBackend"]> } = {
  isThere: true,
  backend: "gnome_libsecret",
};

const turnedRound = (bytes: Uint8Array) => Buffer.from(bytes.map((byte) => byte ^ 0xff));

export const safeStorage = {
  isEncryptionAvailable: () => keyStore.isThere,
  getSelectedStorageBackend: () => keyStore.backend,
  encryptString: (text: string) => turnedRound(Buffer.from(text)),
  decryptString: (bytes: Buffer) => turnedRound(bytes).toString(),
} satisfies Pick<
  E.SafeStorage,
  "isEncryptionAvailable" | "getSelectedStorageBackend" | "encryptString" | "decryptString"
>;

export const Menu = {
  buildFromTemplate: (template: E.MenuItemConstructorOptions[]) => template,
  setApplicationMenu: (menu: readonly E.MenuItemConstructorOptions[]) => {
    registered.menu = menu;
  },
};

export { FakeWindow as BrowserWindow };
