import { join } from "node:path";
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, safeStorage, session } from "electron";
import { dataFolder } from "../layouts/data-folder.ts";
import { programFolder, rendererFolder, sampleTracesFolder } from "../program/program-folders.ts";
import { reportMistake } from "../terminal/report-mistake.ts";
import { startHostWorker } from "../worker/remote-handlers.ts";
import { answerMessages } from "./answer-messages.ts";
import { askBeforeLeaving } from "./ask-before-leaving.ts";
import { chooseFolder } from "./choose-folder.ts";
import { lockDownProgram, lockDownSession } from "./lock-down.ts";
import { menuTemplate } from "./menu.ts";
import { ownOrigin, ownScheme } from "./own-pages.ts";
import { rememberPassphrase } from "./remembered-passphrase.ts";
import { servePages } from "./serve-pages.ts";
import { systemKeyStore } from "./system-key-store.ts";

/** Starts the window. What must happen before the program is ready stands before the first wait. */
async function start(): Promise<void> {
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  lockDownProgram(app);
  protocol.registerSchemesAsPrivileged([
    { scheme: ownScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  app.on("window-all-closed", () => app.quit());
  await app.whenReady();
  lockDownSession(session.defaultSession);
  protocol.handle(ownScheme, servePages(rendererFolder()));
  const data = dataFolder();
  const host = startHostWorker({ host: "window", sampleTraces: sampleTracesFolder(), dataFolder: data });
  const remembering = rememberPassphrase(
    host.handlers,
    systemKeyStore(safeStorage, process.platform),
    join(data, "remembered-passphrase"),
  );
  const handlers = { ...remembering.handlers, "watch.choose": () => chooseFolder(dialog) };
  answerMessages(ipcMain, handlers, reportMistake);
  app.on("will-quit", () => void host.close());
  const window = openWindow();
  app.on("second-instance", () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform, () => window.webContents.print())));
  await remembering.unlockAtStart();
  await window.loadURL(`${ownOrigin}/`);
}

function openWindow(): BrowserWindow {
  const window = new BrowserWindow({
    title: "Counterpoise",
    width: 1440,
    height: 900,
    minWidth: 1024,
    minHeight: 640,
    show: false,
    webPreferences: {
      preload: join(programFolder(), "dist/electron/preload.cjs"),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: false,
    },
  });
  askBeforeLeaving(window);
  window.once("ready-to-show", () => window.show());
  return window;
}

/**
 * Settles when the window shows the first page. Not awaited here: Electron is not ready before this module has been
 * evaluated, so waiting at its top level would wait for ever.
 */
export const started: Promise<void> = start();

started.catch((error: unknown) => {
  reportMistake(error);
  app.exit(3);
});
