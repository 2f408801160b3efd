import { describe, expect, it } from "vitest";
import { namedByContradiction } from "../../renderer/shell/named-by-contradiction.ts";
import { analyzeSamples } from "../core/simulated/session.ts";

describe("the recordings a contradiction about left and right speaks of", () => {
  // The demo world's session in which the athlete faced the wrong way.
  const { result } = analyzeSamples("maren-tveitlund/3-month-5-5");

  it("are the single-leg trials it rests on and the two-leg trials it puts in doubt", () => {
    const onTwoPlates = result.trials.filter((trial) => trial.plates.length === 2).map((trial) => trial.file);
    expect([...namedByContradiction(result)].sort()).toEqual([...new Set(onTwoPlates)].sort());
  });

  it("leave out a trial that it does not name, also where its name ends alike", () => {
    const [first] = result.trials.filter((trial) => trial.limb !== "both");
    const other = { ...first!, file: first!.file.slice(2), findings: [] };
    const named = namedByContradiction({ ...result, trials: [...result.trials, other] });
    expect(named.has(first!.file)).toBe(true);
    expect(named.has(other.file)).toBe(false);
  });

  it("are none where nothing contradicts", () => {
    expect(namedByContradiction(analyzeSamples("maren-tveitlund/4-month-7").result).size).toBe(0);
  });
});
