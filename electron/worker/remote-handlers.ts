import { Worker } from "node:worker_threads";
import type { HostRequestName } from "../host-api.ts";
import type { HostHandlers } from "../host-handlers.ts";
import { requestNames } from "../request-names.ts";
import { RequestRefused } from "../request-refused.ts";
import type { HostWorkerData, WorkerAnswer, WorkerRequest } from "./messages.ts";

/** The host's handlers on a thread of their own. */
export interface RemoteHandlers {
  readonly handlers: HostHandlers;
  /** Ends the thread; what waits for an answer is told so. */
  close(): Promise<void>;
}

interface Waiting {
  readonly resolve: (reply: never) => void;
  readonly reject: (reason: unknown) => void;
}

/** Starts the thread that holds the workspace; requests are checked before they are sent there, as anywhere. */
export function startHostWorker(data: HostWorkerData): RemoteHandlers {
  const worker = new Worker(workerFile(), { workerData: data });
  const waiting = new Map<number, Waiting>();
  let lastId = 0;
  let end: Error | undefined;

  worker.on("message", (answer: WorkerAnswer) => {
    const asked = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (answer.kind === "done") asked?.resolve(answer.reply as never);
    else if (answer.kind === "refused") asked?.reject(new RequestRefused(answer.message));
    else asked?.reject(new Error(answer.stack));
  });
  const fail = (reason: Error): void => {
    end ??= reason;
    for (const asked of waiting.values()) asked.reject(end);
    waiting.clear();
  };
  worker.on("error", fail);
  worker.on("exit", () => fail(new Error("The thread that holds the recordings has ended.")));

  const ask = (name: HostRequestName, request: unknown): Promise<never> =>
    new Promise((resolve, reject) => {
      if (end !== undefined) return reject(end);
      lastId += 1;
      waiting.set(lastId, { resolve, reject });
      worker.postMessage({ id: lastId, name, request } satisfies WorkerRequest);
    });
  return {
    handlers: Object.fromEntries(
      requestNames.map((name) => [name, (request: unknown) => ask(name, request)]),
    ) as unknown as HostHandlers,
    close: async () => {
      await worker.terminate();
    },
  };
}

/** Beside this module: as it was written, or built into the folder of the programs. */
function workerFile(): URL {
  const own = import.meta.url;
  return new URL(own.endsWith(".ts") ? "host-worker.ts" : "host-worker.js", own);
}
