// Varied simulated trials against the simulator's truth: how many good ones are refused or misread, and, under each
// condition, how many carry a measure beyond three of its standard uncertainties without a warning.
// Run: node tests/bench/varied-trials.ts [--good 1000] [--each 1000] [--only "500 Hz"] [--even] [--list 40] [--first 0]
// [--measures] (Node 24). `--even` takes the seeds kept for tuning; `--first 5000` begins with the 5000th seed of its
// kind, where nobody has looked; `--measures` adds a line a measure: how many were compared, the
// root mean square of their errors in standard uncertainties (1 where these are right), and the largest.
import { parseArgs } from "node:util";
import { accuracyConditions, type Condition, goodCondition } from "./varied/conditions.ts";
import { drawVariedTrial, type VariedTrial } from "./varied/draw-trial.ts";
import { judgeTrial, type Verdict } from "./varied/judge-trial.ts";

const { values } = parseArgs({
  options: {
    first: { type: "string", default: "0" },
    good: { type: "string", default: "1000" },
    each: { type: "string", default: "1000" },
    only: { type: "string" },
    even: { type: "boolean", default: false },
    list: { type: "string", default: "40" },
    measures: { type: "boolean", default: false },
  },
});
const listed = Number(values.list);
const first = Number(values.first);

interface Judged {
  readonly trial: Omit<VariedTrial, "recording" | "truths"> & { readonly rateHz: number };
  readonly verdict: Verdict;
}

function judgeAll(count: number, condition: Condition): readonly Judged[] {
  return Array.from({ length: count }, (_, index) => {
    const { recording, truths, ...trial } = drawVariedTrial(2 * (index + first) + (values.even ? 0 : 1), condition);
    return {
      trial: { ...trial, rateHz: recording.rateHz },
      verdict: judgeTrial({ ...trial, recording, truths }),
    };
  });
}

function nameOf({ trial }: Judged): string {
  return `seed ${trial.seed}: ${trial.test}, ${trial.limb}, ${trial.plates} plate(s), ${trial.rateHz} Hz`;
}

function share(part: readonly unknown[], whole: readonly unknown[]): string {
  return `${part.length} of ${whole.length} (${((100 * part.length) / Math.max(1, whole.length)).toFixed(2)} %)`;
}

function list(title: string, lines: readonly string[]): void {
  if (lines.length === 0) return;
  console.log(`  ${title}`);
  for (const line of lines.slice(0, listed)) console.log(`    ${line}`);
  if (lines.length > listed) console.log(`    … and ${lines.length - listed} more (--list ${lines.length})`);
}

function tally(names: readonly string[]): string {
  const counted = new Map<string, number>();
  for (const name of names) counted.set(name, (counted.get(name) ?? 0) + 1);
  return [...counted]
    .sort((a, b) => b[1] - a[1])
    .map(([name, count]) => `${name} ${count}`)
    .join(", ");
}

function report(condition: Condition, judged: readonly Judged[]): void {
  const refused = judged.filter(({ verdict }) => verdict.outcome === "refused");
  const warned = judged.filter(({ verdict }) => verdict.outcome === "warned");
  const misread = judged.filter(({ verdict }) => verdict.misread !== undefined);
  const silent = judged.filter(({ verdict }) => verdict.wrong.some((each) => !each.warned));
  const beyond = judged.filter(({ verdict }) => verdict.wrong.length > 0);
  const compared = judged.reduce((sum, { verdict }) => sum + verdict.compared, 0);
  console.log(`\n${condition.name}: ${judged.length} trials, ${compared} measures compared`);
  const plain = judged.filter(({ verdict }) => verdict.outcome === "analysed");
  console.log(`  analysed without a warning ${share(plain, judged)}`);
  console.log(
    `  analysed with a warning    ${share(warned, judged)}: ${tally(warned.flatMap(({ verdict }) => verdict.codes))}`,
  );
  console.log(
    `  refused                    ${share(refused, judged)}: ${tally(refused.flatMap(({ verdict }) => verdict.codes))}`,
  );
  console.log(`  misread where unstated     ${share(misread, judged)}`);
  console.log(`  silently wrong             ${share(silent, judged)}`);
  console.log(`  beyond 3 u, warned or not  ${share(beyond, judged)}`);
  console.log(
    `  silently wrong measures    ${tally(silent.flatMap(({ verdict }) => verdict.wrong.filter((each) => !each.warned).map((each) => each.id)))}`,
  );
  console.log(`  without truth or u         ${tally(judged.flatMap(({ verdict }) => verdict.unjudged))}`);
  if (values.measures) reportMeasures(judged.flatMap(({ verdict }) => verdict.errors));
  list(
    "refused:",
    refused.map((each) => `${nameOf(each)}: ${each.verdict.codes.join(", ")}: ${each.verdict.messages.join(" ")}`),
  );
  list(
    "misread:",
    misread.map((each) => `${nameOf(each)}: ${each.verdict.misread}`),
  );
  list(
    "silently wrong:",
    silent.map((each) => {
      const wrong = each.verdict.wrong.filter(({ warned: said }) => !said);
      const what = wrong.map(
        ({ id, side, error, value, truth }) =>
          `${id} ${side} ${error.toFixed(1)} u (${value.toPrecision(5)} for ${truth.toPrecision(5)})`,
      );
      return `${nameOf(each)} [${each.verdict.codes.join(" ")}]: ${what.join("; ")}`;
    }),
  );
}

function reportMeasures(errors: Verdict["errors"]): void {
  for (const id of [...new Set(errors.map((each) => each.id))].sort()) {
    const own = errors.filter((each) => each.id === id && Number.isFinite(each.error)).map((each) => each.error);
    const rms = Math.sqrt(own.reduce((sum, each) => sum + each * each, 0) / Math.max(1, own.length));
    const largest = own.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
    const columns = [String(own.length).padStart(6), rms.toFixed(2).padStart(7), largest.toFixed(1).padStart(7)];
    console.log(`    ${id.padEnd(42)}${columns.join("")}`);
  }
}

const wanted = [goodCondition, ...accuracyConditions].filter(
  ({ name }) => values.only === undefined || name === values.only,
);
for (const condition of wanted) {
  report(condition, judgeAll(Number(condition === goodCondition ? values.good : values.each), condition));
}
