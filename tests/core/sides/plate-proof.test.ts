import { describe, expect, it } from "vitest";
import type { Limb } from "../../../core/ground/limb.ts";
import type { PlateProof } from "../../../core/recording/recording.ts";
import { type PlateTrial, plateProof, provePlates } from "../../../core/sides/plate-proof.ts";
import { told } from "../../told.ts";

function plates(proof: PlateProof = "unproved") {
  return [
    { name: "left", limb: "left" as Limb, proof },
    { name: "right", limb: "right" as Limb, proof },
  ];
}

function single(limb: Limb, loadedPlate: string | undefined, file = `${limb}.csv`): PlateTrial {
  return { file, trial: 1, limb, plates: plates(), ...(loadedPlate === undefined ? {} : { loadedPlate }) };
}

const twoLeg = (proof: PlateProof): PlateTrial => ({ file: "both.csv", trial: 1, limb: "both", plates: plates(proof) });

function proofs(trials: readonly PlateTrial[], proof: PlateProof) {
  const made = provePlates(trials);
  return plates(proof).map((plate) => plateProof(made, plate));
}

describe("plates", () => {
  it("stay as they came where no single-leg trial speaks", () => {
    expect(proofs([twoLeg("stated")], "stated")).toEqual(["stated", "stated"]);
    expect(proofs([twoLeg("unproved")], "unproved")).toEqual(["unproved", "unproved"]);
    expect(proofs([twoLeg("unproved"), single("left", undefined)], "unproved")).toEqual(["unproved", "unproved"]);
    expect(provePlates([twoLeg("stated")]).findings).toEqual([]);
  });

  it("are proved by one single-leg trial on one of them, the other by exclusion", () => {
    expect(proofs([twoLeg("unproved"), single("right", "right")], "unproved")).toEqual([
      "single-leg-trial",
      "single-leg-trial",
    ]);
  });

  it("lose every proof to a contradicting single-leg trial, a statement by the tester too", () => {
    const made = provePlates([
      twoLeg("stated"),
      single("right", "left", "jump-07.csv"),
      single("right", "left", "jump-08.csv"),
    ]);
    expect(plates("stated").map((plate) => plateProof(made, plate))).toEqual(["unproved", "unproved"]);
    expect(made.plates.map((plate) => plate.contradiction)).toEqual([
      "Single-leg trials put the right foot on plate left.",
      "Single-leg trials put the left foot on plate right.",
    ]);
    expect(made.findings).toHaveLength(1);
    expect(told(made.findings[0])).toMatchObject({
      code: "plates-contradict",
      severity: "warning",
      where: "plate left",
      message:
        "Single-leg trials put the right foot on plate left (jump-07.csv, jump-08.csv); the columns' names or the stated plates say otherwise.",
    });
  });

  it("are contradicted even where other single-leg trials agree, and that is said", () => {
    const made = provePlates([single("right", "right"), single("right", "left", "turned.csv")]);
    expect(plateProof(made, { name: "left", limb: "left", proof: "layout" })).toBe("unproved");
    expect(told(made.findings[0])?.message).toContain("1 other single-leg trial agrees with those");
  });

  it("judge each layout by itself where files give one name different limbs", () => {
    const turned: PlateTrial = {
      file: "turned.csv",
      trial: 1,
      limb: "both",
      plates: [
        { name: "left", limb: "right", proof: "stated" },
        { name: "right", limb: "left", proof: "stated" },
      ],
    };
    const made = provePlates([single("right", "right"), turned]);
    expect(plateProof(made, { name: "right", limb: "right", proof: "unproved" })).toBe("single-leg-trial");
    expect(plateProof(made, { name: "right", limb: "left", proof: "stated" })).toBe("unproved");
  });

  it("are proved by standing on one leg too, and said to be so until a jump proves them", () => {
    const standing: PlateTrial = { ...single("right", "right", "standing-right.csv"), standing: true };
    expect(proofs([twoLeg("unproved"), standing], "unproved")).toEqual(["one-leg-standing", "one-leg-standing"]);
    expect(proofs([twoLeg("unproved"), standing, single("left", "left")], "unproved")).toEqual([
      "single-leg-trial",
      "single-leg-trial",
    ]);
    expect(proofs([twoLeg("stated"), { ...standing, loadedPlate: "left" }], "stated")).toEqual([
      "unproved",
      "unproved",
    ]);
  });

  const turnedPlates = (proof: PlateProof = "stated") => [
    { name: "left", limb: "right" as Limb, proof },
    { name: "right", limb: "left" as Limb, proof },
  ];

  it("stop being contradicted once the two-leg trials are stated the other way round", () => {
    const singles = [single("right", "left", "r.csv"), single("left", "right", "l.csv")];
    const turned: PlateTrial = { ...twoLeg("stated"), plates: turnedPlates(), statedAlone: true };
    expect(provePlates([twoLeg("unproved"), ...singles]).findings).toHaveLength(1);
    const made = provePlates([turned, ...singles]);
    expect(made.findings).toEqual([]);
    expect(turnedPlates().map((plate) => plateProof(made, plate))).toEqual(["single-leg-trial", "single-leg-trial"]);
  });

  it("are not contradicted by a trial stated to have faced the other way", () => {
    const turned: PlateTrial = { ...single("right", "left"), plates: turnedPlates(), statedAlone: true };
    const made = provePlates([twoLeg("unproved"), single("left", "left"), turned]);
    expect(made.findings).toEqual([]);
    expect(plates().map((plate) => plateProof(made, plate))).toEqual(["single-leg-trial", "single-leg-trial"]);
  });

  it("are still contradicted by a trial that disagrees with what was stated for it", () => {
    const wrong: PlateTrial = { ...single("right", "left"), plates: plates("stated"), statedAlone: true };
    const made = provePlates([twoLeg("unproved"), wrong]);
    expect(made.findings).toHaveLength(1);
    expect(plates().map((plate) => plateProof(made, plate))).toEqual(["unproved", "unproved"]);
  });

  it("that carry both limbs are nobody's to prove", () => {
    const one: PlateTrial = {
      file: "one.csv",
      trial: 1,
      limb: "right",
      plates: [{ name: "force", limb: "both", proof: "unproved" }],
      loadedPlate: "force",
    };
    expect(provePlates([one])).toEqual({
      plates: [{ name: "force", limb: "both", verdict: "silent", contradiction: "" }],
      findings: [],
    });
  });
});
