// Writes the demo world as a register from sample-traces: every session with its recordings, the athletes' injuries and
// operations, and what was entered beside the plates (PRODUCT: the invented world; all of it simulated).
// Run: node build/make-demo-register.ts FILE (Node 24). The bytes differ from run to run: identifiers are random.
import { existsSync } from "node:fs";
import { readFolder } from "../electron/files/read-folder.ts";
import { sampleTracesFolder } from "../electron/program/program-folders.ts";
import { makeDemoRegister } from "../electron/register/make-demo-register.ts";

const [file] = process.argv.slice(2);
if (file === undefined || existsSync(file)) {
  console.error(file === undefined ? "Name the file to write." : `${file} is there already; name another.`);
  process.exitCode = 2;
} else {
  const made = await makeDemoRegister(file, readFolder(sampleTracesFolder()));
  console.log(
    `${file}: ${made.athletes} athletes, ${made.sessions} sessions, ${made.recordings} recordings, all simulated`,
  );
}
