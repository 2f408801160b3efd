import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import {
  committedFilterVectors,
  type FilterVectors,
  worstFilterDifference,
  worstSectionDifference,
} from "./filter-vectors.ts";
import { plainLowPass } from "./plain-filter.ts";

/** Relative to the largest value of the signal. */
const tolerance = 1e-9;
const coefficientTolerance = 1e-12;

const committed = committedFilterVectors();

// The generating call and SciPy's version stand in filter-vectors.json.
test("the zero-lag filter equals scipy.signal.sosfiltfilt on the committed vectors", () => {
  expect(committed.cases.length).toBeGreaterThanOrEqual(9);
  expect(worstFilterDifference(committed)).toBeLessThan(tolerance);
});

test("the designed sections equal those of scipy.signal.butter", () => {
  expect(worstSectionDifference(committed)).toBeLessThan(coefficientTolerance);
});

test("the second implementation's filter equals SciPy on the same vectors", () => {
  for (const { name, rateHz, cutoffHz, input, expected } of committed.cases) {
    const size = Math.max(...expected.map(Math.abs));
    const filtered = plainLowPass(input, rateHz, cutoffHz);
    const worst = Math.max(...expected.map((value, index) => Math.abs(filtered[index]! - value)));
    expect(worst / size, name).toBeLessThan(tolerance);
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
  expect(worstFilterDifference(fresh)).toBeLessThan(tolerance);
  expect(fresh.cases.map((each) => each.name)).toEqual(committed.cases.map((each) => each.name));
});
