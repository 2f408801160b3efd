import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { zooFiles } from "./zoo/zoo-files.ts";
import { zooTexts } from "./zoo/zoo-texts.ts";

/** Writes `tests/zoo/files` and `tests/zoo/expected.json` anew: `node build/make-zoo.ts` (Node 24). The same bytes on every run. */
const folder = fileURLToPath(new URL("../tests/zoo/", import.meta.url));
const files = zooFiles();
rmSync(`${folder}files`, { recursive: true, force: true });
mkdirSync(`${folder}files`, { recursive: true });
let bytes = 0;
for (const file of files) {
  writeFileSync(`${folder}files/${file.name}`, file.bytes);
  bytes += file.bytes.length;
}
writeFileSync(`${folder}expected.json`, zooTexts(files));
process.stdout.write(`${files.length} files, ${(bytes / 1e6).toFixed(2)} MB written to tests/zoo.\n`);
