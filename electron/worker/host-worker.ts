import { parentPort, workerData } from "node:worker_threads";
import { defaultSettings } from "../../core/settings.ts";
import { type HostHandlers, makeHandlers } from "../host-handlers.ts";
import { LayoutShelf } from "../layouts/layout-shelf.ts";
import { openWorkspace } from "../open-workspace.ts";
import { RegisterHome } from "../register-host/register-home.ts";
import { RequestRefused } from "../request-refused.ts";
import { WorkspaceState } from "../workspace.ts";
import type { HostWorkerData, WorkerAnswer, WorkerRequest } from "./messages.ts";

/**
 * Everything that computes runs on this thread, so that the thread of the window or of the server stays free to answer.
 * Requests are handled in the order they come.
 */
function work(): void {
  const port = parentPort;
  if (port === null) throw new Error("The host's worker was started as a program of its own.");
  const opened = openHost(workerData as HostWorkerData);
  let before: Promise<unknown> = opened;
  port.on("message", ({ id, name, request }: WorkerRequest) => {
    const answer = (words: WorkerAnswer) => port.postMessage(words);
    // One after the other: while the register is copied or replaced nothing else may touch it.
    before = before
      .then(() => opened)
      .then((handlers) => (handlers[name] as (payload: never) => unknown)(request as never))
      .then((reply) => answer({ id, kind: "done", reply }))
      .catch((error: unknown) => {
        if (error instanceof RequestRefused) answer({ id, kind: "refused", message: error.message });
        else
          answer({ id, kind: "broken", stack: error instanceof Error ? (error.stack ?? error.message) : `${error}` });
      });
  });
}

async function openHost({ host, sampleTraces, dataFolder }: HostWorkerData): Promise<HostHandlers> {
  if (dataFolder === undefined) return makeHandlers(openWorkspace(sampleTraces), host);
  const workspace = new WorkspaceState(defaultSettings, sampleTraces, new LayoutShelf(dataFolder));
  const home = new RegisterHome({ dataFolder, workspace });
  await home.begin();
  return makeHandlers(workspace, host, home);
}

work();
