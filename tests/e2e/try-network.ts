// Tries every way out of this computer, on its own thread and on a worker's; each must be refused before it begins.
import dgram from "node:dgram";
import { lookup } from "node:dns";
import { get } from "node:http";
import net from "node:net";
import { isMainThread, Worker } from "node:worker_threads";

/** Set aside for documentation (RFC 5737): nobody is there. */
const nowhere = "192.0.2.1";

const attempts: readonly (() => unknown)[] = [
  () => net.connect(80, nowhere),
  () => get(`http://${nowhere}/`),
  () => lookup("counterpoise.invalid", () => undefined),
  () => dgram.createSocket("udp4").send("x", 53, nowhere),
  () => fetch(`http://${nowhere}/`),
  () => net.createServer().listen(0),
];

for (const attempt of attempts) {
  let refusal = "";
  try {
    attempt();
  } catch (error) {
    refusal = error instanceof Error ? error.message : "";
  }
  if (!refusal.endsWith("was refused.")) throw new Error(`Not refused: ${attempt}`);
}

if (isMainThread) new Worker(new URL(import.meta.url));
