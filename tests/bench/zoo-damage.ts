// Cuts every file of the zoo (and the public C3D samples, where they lie beside the project) at 64 places and flips 200
// bytes anywhere in it and 100 above its rows or data. Nothing may throw, take two seconds, or be silently wrong; a table
// says what became of each file.
// Run: node tests/bench/zoo-damage.ts (Node 24). `--only PART` takes the files whose names hold PART.
import { hurt, hurtFiles } from "../zoo/hurt-files.ts";

const wounds = { cuts: 64, flips: 200, flipsInHeader: 100 };
const longestMilliseconds = 2000;
const outcomes = ["found", "same", "one value", "shown in the header"] as const;

const only = process.argv.indexOf("--only");
const part = only < 0 ? "" : (process.argv[only + 1] ?? "");
const failures: string[] = [];
let slowest = 0;
const total = new Map<string, number>();

console.log(
  `${"file".padEnd(44)}${outcomes.map((outcome) => outcome.padStart(20)).join("")}${"complaints".padStart(14)}`,
);
for (const file of hurtFiles()) {
  if (!file.name.includes(part)) continue;
  const counts = new Map<string, number>();
  for (const { place, run } of hurt(file, wounds)) {
    const label = `${file.name}, ${place}`;
    const start = performance.now();
    let outcome = "complaint";
    try {
      const damage = run();
      if (typeof damage === "string") outcome = damage;
      else failures.push(`${label}: ${damage.complaint}`);
    } catch (error) {
      failures.push(`${label}: ${String(error)}`);
    }
    const taken = performance.now() - start;
    slowest = Math.max(slowest, taken);
    if (taken > longestMilliseconds) failures.push(`${label}: ${taken.toFixed(0)} ms`);
    counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
    total.set(outcome, (total.get(outcome) ?? 0) + 1);
  }
  console.log(line(file.name, counts));
}
console.log(line("all", total));
console.log(`slowest reading and comparing: ${slowest.toFixed(0)} ms`);
for (const failure of failures) console.log(`FAILED ${failure}`);
console.log(failures.length === 0 ? "no failure" : `${failures.length} failures`);
process.exitCode = failures.length === 0 ? 0 : 1;

function line(name: string, counts: ReadonlyMap<string, number>): string {
  const figures = outcomes.map((outcome) => String(counts.get(outcome) ?? 0).padStart(20));
  return `${name.padEnd(44)}${figures.join("")}${String(counts.get("complaint") ?? 0).padStart(14)}`;
}
