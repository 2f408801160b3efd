import { describe, expect, test } from "vitest";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { told } from "../told.ts";
import { notKnown } from "./gate/gates.ts";
import { analyzeSamples } from "./simulated/session.ts";

const month55 = "maren-tveitlund/3-month-5-5";
const twoLegs = [1, 2, 3, 4].map((number) => `countermovement-both-${number}.csv`);
const turned = [
  { column: "left", foot: "right" },
  { column: "right", foot: "left" },
] as const;

/** The session with its gate opened and something said of some files. */
function analyzed(entries: readonly FileEntry[], changes: Partial<SessionDescription> = {}) {
  return analyzeSamples(month55, {
    description: ({ readings: _readings, cautions: _cautions, stopped: _stopped, ...rest }) => ({
      ...rest,
      ...notKnown,
      ...changes,
      files: [...(rest.files ?? []), ...entries],
    }),
  }).result;
}

const braking = (result: ReturnType<typeof analyzed>) =>
  result.comparisons.find((each) => each.measure === "brakingImpulse" && each.legs === "both");

/** Share noise of one point over four trials, and the demo table's rounding. */
const indexTolerance = 2;

describe("feet stated for chosen trials", () => {
  const stated = analyzed(twoLegs.map((file) => ({ file, plates: turned })));

  test("resolve the contradiction, and the single-leg trials then prove the plates", () => {
    expect(stated.findings.map((each) => each.code)).not.toContain("plates-contradict");
    for (const trial of stated.trials.filter((each) => each.limb === "both")) {
      expect(trial.findings.map((each) => each.code)).not.toContain("plates-contradict");
      expect(trial.plates.map((plate) => plate.proof)).toEqual(["single-leg-trial", "single-leg-trial"]);
    }
  });

  test("give the index its true value and a status", () => {
    // Demo table, month 5.5: true braking index 75 %, as recorded 133 %.
    expect(Math.abs((braking(stated)?.index ?? 0) - 75)).toBeLessThan(indexTolerance);
    expect(braking(stated)?.plates).toBe("proved");
    const status = stated.criteria.find(
      (each) => each.criterion.id === "countermovement-jump-braking-impulse-symmetry",
    );
    expect(status?.status).toBe("not-met");
  });

  test("of some trials leave the others contradicted, and the comparison without a status", () => {
    const some = analyzed([{ file: "countermovement-both-1.csv", plates: turned }]);
    expect(some.findings.map((each) => each.code)).toContain("plates-contradict");
    expect(braking(some)?.plates).toBe("contradicted");
  });

  test("outrank what is stated for the whole session", () => {
    const both = analyzed(
      twoLegs.map((file) => ({ file, plates: turned })),
      {
        plates: [
          { column: "left", foot: "left" },
          { column: "right", foot: "right" },
        ],
      },
    );
    expect(Math.abs((braking(both)?.index ?? 0) - 75)).toBeLessThan(indexTolerance);
  });

  test("on a column the recording does not have are said to be of no use", () => {
    const wrong = analyzed([{ file: "countermovement-both-1.csv", plates: [{ column: "Fz 3", foot: "left" }] }]);
    const trial = wrong.trials.find((each) => each.file === "countermovement-both-1.csv");
    expect(trial?.findings.map((each) => told(each))).toContainEqual(
      expect.objectContaining({
        code: "session-entry-unused",
        message: 'It is stated which foot stood on "Fz 3", which is not a plate of this recording.',
        action: 'Correct the name; the plates are "left" and "right".',
      }),
    );
  });

  test("do not outrank the columns given as an option", () => {
    const { result } = analyzeSamples(month55, {
      description: (own) => ({ ...own, files: twoLegs.map((file) => ({ file, limb: "both", plates: turned })) }),
      files: (name) => name === "countermovement-both-1.csv",
      stated: { layout: { left: "left", right: "right", platesStated: true } },
    });
    expect(result.trials[0]?.plates).toMatchObject([
      { name: "left", limb: "left", proof: "stated" },
      { name: "right", limb: "right", proof: "stated" },
    ]);
  });
});
