import { expect, test } from "vitest";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { told } from "../../told.ts";
import { analyzeBytes } from "../../worked/worked-example.ts";
import { withEarlyPeak } from "../findings/jump-pairs.ts";

function landed(humpNewtons: number): TrialResult {
  const { text, said } = withEarlyPeak(humpNewtons);
  const description = { files: [{ file: "jump.csv", ...said }] };
  const bytes = { "jump.csv": new TextEncoder().encode(text) };
  const [trial] = analyzeBytes(bytes, {}, description, defaultSettings).result.trials;
  if (trial === undefined || trial.status === "refused") throw new Error("The jump was not analysed.");
  return trial;
}

const rates = ({ measures }: TrialResult) => measures.filter((each) => each.id === "loadingRate");

test("Loading rates to different first peaks are left out for the limbs, and the finding says when each came", () => {
  const trial = landed(1400);
  expect(rates(trial).map((each) => each.side)).toEqual(["both"]);
  const said = trial.findings.find((each) => each.code === "first-peaks-differ");
  const [early, late] = (told(said)?.message.match(/[\d.]+(?=\u00a0ms)/g) ?? []).map(Number);
  expect(early).toBeLessThan(20);
  expect(late).toBeGreaterThan(defaultSettings.firstPeaksApartFactor * early!);
  expect(said?.removes).toEqual(["loadingRate"]);
  expect(trial.status).toBe("analysed");
});

test("Loading rates to the same first peak stay a pair", () => {
  const trial = landed(60);
  expect(rates(trial)).toHaveLength(3);
  expect(trial.findings.map((each) => each.code)).not.toContain("first-peaks-differ");
});
