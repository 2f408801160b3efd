import { parentPort, workerData } from "node:worker_threads";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { HostHandlers } from "../boundary/host-handlers.ts";
import { makeHandlers, openWatch } from "../handlers/host-handlers.ts";
import { LayoutShelf } from "../layouts/layout-shelf.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { RegisterHome } from "../register-host/register-home.ts";
import type { SessionWatch } from "../watch/session-watch.ts";
import { openWorkspace } from "../workspace/open-workspace.ts";
import { WorkspaceState } from "../workspace/workspace.ts";
import { forgetPassphrases } from "./hand-over.ts";
import { HeldTeller } from "./held-state.ts";
import type { HostWorkerStart, Restored, WorkerAnswer, WorkerRequest, WorkerWords } from "./messages.ts";
import { overwriteFreed } from "./overwrite-freed.ts";

interface OpenHost {
  readonly handlers: HostHandlers;
  readonly workspace: WorkspaceState;
  readonly home?: RegisterHome;
  readonly watch: SessionWatch;
}

/**
 * Everything that computes runs on this thread, so that the thread of the window or of the server stays free to answer.
 * Requests are handled in the order they come. Once the register was locked nothing more is: the key lay here.
 */
function work(): void {
  const port = parentPort;
  if (port === null) throw new Error("The host's worker was started as a program of its own.");
  const say = (words: WorkerWords) => port.postMessage(words);
  const teller = new HeldTeller();
  let wasLocked = false;
  const opened = openHost(workerData as HostWorkerStart, say, {
    whenIdle: () => inTurn(({ home }) => home?.lock()),
    whenLocked: () => {
      wasLocked = true;
    },
  });
  let before: Promise<unknown> = opened;
  // One after the other: while the register is copied or replaced nothing else may touch it.
  const inTurn = (deed: (host: OpenHost) => unknown): void => {
    before = before
      .then(() => opened)
      .then(async (host) => {
        if (wasLocked) return;
        const words = await deed(host);
        const { workspace, home } = host;
        const watch = host.watch.held;
        const change = teller.change({
          workspace: workspace.held,
          ...(home && { register: home.held }),
          ...(watch && { watch }),
        });
        if (change !== undefined) say({ kind: "held", change });
        if (wasLocked) {
          overwriteFreed();
          say({ kind: "locked" });
        } else if (words !== undefined) say(words as WorkerAnswer);
      });
  };
  inTurn(() => undefined);
  port.on("message", (request: WorkerRequest) => inTurn(({ handlers }) => answered(handlers, request)));
}

async function answered(handlers: HostHandlers, { id, name, request }: WorkerRequest): Promise<WorkerAnswer> {
  try {
    return { id, kind: "done", reply: await (handlers[name] as (payload: never) => unknown)(request as never) };
  } catch (error) {
    if (error instanceof RequestRefused) return { id, kind: "refused", message: error.message };
    return { id, kind: "broken", stack: error instanceof Error ? (error.stack ?? error.message) : `${error}` };
  } finally {
    forgetPassphrases(request);
  }
}

async function openHost(
  { host, sampleTraces, dataFolder, restored }: HostWorkerStart,
  say: (words: WorkerWords) => void,
  hooks: { readonly whenIdle: () => void; readonly whenLocked: () => void },
): Promise<OpenHost> {
  const workspace =
    dataFolder === undefined
      ? openWorkspace(sampleTraces)
      : new WorkspaceState(defaultSettings, sampleTraces, new LayoutShelf(dataFolder));
  const putAside = new Set(restored?.putAside);
  workspace.guardWith({
    begin: (file) => say({ kind: "working", file }),
    isPutAside: ({ sha256 }) => putAside.has(sha256),
  });
  const home = dataFolder === undefined ? undefined : new RegisterHome({ dataFolder, workspace, ...hooks });
  await home?.begin(restored?.held?.register?.kind);
  const watch = openWatch(workspace, home);
  if (restored !== undefined) goOn({ workspace, watch, ...(home && { home }) }, restored);
  return { handlers: makeHandlers(workspace, host, home, watch), workspace, watch, ...(home && { home }) };
}

/** Goes on where another thread ended. */
function goOn({ workspace, home, watch }: Omit<OpenHost, "handlers">, { held, words }: Restored): void {
  workspace.restarted = words;
  if (held === undefined) return;
  workspace.takeOver(held.workspace);
  home?.showAgain(held.register?.sessions ?? []);
  if (workspace.holds(held.workspace.shown)) workspace.show(held.workspace.shown);
  if (held.watch !== undefined) watch.goOn(held.watch);
}

work();
