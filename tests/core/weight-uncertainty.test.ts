import { expect, test } from "vitest";
import { analyzeBytes } from "../worked/worked-example.ts";
import { seed } from "./findings/pair.ts";
import { jumpOf, saidJump, written } from "./simulate/faulty/faulty-trial.ts";

/** A simulated two-leg jump recorded at a rate, analysed. */
function analysed(rateHz: number, endsAfterTouchdownSeconds?: number) {
  const { text, said } = written(
    jumpOf(seed, {
      rateHz,
      emptySecondsBefore: 1,
      ...(endsAfterTouchdownSeconds !== undefined && { endsAfterTouchdownSeconds }),
    }),
    saidJump,
  );
  const bytes = { "jump.csv": new TextEncoder().encode(text) };
  const { result, trials } = analyzeBytes(bytes, {}, { files: [{ file: "jump.csv", ...said }] });
  const trial = result.trials[0];
  const measure = trial?.measures.find(({ id }) => id === "bodyWeight");
  return { weighing: trial?.weight?.uncertainty ?? 0, measured: measure?.uncertainty ?? 0, trials };
}

test("Body weight is as uncertain as its weighing and the zeros of both plates together", () => {
  // Half a second after the touchdown nobody stands still, so that one window weighs.
  const { weighing, measured, trials } = analysed(1000, 0.5);
  const [trial] = [...trials.values()];
  const zeros = trial?.jump?.prepared.zeroUncertainties ?? [];
  expect(zeros.filter((each) => each > 0)).toHaveLength(2);
  expect(measured).toBeCloseTo(Math.hypot(weighing, ...zeros), 9);
});

test("Of a momentum balance body weight has the zeros and no more than the whole weighing", () => {
  const { weighing, measured, trials } = analysed(1000);
  const [trial] = [...trials.values()];
  const zeros = trial?.jump?.prepared.zeroUncertainties ?? [];
  expect(measured).toBeGreaterThan(Math.hypot(...zeros));
  expect(measured).toBeLessThan(Math.hypot(weighing, ...zeros));
});

test("Where the rate leaves only weight, the plate's zero is in its uncertainty too", () => {
  const { weighing, measured, trials } = analysed(125);
  expect([...trials.values()].every(({ jump }) => jump === undefined)).toBe(true);
  expect(weighing).toBeGreaterThan(0);
  expect(measured).toBeGreaterThan(weighing);
});
