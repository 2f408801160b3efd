import type { App, Session, WebContents } from "electron";
import { isOwnPage, isOwnRequest, ownOrigin } from "./own-pages.ts";

/** Before the program is ready: every process in a sandbox, and no name of the network ever resolved. */
export function lockDownProgram(app: App): void {
  app.enableSandbox();
  app.commandLine.appendSwitch("host-resolver-rules", "MAP * ~NOTFOUND");
  app.commandLine.appendSwitch("disable-background-networking");
  app.commandLine.appendSwitch("disable-component-update");
  app.commandLine.appendSwitch("disable-sync");
  app.commandLine.appendSwitch("disable-quic");
  app.on("web-contents-created", (_event, contents) => lockDownContents(contents));
}

/** Everything a page could ask of the machine is refused, and every request beyond the own pages is cancelled. */
export function lockDownSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, callback) => callback(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler(null);
  session.setSpellCheckerEnabled(false);
  session.webRequest.onBeforeRequest((details, callback) => callback({ cancel: !isOwnRequest(details.url) }));
  session.on("will-download", (event, item) => {
    // A file the page has made for the person to save; nothing else is ever downloaded.
    if (!item.getURL().startsWith(`blob:${ownOrigin}/`)) event.preventDefault();
  });
}

function lockDownContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
  contents.on("will-navigate", (event) => {
    if (!isOwnPage(event.url)) event.preventDefault();
  });
  contents.on("will-frame-navigate", (event) => {
    if (!isOwnPage(event.url)) event.preventDefault();
  });
  contents.on("will-redirect", (event) => event.preventDefault());
  contents.on("will-attach-webview", (event) => event.preventDefault());
}
