import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "../architecture/imports.ts";

/** One way of writing a table of time and two forces. */
interface Layout {
  readonly head: string;
  readonly row: (time: string, left: number, right: number) => string;
}

const comma = (value: number, digits: number) => value.toFixed(digits).replace(".", ",");

/** As plate computers write: marks, separators, units, orders and headers of their own. */
const layouts: readonly Layout[] = [
  {
    head: "Simulated recording\ntime (s),left (N),right (N)\n",
    row: (time, left, right) => `${time},${left},${right}`,
  },
  {
    head: "time [s];left [N];right [N]\n",
    row: (time, left, right) => `${time.replace(".", ",")};${comma(left, 1)};${comma(right, 1)}`,
  },
  {
    head: "right (kN)\tleft (kN)\ttime (s)\n",
    row: (time, left, right) => `${(right / 1000).toFixed(4)}\t${(left / 1000).toFixed(4)}\t${time}`,
  },
  { head: "left (N),right (N),time (s)\n", row: (time, left, right) => `${left},${right},${time}` },
];

/**
 * Writes the 24 simulated recordings of a session of the demo world in several layouts, without its session.json: whose
 * they are and from which box nobody says. The names tell test and limb.
 * @returns the paths, those of each test together
 */
export function writeMixedLayouts(folder: string): readonly string[] {
  const source = join(projectRoot, "sample-traces/maren-tveitlund/6-month-11");
  mkdirSync(folder, { recursive: true });
  return readdirSync(source)
    .filter((name) => name.endsWith(".csv"))
    .map((name, index) => {
      const layout = layouts[index % layouts.length];
      if (layout === undefined) throw new Error("There is a layout for each place.");
      const rows = readFileSync(join(source, name), "utf8")
        .split("\n")
        .filter((line) => /^\d/.test(line))
        .map((line) => {
          const [time = "", left, right] = line.trim().split(/\s+/);
          return layout.row(time, Number(left), Number(right));
        });
      const path = join(folder, name);
      writeFileSync(path, `${layout.head}${rows.join("\n")}\n`);
      return path;
    });
}
