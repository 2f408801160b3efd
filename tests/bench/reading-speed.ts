// Times the reading of delimited text: ours (bytes to Float64Arrays, the file read included), PapaParse, and pandas'
// C engine where a python3 with pandas is installed. One million rows of four columns, 35 MB, in the system's
// temporary folder; then the same numbers in quotes, with decimal commas and semicolons, and between blanks.
// Run: node tests/bench/reading-speed.ts (Node 24). `--rows 100000` makes the files smaller.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Papa from "papaparse";
import { readTable } from "../../core/bytes/read-table.ts";

const rowsOption = process.argv.indexOf("--rows");
const rowCount = rowsOption < 0 ? 1_000_000 : Number(process.argv[rowsOption + 1]);
const runs = 7;

interface Kind {
  readonly name: string;
  readonly separator: string;
  readonly cell: (text: string) => string;
  /** Arguments of pandas.read_csv. */
  readonly pandas: string;
}

const kinds: readonly Kind[] = [
  { name: "plain", separator: ",", cell: (text) => text, pandas: "engine='c'" },
  { name: "quoted", separator: ",", cell: (text) => `"${text}"`, pandas: "engine='c'" },
  {
    name: "semicolons and decimal commas",
    separator: ";",
    cell: (text) => text.replace(".", ","),
    pandas: "engine='c', sep=';', decimal=','",
  },
  { name: "blanks", separator: "  ", cell: (text) => text, pandas: "engine='c', delim_whitespace=True" },
];

/** Numbers that only have to look like forces: a linear congruential sequence, the same in every run. */
function writeFile(path: string, { separator, cell }: Kind): void {
  let state = 1;
  const draw = (): number => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return 300 + (500 * state) / 2_147_483_648;
  };
  const lines = [["time_s", "left_N", "right_N", "total_N"].join(separator)];
  for (let row = 0; row < rowCount; row++) {
    const [left, right] = [draw(), draw()];
    const numbers = [(row / 1000).toFixed(3), left.toFixed(4), right.toFixed(4), (left + right).toFixed(4)];
    lines.push(numbers.map(cell).join(separator));
  }
  writeFileSync(path, `${lines.join("\n")}\n`);
}

function readOurs(path: string): number {
  const { table, findings } = readTable(readFileSync(path));
  if (table === undefined || findings.length > 0) throw new Error(`not read cleanly: ${JSON.stringify(findings)}`);
  return table.columns[3]![table.rows - 1]!;
}

/** PapaParse splits; the cells become numbers in Float64Arrays, as ours do. */
function readWithPapa(path: string, { separator, name }: Kind): number {
  const text = readFileSync(path, "utf8");
  const isComma = name.includes("comma");
  const columns = Array.from({ length: 4 }, () => new Float64Array(rowCount));
  const { data } = Papa.parse(separator === "  " ? text.replaceAll("  ", "\t") : text, {
    delimiter: separator === "  " ? "\t" : separator,
    newline: "\n",
  });
  for (let row = 0; row < rowCount; row++) {
    for (let column = 0; column < 4; column++) {
      const cell = data[row + 1]![column]!;
      columns[column]![row] = Number(isComma ? cell.replace(",", ".") : cell);
    }
  }
  return columns[3]![rowCount - 1]!;
}

/** Milliseconds of one run of pandas, timed inside Python so that its start does not count; undefined without it. */
function readWithPandas(python: string, path: string, { pandas }: Kind): { ms: number; last: number } | undefined {
  const script = `
import sys, time, warnings
warnings.simplefilter("ignore")
import pandas
start = time.perf_counter()
frame = pandas.read_csv(sys.argv[1], ${pandas})
print(1000 * (time.perf_counter() - start), repr(float(frame.iloc[-1, 3])))`;
  const run = spawnSync(python, ["-c", script, path], { encoding: "utf8" });
  if (run.status !== 0) return undefined;
  const [ms, last] = run.stdout.trim().split(" ").map(Number);
  return { ms: ms!, last: last! };
}

function findPython(): string | undefined {
  return ["python3", "/usr/bin/python3"].find((name) => spawnSync(name, ["-c", "import pandas"]).status === 0);
}

function medianOf(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1]!;
}

const python = findPython();
if (python === undefined) console.log("No python3 with pandas is installed (Debian: apt-get install python3-pandas).");
const folder = mkdtempSync(join(tmpdir(), "counterpoise-bench-"));
try {
  for (const kind of kinds) {
    const path = join(folder, "force.txt");
    writeFile(path, kind);
    const times: Record<"ours" | "papa" | "pandas", number[]> = { ours: [], papa: [], pandas: [] };
    const lasts = new Set<number>();
    // Interleaved, so that whatever else the machine does meets all three.
    for (let run = 0; run < runs; run++) {
      const start = performance.now();
      lasts.add(readOurs(path));
      times.ours.push(performance.now() - start);
      if (python !== undefined) {
        const read = readWithPandas(python, path, kind);
        if (read !== undefined) times.pandas.push(read.ms);
      }
      if (run % 3 === 0) {
        const papaStart = performance.now();
        lasts.add(readWithPapa(path, kind));
        times.papa.push(performance.now() - papaStart);
      }
    }
    const ours = medianOf(times.ours);
    const megabytes = statSync(path).size / 1e6;
    console.log(`${kind.name}: ${rowCount} rows × 4, ${megabytes.toFixed(1)} MB`);
    console.log(
      `  ours      ${ours.toFixed(0)} ms (${((1000 * megabytes) / ours).toFixed(0)} MB/s; fastest ${Math.min(...times.ours).toFixed(0)})`,
    );
    for (const name of ["papa", "pandas"] as const) {
      const { length } = times[name];
      if (length === 0) continue;
      const median = medianOf(times[name]);
      console.log(
        `  ${name.padEnd(9)} ${median.toFixed(0)} ms (fastest ${Math.min(...times[name]).toFixed(0)}); ours takes ${(ours / median).toFixed(2)} of it`,
      );
    }
    if (lasts.size !== 1) throw new Error(`the readers disagree: ${[...lasts].join(", ")}`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
