import { describe, expect, test } from "vitest";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import { createRandom } from "../../../core/simulate/random.ts";
import { type ModelRow, SessionModel } from "../../../core/weight/session-model.ts";

const row = (newtons: number, uncertainty: number, ...shares: readonly number[]): ModelRow => ({
  logWeight: Math.log(newtons),
  uncertainty,
  shares,
  scatters: true,
});

/** A scatter that is known leaves ordinary least squares: the range is closed to one value. */
const known = (scatter: number) =>
  settingsWith({ weightScatterLeast: scatter, weightScatterMost: scatter * 1.0000001, plateGainTolerance: 0.05 });

describe("the session's model of weight", () => {
  test("has the closed form of METHODS for one-leg trials on two plates: δ = ln mean a − ln mean b", () => {
    // Scatter 0.1 % (the least the setting allows is below, the most above), weighings 0.05 and 0.1 %, by hand:
    // w = 1/(0.0005² + 0.001²) = 800,000 and 1/(0.001² + 0.001²) = 500,000.
    const settings = known(0.001);
    const rows = [row(700, 0.0005, 1, 0), row(701, 0.001, 1, 0), row(704, 0.0005, 0, 1), row(703, 0.001, 0, 1)];
    const { estimates, covariance } = new SessionModel(rows, 2, settings).gains();
    const mean = (first: number, second: number) => (8 * Math.log(first) + 5 * Math.log(second)) / 13;
    const raw = mean(700, 701) - mean(704, 703);
    const variance = 2 / 1_300_000;
    // Combined with the prior of the difference, N(0, 2·0.05²): a normal mean of two.
    const prior = 2 * 0.05 ** 2;
    const combined = raw * (prior / (prior + variance));
    expect(estimates[0]! - estimates[1]!).toBeCloseTo(combined, 9);
    const own = covariance[0]![0]! + covariance[1]![1]! - 2 * covariance[0]![1]!;
    expect(own).toBeCloseTo(1 / (1 / variance + 1 / prior), 12);
  });

  test("predicts a row from the others as a model without it does", () => {
    const random = createRandom(8);
    const rows = Array.from({ length: 7 }, (_, index) =>
      row(
        720 * (1 + 0.001 * random.normal()),
        0.0002 + 0.001 * random.uniform(),
        ...(index % 3 === 0 ? [1, 0] : index % 3 === 1 ? [0, 1] : [0.48, 0.52]),
      ),
    );
    const model = new SessionModel(rows, 2, defaultSettings);
    for (const [index, left] of rows.entries()) {
      const without = new SessionModel(rows.toSpliced(index, 1), 2, defaultSettings).predict(left.shares);
      const byIdentity = model.predictLeavingOut(index);
      expect(byIdentity.logWeight).toBeCloseTo(without.logWeight, 9);
      expect(Math.sqrt(byIdentity.variance) / Math.sqrt(without.variance)).toBeCloseTo(1, 6);
    }
  });

  test("learns nothing of the plates from two-leg trials with even shares alone: their difference keeps its prior", () => {
    const rows = [1, 2, 3, 4].map(() => row(700, 0.0003, 0.5, 0.5));
    const { covariance } = new SessionModel(rows, 2, defaultSettings).gains();
    const own = covariance[0]![0]! + covariance[1]![1]! - 2 * covariance[0]![1]!;
    expect(Math.sqrt(own)).toBeCloseTo(Math.SQRT2 * defaultSettings.plateGainTolerance, 9);
  });

  test("carries the gain into a weight from other plates, and not into one from the same", () => {
    const rows = [row(700, 0.0003, 1, 0), row(700.2, 0.0003, 1, 0), row(699.9, 0.0003, 1, 0)];
    const model = new SessionModel(rows, 2, defaultSettings);
    expect(Math.sqrt(model.predict([1, 0]).variance)).toBeLessThan(0.001);
    // Both plates' tolerances: √2 · 0.5 %, and little more.
    expect(Math.sqrt(model.predict([0, 1]).variance)).toBeCloseTo(Math.SQRT2 * 0.005, 3);
  });

  test("holds the scatter between trials: four that differ by 0.2 % predict no weight to 0.05 %", () => {
    const scattered = [698.6, 701.4, 700.7, 699.3].map((newtons) => row(newtons, 0.0001, 1));
    const alike = [699.95, 700.05, 700, 700].map((newtons) => row(newtons, 0.0001, 1));
    const uncertainty = (rows: readonly ModelRow[]) =>
      Math.sqrt(new SessionModel(rows, 1, defaultSettings).predict([1]).variance);
    expect(uncertainty(scattered)).toBeGreaterThan(0.0015);
    expect(uncertainty(alike)).toBeLessThan(0.0006);
  });
});
