import { makeHandlers } from "../host-handlers.ts";
import { openWorkspace } from "../open-workspace.ts";
import { rendererFolder } from "../program-folders.ts";
import { startLoopbackServer } from "./loopback-server.ts";
import { openBrowser } from "./open-browser.ts";

/** Serves the application to the browser on this computer until the process is told to end. */
async function serve(): Promise<void> {
  const server = await startLoopbackServer({
    handlers: makeHandlers(openWorkspace(), "browser"),
    rendererFolder: rendererFolder(),
    report: (error) => console.error(error),
  });
  const end = () => {
    server.close().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  process.on("SIGINT", end);
  process.on("SIGTERM", end);
  process.stdout.write(`Counterpoise is at ${server.url}\n`);
  openBrowser(server.url);
}

await serve();
