import { dataFolder } from "../layouts/data-folder.ts";
import { rendererFolder, sampleTracesFolder } from "../program-folders.ts";
import { startHostWorker } from "../worker/remote-handlers.ts";
import { startLoopbackServer } from "./loopback-server.ts";
import { openBrowser } from "./open-browser.ts";

/** Serves the application to the browser on this computer until the process is told to end. */
async function serve(): Promise<void> {
  const host = startHostWorker({
    host: "browser",
    sampleTraces: sampleTracesFolder(),
    dataFolder: dataFolder(),
  });
  const server = await startLoopbackServer({
    handlers: host.handlers,
    rendererFolder: rendererFolder(),
    report: (error) => console.error(error),
  });
  const end = () => {
    Promise.all([server.close(), host.close()]).then(
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
