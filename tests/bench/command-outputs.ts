import { createHash } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "../../electron/command/run.ts";

/**
 * Everything the command line says about the sample traces and the zoo, one digest a command: two states of the program
 * say the same where their lists are the same.
 *
 *   node tests/bench/command-outputs.ts > before.txt     a digest of output, messages and exit code a command
 *   node tests/bench/command-outputs.ts FOLDER           also writes each output whole, to see what differs
 */
const root = fileURLToPath(new URL("../..", import.meta.url));
const keepIn = process.argv[2];
const made = mkdtempSync(join(tmpdir(), "command-outputs-"));
process.chdir(root);

const sheetFile = join(made, "sheet.html");
let count = 0;

for (const typed of commands()) {
  const said: string[] = [];
  const exit = await run(typed, { out: (text) => said.push(text), err: (text) => said.push(text) });
  const sheet = existsSync(sheetFile) ? readFileSync(sheetFile, "utf8") : "";
  rmSync(sheetFile, { force: true });
  const whole = `${said.join("")}${sheet}exit ${exit}\n`.replaceAll(made, "FOLDER");
  const line = typed.join(" ").replaceAll(made, "FOLDER");
  process.stdout.write(`${createHash("sha256").update(whole).digest("hex").slice(0, 16)} ${line}\n`);
  count += 1;
  if (keepIn === undefined) continue;
  mkdirSync(keepIn, { recursive: true });
  writeFileSync(join(keepIn, `${String(count).padStart(4, "0")}.txt`), `${line}\n${whole}`);
}

function* commands(): Generator<readonly string[]> {
  const formats = ["table", "json", "csv"];
  const sessions = foldersWithin("sample-traces").filter((folder) => folder !== "sample-traces");
  for (const format of formats) yield ["analyze", "sample-traces", "--format", format, "--jobs", "1"];
  yield ["analyze", "sample-traces", "--format", "json", "--jobs", "2"];
  for (const session of sessions) {
    yield ["analyze", session, "--format", "json"];
    yield ["sheet", session, "--out", sheetFile];
    yield ["inspect", session];
    yield ["inspect", session, "--format", "json"];
  }
  for (const folder of foldersWithin("tests/zoo/files")) {
    for (const name of filesIn(folder)) {
      const file = `${folder}/${name}`;
      for (const format of formats) yield ["analyze", file, "--format", format];
      yield ["analyze", file, "--format", "json", "--test", "countermovementJump", "--limb", "both", "--mass", "70"];
      yield [
        "analyze",
        file,
        "--format",
        "json",
        "--test",
        "dropJump",
        "--rate",
        "1000",
        "--unit",
        "N",
        "--mass",
        "70",
      ];
      yield ["inspect", file, "--samples", "0,1,2"];
      yield ["inspect", file, "--format", "json"];
    }
  }
  for (const command of [[], ["analyze"], ["inspect"], ["sheet"], ["register"]]) yield [...command, "--help"];
  yield ["analyze"];
  yield ["analyze", "no-such-file.csv"];
}

function foldersWithin(folder: string): readonly string[] {
  const inside = readdirSync(join(root, folder), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return [folder, ...inside.flatMap((entry) => foldersWithin(`${folder}/${entry.name}`))].sort();
}

function filesIn(folder: string): readonly string[] {
  const entries = readdirSync(join(root, folder), { withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile() && !entry.name.startsWith("."))
    .map(({ name }) => name)
    .sort();
}
