import { describe, expect, it } from "vitest";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import { dropHeightFindings, dropHeightMismatches } from "../../../core/sides/drop-height-legs.ts";
import { told } from "../../told.ts";
import { singleLegDropJump, twoLegDropJump } from "./make-trials.ts";

const fallen = (right: number, left: number) => [
  singleLegDropJump("right", { dropHeightEffective: right - 0.002 }),
  singleLegDropJump("right", { dropHeightEffective: right + 0.002 }),
  singleLegDropJump("left", { dropHeightEffective: left }),
];

describe("effective drop heights of the legs", () => {
  it("that differ by more than a tenth of the larger are found, by their means", () => {
    // By hand: 1 − 0.152/0.170 = 10.6 %.
    expect(dropHeightMismatches(fallen(0.152, 0.17), defaultSettings)).toEqual([
      { test: "dropJump", dropHeightMetres: 0.2, left: 0.17, right: expect.closeTo(0.152, 12) },
    ]);
    const [finding, ...more] = dropHeightFindings(fallen(0.152, 0.17), defaultSettings);
    expect(more).toEqual([]);
    expect(told(finding)).toMatchObject({
      code: "drop-height-legs-differ",
      severity: "warning",
      message:
        "In single-leg drop jumps from 0.20\u00a0m the left leg fell from 0.170\u00a0m and the right from 0.152\u00a0m, the right from 11\u00a0% less: the legs are not comparable.",
      removes: [],
    });
  });

  it("that differ by less are not", () => {
    // By hand: 1 − 0.155/0.170 = 8.8 %.
    expect(dropHeightMismatches(fallen(0.155, 0.17), defaultSettings)).toEqual([]);
    const strict = settingsWith({ dropHeightLegsTolerance: 0.05 });
    expect(dropHeightMismatches(fallen(0.155, 0.17), strict)).toHaveLength(1);
  });

  it("are held against each other within one box only, and without excluded or two-leg trials", () => {
    const right = singleLegDropJump("right", { dropHeightEffective: 0.15 });
    const left = singleLegDropJump("left", { dropHeightEffective: 0.28 });
    expect(dropHeightMismatches([right, { ...left, dropHeightMetres: 0.3 }], defaultSettings)).toEqual([]);
    expect(dropHeightMismatches([right, { ...left, excluded: true }], defaultSettings)).toEqual([]);
    expect(dropHeightMismatches([right, twoLegDropJump("left", 0.28, 0.28)], defaultSettings)).toEqual([]);
    expect(dropHeightMismatches([right, left], defaultSettings)).toHaveLength(1);
  });
});
