import { parentPort } from "node:worker_threads";
import { JobHands } from "./job-hands.ts";
import type { JobReply, JobRequest } from "./worker-messages.ts";

/** A helping thread: does each request in the order they come. */
function work(): void {
  const port = parentPort;
  if (port === null) throw new Error("A helping thread was started as a program of its own.");
  const hands = new JobHands();
  port.on("message", (request: JobRequest) => {
    let reply: JobReply;
    try {
      reply = { answer: hands.do(request) };
    } catch (error) {
      reply = { broken: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    }
    port.postMessage(reply);
  });
}

work();
