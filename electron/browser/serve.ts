import { dataFolder } from "../layouts/data-folder.ts";
import { rendererFolder, sampleTracesFolder } from "../program/program-folders.ts";
import { reportMistake } from "../terminal/report-mistake.ts";
import { visibleLine } from "../terminal/visible-text.ts";
import { startHostWorker } from "../worker/remote-handlers.ts";
import { whenEnterIsPressed } from "./ask-in-terminal.ts";
import { type LoopbackServer, startLoopbackServer } from "./loopback-server.ts";
import { openBrowser, opensBrowsers } from "./open-browser.ts";
import { writeRedirectFile } from "./redirect-file.ts";

const printedMinutes = 10;
const redirectMilliseconds = 120_000;

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
    report: reportMistake,
  });
  const end = () => {
    Promise.all([server.close(), host.close()]).then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  process.on("SIGINT", end);
  process.on("SIGTERM", end);
  const print = () => {
    process.stdout.write(`Counterpoise is at ${server.newAddress(printedMinutes * 60_000)}\n`);
  };
  print();
  const more = whenEnterIsPressed(print) ? "; press Enter here for another one" : "";
  process.stdout.write(`The address opens one tab, once, within ${printedMinutes} minutes${more}.\n`);
  openTab(server);
}

/** The token is gone from the disk as soon as the tab has used it, or nobody has for a while. */
function openTab(server: LoopbackServer): void {
  if (!opensBrowsers()) return;
  try {
    const file = writeRedirectFile(server.newAddress(redirectMilliseconds, () => file.remove()));
    setTimeout(() => file.remove(), redirectMilliseconds).unref();
    process.on("exit", () => file.remove());
    openBrowser(file.path);
  } catch (error) {
    process.stderr.write(`No browser was opened (${visibleLine(String(error))}): open the address.
`);
  }
}

await serve();
