// Measures the most memory that reading a file of 200 MB takes, in a process of its own: before, with the bytes alone,
// and at the peak. The text is never held as a string; what comes on top of the bytes is the columns.
// Run: node tests/bench/reading-memory.ts (Node 24). `--megabytes 50` makes the file smaller.
import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readTable } from "../../core/bytes/read-table.ts";

const megabyte = 1_000_000;

/** Most memory this process has had so far, in MB (`maxRSS` is in units of 1024 bytes). */
function peakMegabytes(): number {
  return (process.resourceUsage().maxRSS * 1024) / megabyte;
}

function measure(path: string): void {
  const before = peakMegabytes();
  const bytes = readFileSync(path);
  const withBytes = peakMegabytes();
  const { table, findings } = readTable(bytes);
  if (table === undefined || findings.length > 0) throw new Error(`not read cleanly: ${JSON.stringify(findings)}`);
  const columns = (table.rows * (8 * table.columns.length + 4)) / megabyte;
  const peak = peakMegabytes();
  console.log(`${(bytes.length / megabyte).toFixed(0)} MB, ${table.rows} rows × ${table.columns.length}`);
  console.log(
    `before ${before.toFixed(0)} MB, with the bytes ${withBytes.toFixed(0)} MB, at the peak ${peak.toFixed(0)} MB`,
  );
  console.log(
    `beyond the bytes ${(peak - withBytes).toFixed(0)} MB, of which the columns and line numbers are ${columns.toFixed(0)} MB`,
  );
}

function writeFile(path: string, bytes: number): void {
  const file = openSync(path, "w");
  let written = writeSync(file, "time (s),left (N),right (N),total (N)\n");
  for (let row = 0; written < bytes; ) {
    let chunk = "";
    for (let line = 0; line < 10_000; line++, row++) {
      const [left, right] = [300 + ((row * 37) % 5000) / 10, 300 + ((row * 53) % 5000) / 10];
      chunk += `${(row / 1000).toFixed(3)},${left.toFixed(4)},${right.toFixed(4)},${(left + right).toFixed(4)}\n`;
    }
    written += writeSync(file, chunk);
  }
  closeSync(file);
}

const readOption = process.argv.indexOf("--read");
if (readOption >= 0) measure(process.argv[readOption + 1]!);
else {
  const sizeOption = process.argv.indexOf("--megabytes");
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-bench-"));
  try {
    const path = join(folder, "force.csv");
    writeFile(path, (sizeOption < 0 ? 200 : Number(process.argv[sizeOption + 1])) * megabyte);
    spawnSync(process.execPath, [fileURLToPath(import.meta.url), "--read", path], { stdio: "inherit" });
  } finally {
    rmSync(folder, { recursive: true });
  }
}
