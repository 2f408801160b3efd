import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { recordingFile } from "../../electron/files/stored-session.ts";
import { withDependents } from "../../electron/register/erase-records.ts";
import { eraseForGood } from "../../electron/register/erasing/erase-for-good.ts";
import { FileSearch } from "../../electron/register/erasing/search-files.ts";
import { valuesOf } from "../../electron/register/erasing/searched-values.ts";
import { importSession } from "../../electron/register/import-sessions.ts";
import { openRegister } from "../../electron/register/open-register.ts";

/**
 * How long searching after an erasure takes beside writing the register anew: `node tests/bench/erasure-search.ts [MEGABYTES]`
 * fills a register with recordings that do not compress, erases one athlete of 48 recordings and prints a table.
 */
const megabytes = Number(process.argv[2] ?? 1000);
const folder = mkdtempSync(join(tmpdir(), "counterpoise-erasure-"));
const file = join(folder, "register.sqlite");
const milliseconds = (since: number) => Math.round(performance.now() - since);
try {
  const register = await openRegister(file, { create: true });
  const session = (code: string, at: number) => ({
    folder: `${code}/${at}`,
    files: Array.from({ length: 12 }, (_, number) => recordingFile(`jump-${number}.bin`, randomBytes(1_000_000))),
    unreadable: [],
    descriptionFindings: [],
    description: {
      athlete: { code, name: `Simulated Athlete ${code}` },
      date: "2026-10-13",
      note: `note of ${code} ${at}`,
    },
  });
  for (let at = 0; at < megabytes / 12 - 4; at += 1) importSession(register, session(`OTHER-${at % 40}`, at));
  for (let at = 0; at < 4; at += 1) importSession(register, session("GOES-1", at));
  const id = register.reads.athletes().find(({ code }) => code === "GOES-1")?.id ?? "";
  const root = { kind: "athletes", id } as const;
  const keys = withDependents(register.contents.store, [root]);

  const gathering = performance.now();
  const { patterns } = valuesOf(register, keys);
  const gathered = milliseconds(gathering);

  const erasing = performance.now();
  const certificate = eraseForGood(register, [root], { alsoOutsideBin: true });
  const erased = milliseconds(erasing);

  const vacuuming = performance.now();
  register.connection.execute("VACUUM");
  const vacuumed = milliseconds(vacuuming);
  register.close();

  const { size } = statSync(file);
  const before = process.memoryUsage.rss();
  const searching = performance.now();
  const { found } = new FileSearch(patterns).inFile(file);
  const searched = milliseconds(searching);
  const perSecond = Math.round(size / 1e6 / (searched / 1000));
  const rows = [
    ["register after erasing", `${Math.round(size / 1e6)} MB`],
    ["patterns looked for at once", String(patterns.length)],
    ["gathering them (48 recordings of 1 MB)", `${gathered} ms`],
    ["the whole erasure, searching included", `${erased} ms`],
    ["writing the register anew once (VACUUM)", `${vacuumed} ms`],
    ["searching it once", `${searched} ms (${perSecond} MB/s)`],
    ["searching ÷ writing anew", (searched / vacuumed).toFixed(2)],
    ["more memory while searching", `${Math.round((process.memoryUsage.rss() - before) / 1e6)} MB`],
    ["found", String(found.size + certificate.files.flatMap((each) => each.found).length)],
  ];
  const table = ["| what | measured |", "|---|---|", ...rows.map(([what, value]) => `| ${what} | ${value} |`)].join(
    "\n",
  );
  writeFileSync(
    new URL("erasure-search.md", import.meta.url),
    `# Searching after an erasure\n\nWritten by \`node tests/bench/erasure-search.ts\`, on two cores that had other work too.\n\n${table}\n`,
  );
  process.stdout.write(`${table}\n`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
