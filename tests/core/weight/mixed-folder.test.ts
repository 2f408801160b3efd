import { describe, expect, test } from "vitest";
import { isHeld } from "../../../core/result/held-trial.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { analyzeSimulated, type SimulatedTrial, simulateSession } from "../../bench/weight/simulated-session.ts";
import { told } from "../../told.ts";

const even = { left: 1, right: 1 };
const athlete = (seed: number, massKg: number, height: number, trials: number) =>
  ({ seed, massKg, heights: { left: height, right: height * 0.95 }, trials, twoLegTrials: 1 }) as const;
const own = simulateSession(athlete(5001, 72, 0.16, 3), even, "own-");
const strangers = simulateSession(athlete(5003, 64, 0.103, 2), even, "other-");
const mixed = analyzeSimulated([...own, ...strangers]).result;
const height = (trial: TrialResult) => trial.measures.find(({ id }) => id === "jumpHeightImpulse");
const trialOf = (name: string, trials: readonly TrialResult[]) => trials.find(({ file }) => file === name)!;

describe("a folder with recordings of two athletes", () => {
  test("asks whose they are and names both groups; a folder of one athlete asks nothing", () => {
    const said = mixed.findings.find(({ code }) => code === "another-athlete");
    expect(told(said)?.message).toMatch(
      /^Another athlete\? 7 trials weigh 72\.0 kg \(.*\); 5 trials weigh 64\.0 kg \(/,
    );
    expect(told(said)?.message).toContain("12.5 % apart");
    expect(told(said)?.message).toContain("all of these are held out of means");
    expect(analyzeSimulated(own).result.findings.map(({ code }) => code)).not.toContain("another-athlete");
  });

  test("shows every trial with its own height: the jump of 10 cm is no jump of 25 cm, and none is refused", () => {
    const all: readonly SimulatedTrial[] = [...own, ...strangers];
    expect(mixed.trials.map(({ status }) => status)).toEqual(all.map(() => "analysed"));
    for (const { file, heightMetres } of all) {
      const measured = height(trialOf(file, mixed.trials));
      // Three standard uncertainties.
      expect(Math.abs((measured?.value ?? 0) - heightMetres)).toBeLessThan(3 * (measured?.uncertainty ?? 0));
    }
  });

  test("uses none of them until a person says whose they are", () => {
    expect(mixed.trials.filter(isHeld).length).toBe(mixed.trials.length);
    expect(mixed.comparisons.flatMap(({ first, second }) => [...first.values, ...second.values])).toEqual([]);
  });

  test("uses all once one group is kept, and the others once it is excluded", () => {
    const said = (decision: object) =>
      analyzeSimulated([...own, ...strangers], { files: strangers.map(({ file }) => ({ file, ...decision })) }).result;
    const kept = said({ kept: true });
    expect(kept.findings.map(({ code }) => code)).not.toContain("another-athlete");
    expect(kept.trials.filter(({ kept: isKept }) => isKept).length).toBe(strangers.length);
    expect(strangers.some(({ file }) => isHeld(trialOf(file, kept.trials)))).toBe(false);
    const excluded = said({ excluded: { reason: "another athlete's" } });
    expect(excluded.findings.map(({ code }) => code)).not.toContain("another-athlete");
    expect(excluded.trials.filter(isHeld)).toEqual([]);
  });

  test("pools no weight for a drop jump that nobody stood still after, and says why", () => {
    const drops = { dropHeights: { left: 0.13, right: 0.12 }, dropsEndAfterSeconds: 0.4 };
    const short = simulateSession({ ...athlete(5001, 72, 0.16, 1), ...drops }, even).find(({ file }) =>
      file.startsWith("drop-jump-left"),
    )!;
    const unweighed = trialOf(short.file, analyzeSimulated([...own, ...strangers, short]).result.trials);
    expect(unweighed.weight).toBeUndefined();
    expect(told(unweighed.findings.find(({ code }) => code === "no-quiet-standing"))?.message).toContain(
      "no other trial may tell the body weight, because the weights of the session are not one person's",
    );
    const alone = trialOf(short.file, analyzeSimulated([...own, short]).result.trials);
    expect(alone.weight?.from).toBe("other trials on the same plates");
    expect(Math.abs((alone.weight?.newtons ?? 0) / (72 * 9.80665) - 1)).toBeLessThan(0.002);
  });
});
