// Kills a program 200 times at random moments of its work on a register (imports, edits, erasures, migrations,
// backups) and looks each time whether the register opens, verifies, and holds everything that was acknowledged.
// Run: node tests/bench/register-kill.ts [rounds] (Node 24).
import { killRounds } from "../electron/register/kill-rounds.ts";

const rounds = Number(process.argv[2] ?? 200);
const started = performance.now();
const report = await killRounds(rounds, (line) => console.log(line));
const { acknowledged, killedWhileOpening, migrated, faults } = report;
console.log(`${rounds} kills in ${Math.round((performance.now() - started) / 1000)} s`);
console.log(
  `acknowledged: ${Object.entries(acknowledged)
    .map(([what, count]) => `${count} ${what}`)
    .join(", ")}`,
);
console.log(`${killedWhileOpening} kills fell before the register was open; ${migrated} registers began at schema 1`);
console.log(faults.length === 0 ? "nothing acknowledged is missing, every register verifies" : faults.join("\n"));
process.exitCode = faults.length === 0 ? 0 : 1;
