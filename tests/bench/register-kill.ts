// Kills a program 1,000 times at its work on a register, between two steps of it or at a random moment, and looks each
// time whether the register keeps everything it promises. Writes register-kill.md beside this file.
// Run: node tests/bench/register-kill.ts [rounds] [seed] (Node 24).
import { writeFileSync } from "node:fs";
// Before everything that makes keys from passphrases: hundreds of them are made.
import "../electron/light-cost-hook.ts";

const { killRounds } = await import("../electron/register/killing/kill-rounds.ts");
const { tableOfKills } = await import("./kills/table-of-kills.ts");

const rounds = Number(process.argv[2] ?? 1000);
const seed = Number(process.argv[3] ?? 1);
const started = performance.now();
const made = await killRounds(rounds, {
  seed,
  lanes: 3,
  tell: ({ round, operation, step, again, faults }) => {
    for (const fault of faults) console.log(`round ${round}, ${operation}, at ${step} (${again ?? ""}): ${fault}`);
    if (round % 100 === 99) console.log(`${round + 1} rounds`);
  },
});
const faults = made.flatMap((each) => each.faults);
console.log(`${rounds} kills in ${Math.round((performance.now() - started) / 1000)} s, ${faults.length} faults`);
writeFileSync(new URL("register-kill.md", import.meta.url), tableOfKills(made, seed));
process.exitCode = faults.length === 0 ? 0 : 1;
