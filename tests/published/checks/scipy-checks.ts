import { committedFilterVectors, worstFilterDifference, worstSectionDifference } from "../../oracle/filter-vectors.ts";
import { committedIntegrationVectors, worstIntegrationDifference } from "../../oracle/integration-vectors.ts";
import type { CheckGroup } from "./published-check.ts";

/** Nine signals and five forces were given to SciPy; calls and versions stand beside the committed results. */
export const scipyChecks: CheckGroup = {
  subject: "SciPy",
  checks: [
    {
      check: "zero-lag filter of nine signals: largest difference, relative to each signal's largest value",
      source: `SciPy ${committedFilterVectors().scipy}, signal.sosfiltfilt with odd padding of 9 samples`,
      expected: 0,
      unit: "1",
      tolerance: 1e-9,
      ours: () => worstFilterDifference(committedFilterVectors()),
    },
    {
      check: "the sections of that filter: largest difference of a coefficient",
      source: `SciPy ${committedFilterVectors().scipy}, signal.butter(2)`,
      expected: 0,
      unit: "1",
      tolerance: 1e-12,
      ours: () => worstSectionDifference(committedFilterVectors()),
    },
    {
      check:
        "impulse, its integral, velocity and position under five forces: largest difference, relative to each curve's largest value",
      source: `SciPy ${committedIntegrationVectors().scipy}, integrate.cumulative_trapezoid, integrate.simpson, interpolate.make_interp_spline(k=1).antiderivative`,
      expected: 0,
      unit: "1",
      tolerance: 1e-11,
      ours: () => worstIntegrationDifference(committedIntegrationVectors()),
    },
  ],
};
