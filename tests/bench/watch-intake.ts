import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { defaultSettings } from "../../core/settings/settings.ts";
import { encodeMessage } from "../../electron/boundary/host-codec.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { RegisterHome } from "../../electron/register-host/register-home.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { nextLookMilliseconds } from "../../renderer/recordings/look-pace.ts";
import { directHost } from "../electron/direct-host.ts";
import { jumpText } from "../electron/simulated-recordings.ts";

// How steadily a watched folder of thousands of recordings is taken in, with the person's own register open: files a
// second, processor time (which other programs do not touch) and memory, for each 200 of them. `kept` takes them into a session of the register, `memory` into one in
// memory alone; `looked` has a screen look at the board and read the session, as it does during a session.
// node tests/bench/watch-intake.ts kept|memory alone|looked [FILES]
const [place = "kept", screen = "alone", count = "2400"] = process.argv.slice(2);
const files = Number(count);
const step = 200;

const folder = mkdtempSync(join(tmpdir(), "counterpoise-intake-"));
const watched = join(folder, "watched");
mkdirSync(watched);
const texts = [2, 4, 6, 8].map((seed) => jumpText("both", seed));
// Empty lines at the end make each recording other bytes, so that none counts as a copy.
for (let index = 0; index < files; index += 1) {
  writeFileSync(join(watched, `r-${index}.csv`), `${texts[index % texts.length]}${"\n".repeat(index >> 2)}`);
}

const workspace = new WorkspaceState(defaultSettings, "no-such-folder");
const home = new RegisterHome({ dataFolder: join(folder, "data"), workspace });
await home.begin();
const host = directHost(makeHandlers(workspace, "browser", home));
await host.call("register.openOwn", {});
if (place === "kept") {
  const athlete = crypto.randomUUID();
  await host.call("records.save", { record: { kind: "athletes", id: athlete, content: { code: "A-1" } } });
  const day = new Date();
  const date = [day.getFullYear(), day.getMonth() + 1, day.getDate()]
    .map((part) => String(part).padStart(2, "0"))
    .join("-");
  await host.call("sessions.start", { session: crypto.randomUUID(), athlete, plan: { date } });
}
await host.call("watch.start", { folder: watched });
await host.call("watch.expect", { next: { test: "countermovementJump", limb: "both" } });

const takenIn = () => Math.max(0, ...workspace.sessions.map((session) => session.files.length));
console.log("| files | files a second | processor time a file (ms) | memory of the process (MB) |\n|---|---|---|---|");
let begun = performance.now();
let used = process.cpuUsage();
let next = step;
let looked = begun;
let wait = nextLookMilliseconds(0);
let revision = 0;
while (next <= files) {
  await new Promise((resolve) => setTimeout(resolve, 5));
  if (screen === "looked" && performance.now() - looked > wait) {
    const lookBegan = performance.now();
    const view = await host.call("watch.read", {});
    encodeMessage(view);
    if (view.revision !== revision) encodeMessage(await host.call("workspace.read", {}));
    revision = view.revision;
    looked = performance.now();
    wait = nextLookMilliseconds(looked - lookBegan);
  }
  const now = takenIn();
  if (now < next) continue;
  const taken = now - next + step;
  const { user, system } = process.cpuUsage(used);
  const perSecond = (taken / (performance.now() - begun)) * 1000;
  const row = [
    next,
    perSecond.toFixed(0),
    ((user + system) / 1000 / taken).toFixed(1),
    Math.round(process.memoryUsage().rss / 1e6),
  ];
  console.log(`| ${row.join(" | ")} |`);
  begun = performance.now();
  used = process.cpuUsage();
  next = (Math.floor(now / step) + 1) * step;
}
await host.call("watch.stop", {});
home.close();
rmSync(folder, { recursive: true });
