import { parentPort, workerData } from "node:worker_threads";
import { makeHandlers } from "../host-handlers.ts";
import { openWorkspace } from "../open-workspace.ts";
import { RequestRefused } from "../request-refused.ts";
import type { HostWorkerData, WorkerAnswer, WorkerRequest } from "./messages.ts";

/**
 * Everything that computes runs on this thread, so that the thread of the window or of the server stays free to answer.
 * Requests are handled in the order they come.
 */
function work(): void {
  const port = parentPort;
  if (port === null) throw new Error("The host's worker was started as a program of its own.");
  const { host, sampleTraces } = workerData as HostWorkerData;
  const handlers = makeHandlers(openWorkspace(sampleTraces), host);
  port.on("message", ({ id, name, request }: WorkerRequest) => {
    const handler: (payload: never) => unknown = handlers[name];
    const answer = (words: WorkerAnswer) => port.postMessage(words);
    Promise.resolve()
      .then(() => handler(request as never))
      .then((reply) => answer({ id, kind: "done", reply }))
      .catch((error: unknown) => {
        if (error instanceof RequestRefused) answer({ id, kind: "refused", message: error.message });
        else
          answer({ id, kind: "broken", stack: error instanceof Error ? (error.stack ?? error.message) : `${error}` });
      });
  });
}

work();
