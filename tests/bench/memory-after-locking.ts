// What the memory of the host still holds after the register was locked: the application as it serves a browser, in a
// process of its own, searched whole through /proc by the administrator. Run: node tests/bench/memory-after-locking.ts
// (Node 24, Linux). Prints the table of memory-after-locking.md and writes it there; ends with code 1 where a key or the
// passphrase is found after locking, with code 2 where memory cannot be read.
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
  `Written by \`node tests/bench/memory-after-locking.ts\` on ${process.platform} with Node ${process.versions.node}: the application as it serves a browser, in a process of its own, asked over the loopback address as its page asks; a simulated athlete, session and recording. Every page of the process that holds something and can be read was searched, swapped ones included. In brackets: how often it was found.`,
  "",
  "| moment | MB searched | passphrase and keys found | records found |",
  "|---|---:|---|---|",
  ...moments.map(
    ({ moment, megabytes, secrets, records }) => `| ${moment} | ${megabytes} | ${said(secrets)} | ${said(records)} |`,
  ),
  "",
  `Searched for: ${[...(moments.at(-1)?.secrets.keys() ?? [])].join("; ")}; ${[...(moments.at(-1)?.records.keys() ?? [])].join("; ")}.`,
  "",
  "Why little is left: a passphrase crosses the loopback address masked by a pad that is used once and overwritten, goes over to the working thread without a copy and is overwritten there; how strong a new one is, is measured in a process of its own, because that makes texts of it; keys lie in memory of their own and are overwritten when the register is locked; locking ends that thread, and what it and the parser of requests gave back is overwritten first. What can still be found: names of athletes, because replies to the page pass through the thread that stays, as texts that nothing can overwrite; they go when their memory is used again.",
  "",
  "Seen before that: with the strength measured in the working thread the passphrase was found after the first locking in each of three searches; measured in a thread of its own, it was found as a text in each of six searches right after that thread had ended, and in one of two still twelve seconds later. Half of the journal key was found after locking in two of three searches; since locking overwrites that key, in none of five.",
  "",
  "Not measured: the window of the desktop program (its messages pass through the browser engine, whose buffers this program cannot overwrite, and a remembered passphrase becomes a text there because the key store of the operating system takes one), the memory of the page itself, the process that measures strength while it does, memory that was swapped to a disk, and other systems than the one named above.",
  "",
].join("\n");
writeFileSync(new URL("memory-after-locking.md", import.meta.url), table);
console.log(table);
const isLocked = ({ moment }: { readonly moment: string }) => moment.startsWith("locked");
process.exitCode = moments.filter(isLocked).some(({ secrets }) => found(secrets).length > 0) ? 1 : 0;
