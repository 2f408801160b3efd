// What the memory of the host still holds after the register was locked: the application as it serves a browser, in a
// process of its own, searched whole through /proc by the administrator. Run: node tests/bench/memory-after-locking.ts
// (Node 24, Linux). Prints the table of memory-after-locking.md and writes it there; ends with code 1 where a key, or
// the passphrase after an unlock with it, is found after locking, with code 2 where memory cannot be read.
import { writeFileSync } from "node:fs";
import { whyNotReadable } from "../electron/memory-after-locking/process-memory.ts";
import { found, walk } from "../electron/memory-after-locking/walk.ts";
import { temporaryFolder } from "../electron/simulated-recordings.ts";

const reason = whyNotReadable();
if (reason !== undefined) {
  console.log(reason);
  process.exit(2);
}
const folder = temporaryFolder();
const moments = await walk(folder.path);
folder.remove();

const said = (counts: ReadonlyMap<string, number>) =>
  found(counts)
    .map((name) => `${name} (${counts.get(name)})`)
    .join("; ") || "nothing";
const table = [
  "# Memory of the host after locking",
  "",
  `Written by \`node tests/bench/memory-after-locking.ts\` on ${process.platform} with Node ${process.versions.node}: the application as it serves a browser, in a process of its own, asked over the loopback address as its page asks; a simulated athlete, session and recording. Every readable byte of the process was searched. In brackets: how often it was found.`,
  "",
  "| moment | MB searched | passphrase and keys found | records found |",
  "|---|---:|---|---|",
  ...moments.map(
    ({ moment, megabytes, secrets, records }) => `| ${moment} | ${megabytes} | ${said(secrets)} | ${said(records)} |`,
  ),
  "",
  `Searched for: ${[...(moments.at(-1)?.secrets.keys() ?? [])].join("; ")}; ${[...(moments.at(-1)?.records.keys() ?? [])].join("; ")}.`,
  "",
  "Why little is left: a passphrase crosses the loopback address masked by a pad that is used once and overwritten, goes over to the working thread without a copy and is overwritten there; keys lie in memory of their own; locking ends that thread, and what it and the parser of requests gave back is overwritten first. What can still be found: names of athletes, because replies to the page pass through the thread that stays, as texts that nothing can overwrite; they go when their memory is used again.",
  "",
  "Not kept yet: a passphrase that was set or changed since the program was started can still be found after locking, because the measure of its strength works on it as a text, and memory of a text can outlive its thread: one of two searches found it, the one above did not. Starting the program anew ends that; after an unlock with it nothing was found in either.",
  "",
  "Not measured: the window of the desktop program (its messages pass through the browser engine, whose buffers this program cannot overwrite, and a remembered passphrase becomes a text there because the key store of the operating system takes one), the memory of the page itself, memory that was swapped to a disk, and other systems than the one named above.",
  "",
].join("\n");
writeFileSync(new URL("memory-after-locking.md", import.meta.url), table);
console.log(table);
const isLocked = ({ moment }: { readonly moment: string }) => moment.startsWith("locked");
process.exitCode = moments
  .filter(isLocked)
  .some(({ moment, secrets }) =>
    found(secrets).some((each) => moment === "locked again" || !each.includes("passphrase")),
  )
  ? 1
  : 0;
