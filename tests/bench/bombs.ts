// Files made to fill the memory, each given to the program's own reader in a process of its own: highest memory above
// idle, time, and what is said; table in bombs.md. Run: node tests/bench/bombs.ts (Node 24).
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { bombs } from "./bombs/make-bombs.ts";
import { tryBomb } from "./bombs/try-bomb.ts";

const rows = bombs.map((bomb) => {
  const { bytes, peakMegabytes, seconds, sentence } = tryBomb(bomb);
  const row = `| ${bomb.what} | ${(bytes / 1e6).toFixed(bytes < 1e5 ? 3 : 1)} | ${peakMegabytes.toFixed(0)} | ${seconds.toFixed(1)} | ${sentence} |`;
  console.log(row);
  return row;
});
const head = [
  "# Files made to fill the memory",
  "",
  "Written by `node tests/bench/bombs.ts`. Memory is resident memory at its highest above what the program had before it",
  "met the file; more than 300 MB would be a fault.",
  "",
  "| file | MB on disk | MB of memory above idle | seconds | what is said |",
  "|---|---|---|---|---|",
];
writeFileSync(join(import.meta.dirname, "bombs.md"), `${[...head, ...rows].join("\n")}\n`);
