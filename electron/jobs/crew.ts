import { Worker } from "node:worker_threads";
import { JobHands } from "./job-hands.ts";
import type { JobAnswers, JobReply, JobRequest } from "./worker-messages.ts";

/** Somebody who does one request after the other. */
export interface CrewMember {
  ask<Kind extends JobRequest["kind"]>(request: JobRequest & { readonly kind: Kind }): Promise<JobAnswers[Kind]>;
}

/** Those who share the work; with one, the work is done on this thread. */
export interface Crew {
  readonly members: readonly CrewMember[];
  close(): Promise<void>;
}

/** @param jobs how many threads share the work, 1 or more */
export function startCrew(jobs: number): Crew {
  if (jobs <= 1) {
    const hands = new JobHands();
    const member: CrewMember = { ask: async (request) => hands.do(request) as never };
    return { members: [member], close: async () => {} };
  }
  const helpers = Array.from({ length: jobs }, () => startHelper());
  return {
    members: helpers,
    close: async () => {
      await Promise.all(helpers.map((helper) => helper.end()));
    },
  };
}

function startHelper(): CrewMember & { end(): Promise<number> } {
  const worker = new Worker(workerFile());
  const waiting: { readonly resolve: (answer: never) => void; readonly reject: (reason: unknown) => void }[] = [];
  worker.on("message", (reply: JobReply) => {
    const asked = waiting.shift();
    if ("answer" in reply) asked?.resolve(reply.answer as never);
    else asked?.reject(new Error(reply.broken));
  });
  worker.on("error", (reason) => {
    for (const asked of waiting.splice(0)) asked.reject(reason);
  });
  worker.on("exit", () => {
    for (const asked of waiting.splice(0)) asked.reject(new Error("A helping thread has ended."));
  });
  return {
    ask: (request) =>
      new Promise((resolve, reject) => {
        waiting.push({ resolve, reject });
        worker.postMessage(request);
      }),
    end: () => worker.terminate(),
  };
}

/** Beside this module: as it was written, or built into the folder of the programs. */
function workerFile(): URL {
  const own = import.meta.url;
  return new URL(own.endsWith(".ts") ? "job-worker.ts" : "job-worker.js", own);
}
