import { describe, expect, it } from "vitest";
import { dropAnswersFrom, writtenDrop } from "../../renderer/traces/drop-answers.ts";
import { exampleTrial } from "./example-session.ts";

const before = writtenDrop(exampleTrial({ test: "dropJump", dropHeightMetres: 0.3, leadingLeg: "left" }));

describe("what is stated about a drop", () => {
  it("shows the box in metres and the leg, and empty what nobody stated", () => {
    expect(before).toEqual({ height: "0.30", leadingLeg: "left" });
    expect(writtenDrop(exampleTrial())).toEqual({ height: "", leadingLeg: "" });
  });

  it("sends only what was changed", () => {
    expect(dropAnswersFrom({ ...before, leadingLeg: "right" }, before)).toEqual({ answers: { leadingLeg: "right" } });
    expect(dropAnswersFrom({ ...before, height: "0,20" }, before)).toEqual({ answers: { dropHeightMetres: 0.2 } });
  });

  it("is taken back where its field was emptied, and only where something was stated", () => {
    const emptied = { height: " ", leadingLeg: "" } as const;
    expect(dropAnswersFrom(emptied, before)).toEqual({ answers: { dropHeightMetres: null, leadingLeg: null } });
    const unstated = writtenDrop(exampleTrial({ test: "dropJump" }));
    expect(dropAnswersFrom(emptied, unstated)).toHaveProperty("problem");
  });

  it("is sent back with a sentence where it is no height in metres, or nothing was changed", () => {
    for (const height of ["30", "high", "0", "-0.3"]) {
      expect(dropAnswersFrom({ ...before, height }, before)).toHaveProperty("problem", expect.stringContaining("0.30"));
    }
    expect(dropAnswersFrom(before, before)).toHaveProperty("problem");
  });
});
