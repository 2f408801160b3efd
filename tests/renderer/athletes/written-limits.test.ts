import { describe, expect, test } from "vitest";
import { limitsFrom, type WrittenLimits, writtenLimits } from "../../../renderer/athletes/written-limits.ts";

const shipped = writtenLimits({});
const named: WrittenLimits = { ...shipped, setBy: " Dr. N. Aas " };

describe("the clinic's limits", () => {
  test("begin as the program's defaults, which a name confirms", () => {
    expect(shipped).toMatchObject({
      painTwoLeg: "3",
      painSingleLegAndDrop: "2",
      effusion: "trace",
      earliestWeeks: { twoLegJump: { plain: "12", repaired: "16" }, singleLegDrop: { plain: "24", repaired: "28" } },
      landingsTwoLeg: "30",
      landingsPerLeg: "26",
      setBy: "",
    });
    expect(limitsFrom(shipped)).toEqual({ problem: "Say who sets these limits." });
    expect(limitsFrom(named)).toMatchObject({ limits: { painTwoLeg: 3, setBy: "Dr. N. Aas" } });
  });

  test.each([
    ["no pain", { painTwoLeg: "" }],
    ["pain beyond ten", { painTwoLeg: "12" }],
    ["more pain allowed on one leg than on two", { painSingleLegAndDrop: "4" }],
    ["half a landing", { landingsPerLeg: "2.5" }],
    [
      "a repair that begins earlier",
      { earliestWeeks: { ...shipped.earliestWeeks, twoLegJump: { plain: "12", repaired: "8" } } },
    ],
    ["no week", { earliestWeeks: { ...shipped.earliestWeeks, singleLegJump: { plain: "", repaired: "24" } } }],
  ])("cannot be set with %s", (_, changed) => {
    expect(limitsFrom({ ...named, ...changed })).toHaveProperty("problem");
  });
});
