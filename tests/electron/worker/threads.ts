import { subscribe, unsubscribe } from "node:diagnostics_channel";
import type { Worker } from "node:worker_threads";
import { onTestFinished } from "vitest";

/** The threads that are started from now on to the end of the test, and whether each has ended. */
export function watchThreads(): readonly { ended: boolean }[] {
  const threads: { ended: boolean }[] = [];
  const onThread = (message: unknown) => {
    const thread = { ended: false };
    threads.push(thread);
    (message as { readonly worker: Worker }).worker.on("exit", () => {
      thread.ended = true;
    });
  };
  subscribe("worker_threads", onThread);
  onTestFinished(() => void unsubscribe("worker_threads", onThread));
  return threads;
}
