import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { designButterworth, singlePassCutoffHz } from "../../core/recording/filter-design.ts";
import { zeroLagFilter } from "../../core/recording/zero-lag-filter.ts";

interface FilterVectors {
  readonly from: string;
  readonly scipy: string;
  readonly cases: readonly {
    readonly name: string;
    readonly rateHz: number;
    readonly cutoffHz: number;
    /** b0, b1, b2, a0, a1, a2. */
    readonly section: readonly number[];
    readonly input: readonly number[];
    readonly expected: readonly number[];
  }[];
}

/** Relative to the largest value of the signal. */
const tolerance = 1e-9;

const committed = JSON.parse(readFileSync(new URL("filter-vectors.json", import.meta.url), "utf8")) as FilterVectors;

function expectSame(vectors: FilterVectors): void {
  for (const { name, rateHz, cutoffHz, input, expected } of vectors.cases) {
    const filtered = zeroLagFilter(Float64Array.from(input), rateHz, cutoffHz);
    const size = Math.max(...expected.map(Math.abs));
    const worst = Math.max(...expected.map((value, index) => Math.abs(filtered[index]! - value)));
    expect(filtered.length, name).toBe(expected.length);
    expect(worst / size, name).toBeLessThan(tolerance);
  }
}

// The generating call and SciPy's version stand in filter-vectors.json.
test("the zero-lag filter equals scipy.signal.sosfiltfilt on the committed vectors", () => {
  expect(committed.cases.length).toBeGreaterThanOrEqual(9);
  expectSame(committed);
});

test("the designed sections equal those of scipy.signal.butter", () => {
  for (const { name, rateHz, cutoffHz, section } of committed.cases) {
    const { b0, b1, b2, a1, a2 } = designButterworth(rateHz, singlePassCutoffHz(rateHz, cutoffHz));
    const ours = [b0, b1, b2, 1, a1, a2];
    for (const [index, value] of section.entries()) expect(Math.abs(ours[index]! - value), name).toBeLessThan(1e-12);
  }
});

test("vectors made anew by the SciPy of this machine are equalled as well", () => {
  const script = fileURLToPath(new URL("make-filter-vectors.py", import.meta.url));
  const run = spawnSync("python3", [script], { encoding: "utf8" });
  if (run.error !== undefined || /ModuleNotFoundError/.test(run.stderr)) {
    console.info("not run: python3 with SciPy is not on this machine; the committed vectors were compared");
    return;
  }
  expect(run.status, run.stderr).toBe(0);
  const fresh = JSON.parse(run.stdout) as FilterVectors;
  expectSame(fresh);
  expect(fresh.cases.map((each) => each.name)).toEqual(committed.cases.map((each) => each.name));
});
