// Lists the twenty slowest test files and the twenty slowest tests of a run, from what vitest's json reporter wrote.
// Run: node build/launch.js test --reporter=json --outputFile=times.json, then
// node tests/bench/suite-times.ts times.json (Node 24). Writes suite-times.md beside this file and prints it.
import { readFileSync, writeFileSync } from "node:fs";
import { relative } from "node:path";
import { z } from "zod";
import { projectRoot } from "../architecture/imports.ts";

const listed = 20;

const runSchema = z.object({
  numTotalTests: z.number(),
  testResults: z.array(
    z.object({
      name: z.string(),
      startTime: z.number(),
      endTime: z.number(),
      assertionResults: z.array(z.object({ fullName: z.string(), duration: z.number().nullish() })),
    }),
  ),
});

interface Timed {
  readonly name: string;
  readonly milliseconds: number;
}

const [file] = process.argv.slice(2);
if (file === undefined) {
  console.error("Name the file that vitest's json reporter wrote.");
  process.exitCode = 2;
} else {
  const run = runSchema.parse(JSON.parse(readFileSync(file, "utf8")));
  const table = tableOf(run);
  writeFileSync(new URL("./suite-times.md", import.meta.url), table);
  console.log(table);
}

function tableOf({ numTotalTests, testResults }: z.infer<typeof runSchema>): string {
  const files = testResults.map(({ name, startTime, endTime }) => ({ name, milliseconds: endTime - startTime }));
  const tests = testResults.flatMap(({ name, assertionResults }) =>
    assertionResults.map(({ fullName, duration }) => ({
      name: `${relative(projectRoot, name)}: ${fullName}`,
      milliseconds: duration ?? 0,
    })),
  );
  const whole = files.reduce((sum, { milliseconds }) => sum + milliseconds, 0);
  return [
    "# What takes the suite's time",
    "",
    "Written by `node tests/bench/suite-times.ts`, from one run; wall time, so that what else the machine did is in it.",
    `${numTotalTests} tests in ${files.length} files, ${seconds(whole)} s one after the other.`,
    "",
    ...rows(
      "file",
      files.map(({ name, milliseconds }) => ({ name: relative(projectRoot, name), milliseconds })),
      whole,
    ),
    "",
    ...rows("test", tests, whole),
    "",
  ].join("\n");
}

function rows(title: string, timed: readonly Timed[], whole: number): readonly string[] {
  const slowest = timed.toSorted((one, other) => other.milliseconds - one.milliseconds).slice(0, listed);
  return [
    `| ${title} | s | part of the whole |`,
    "|---|---:|---:|",
    ...slowest.map(({ name, milliseconds }) => {
      const part = ((100 * milliseconds) / whole).toFixed(1);
      return `| ${name.replaceAll("|", "\\|")} | ${seconds(milliseconds)} | ${part} % |`;
    }),
  ];
}

function seconds(milliseconds: number): string {
  return (milliseconds / 1000).toFixed(1);
}
