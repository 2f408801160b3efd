import { parentPort } from "node:worker_threads";

// The host's worker with a fault for each of three files: begun, one fills the memory of the thread, one never ends, one
// ends the thread.
const port = parentPort!;
const post = port.postMessage.bind(port);
port.postMessage = (words: unknown) => {
  post(words);
  const { kind, file } = words as { readonly kind: string; readonly file?: { readonly path: string } };
  if (kind !== "working") return;
  const path = file?.path ?? "";
  if (path.includes("fills-memory")) fillMemory();
  if (path.includes("never-ends")) for (;;);
  if (path.includes("ends-thread")) process.exit(7);
};

function fillMemory(): never {
  const held: unknown[] = [];
  for (;;) held.push({ one: [held.length, `${held.length}`] });
}

await import("../../../electron/worker/host-worker.ts");
