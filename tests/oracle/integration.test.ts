import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import {
  committedIntegrationVectors,
  type IntegrationVectors,
  worstIntegrationDifference,
} from "./integration-vectors.ts";

/** Relative to the largest value of each curve: both are exact on paper. */
const tolerance = 1e-11;

test("impulse, velocity and position equal SciPy's integrals of the same straight lines", () => {
  const committed = committedIntegrationVectors();
  expect(committed.cases.length).toBe(5);
  expect(worstIntegrationDifference(committed)).toBeLessThan(tolerance);
});

test("vectors made anew by the SciPy of this machine are equalled as well", () => {
  const script = fileURLToPath(new URL("make-integration-vectors.py", import.meta.url));
  const run = spawnSync("python3", [script], { encoding: "utf8" });
  if (run.error !== undefined || /ModuleNotFoundError/.test(run.stderr)) {
    console.info("not run: python3 with SciPy is not on this machine; the committed vectors were compared");
    return;
  }
  expect(run.status, run.stderr).toBe(0);
  expect(worstIntegrationDifference(JSON.parse(run.stdout) as IntegrationVectors)).toBeLessThan(tolerance);
});
