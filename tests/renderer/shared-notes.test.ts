import { describe, expect, it } from "vitest";
import { sharedNotes } from "../../renderer/sides/shared-notes.ts";

const index = (note: string) => ({ kind: "index", note });
const time = (note: string) => ({ kind: "difference", note });
const none = (note: string) => ({ kind: "none", note });
const kinds = ["index", "difference"];

describe("notes of rows that stand together", () => {
  it("say once what they have in common, and each what is its own", () => {
    const notes = [index("Made alike. 5.7 degrees of freedom."), index("Made alike. 4.2 degrees of freedom.")];
    expect(sharedNotes(notes, kinds)).toEqual({
      shared: "Made alike.",
      own: ["5.7 degrees of freedom.", "4.2 degrees of freedom."],
    });
  });

  it("are said whole where nothing is common or there is only one", () => {
    expect(sharedNotes([index("One."), index("Two.")], kinds)).toEqual({ shared: "", own: ["One.", "Two."] });
    expect(sharedNotes([index("Only this.")], kinds)).toEqual({ shared: "", own: ["Only this."] });
  });

  it("are told apart by kind: what indices share and what times share, each once", () => {
    const notes = [index("A ratio."), time("A difference."), index("A ratio."), time("A difference.")];
    expect(sharedNotes(notes, kinds)).toEqual({ shared: "A ratio. A difference.", own: ["", "", "", ""] });
  });

  it("stay where their head would speak of other rows too", () => {
    const notes = [index("A ratio."), index("A ratio."), none("No trial."), none("No trial.")];
    expect(sharedNotes(notes, kinds)).toEqual({ shared: "A ratio.", own: ["", "", "No trial.", "No trial."] });
    expect(sharedNotes([none("No trial."), none("No trial.")], kinds).shared).toBe("No trial.");
  });
});
