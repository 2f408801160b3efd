import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { makeSampleFiles } from "./sample-traces/sample-files.ts";

/** Writes `sample-traces/` anew: `node build/make-sample-traces.ts` (Node 24). The same bytes on every run. */
const folder = fileURLToPath(new URL("../sample-traces/", import.meta.url));
const files = makeSampleFiles();
const topLevel = new Set([...files.keys()].map((path) => path.split("/")[0] ?? path));
for (const name of topLevel) rmSync(join(folder, name), { recursive: true, force: true });
let bytes = 0;
for (const [path, text] of files) {
  const target = join(folder, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text);
  bytes += Buffer.byteLength(text);
}
process.stdout.write(`${files.size} files, ${(bytes / 1e6).toFixed(1)} MB written to sample-traces.\n`);
