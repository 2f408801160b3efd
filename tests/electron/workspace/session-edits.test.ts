import { describe, expect, test } from "vitest";
import type { SessionDescription } from "../../../core/stated/session.ts";
import {
  withAnswers,
  withAssignments,
  withSessionChange,
  withStatedPlates,
  withTrialChange,
} from "../../../electron/workspace/session-edits.ts";

const file = "jump.csv";

describe("changing a trial", () => {
  test("event times are kept to a tenth of a millisecond and in the order of the jump", () => {
    const events = [
      { name: "touchdown", time: 2.34567 },
      { name: "takeoff", time: 1.23456 },
    ] as const;
    const after = withTrialChange({}, file, 1, { events }, [1]);
    // By hand: rounded half up at the fourth decimal.
    expect(after.files?.[0]?.events).toEqual([
      { name: "takeoff", time: 1.2346 },
      { name: "touchdown", time: 2.3457 },
    ]);
  });

  test("taking every decision back leaves the description as it was", () => {
    const start: SessionDescription = { milestone: "month 7" };
    const changed = withTrialChange(start, file, 1, { excluded: { reason: "slipped" }, seen: true }, [1]);
    expect(changed.files).toEqual([{ file, trial: 1, excluded: { reason: "slipped" }, seen: true }]);
    expect(withTrialChange(changed, file, 1, { excluded: null, seen: false, events: [] }, [1])).toEqual(start);
  });

  test("a trial is kept, and held again, apart from the other trials of its file", () => {
    const start: SessionDescription = { files: [{ file, kept: true }] };
    const held = withTrialChange(start, file, 1, { kept: false }, [1, 2]);
    expect(held.files).toEqual([{ file, trial: 2, kept: true }]);
    expect(withTrialChange(held, file, 1, { kept: true }, [1, 2]).files).toEqual([
      { file, trial: 2, kept: true },
      { file, trial: 1, kept: true },
    ]);
  });

  test("a part that is not mentioned stays", () => {
    const start: SessionDescription = {
      files: [{ file, trial: 2, limb: "left", events: [{ name: "takeoff", time: 1 }] }],
    };
    expect(withTrialChange(start, file, 2, { seen: true }, [1, 2]).files).toEqual([
      { file, trial: 2, limb: "left", events: [{ name: "takeoff", time: 1 }], seen: true },
    ]);
  });

  test("including one trial again leaves the others of its file excluded", () => {
    const excluded = { reason: "hand on the rail" };
    const start: SessionDescription = { files: [{ file, test: "countermovementJump", excluded }] };
    expect(withTrialChange(start, file, 2, { excluded: null }, [1, 2, 3]).files).toEqual([
      { file, test: "countermovementJump" },
      { file, trial: 1, excluded },
      { file, trial: 3, excluded },
    ]);
  });

  test("the description given is never altered", () => {
    const start: SessionDescription = Object.freeze({ files: Object.freeze([Object.freeze({ file, seen: true })]) });
    expect(() => withTrialChange(start, file, 1, { excluded: { reason: "slipped" } }, [1])).not.toThrow();
    expect(start.files).toEqual([{ file, seen: true }]);
  });
});

describe("answering for recordings", () => {
  test("answers join what was answered before; columns are answered as a whole", () => {
    const once = withAnswers({}, [file, "other.csv"], { unit: "N", columns: { left: 2 } }, []);
    const twice = withAnswers(once, [file], { rateHz: 600, columns: { right: 3 } }, []);
    expect(twice.files).toEqual([
      { file, unit: "N", rateHz: 600, columns: { right: 3 } },
      { file: "other.csv", unit: "N", columns: { left: 2 } },
    ]);
  });

  test("an answer for the file stands beside a decision about one of its trials", () => {
    const start: SessionDescription = { files: [{ file, trial: 1, seen: true }] };
    expect(withAnswers(start, [file], { limb: "left" }, []).files).toEqual([
      { file, trial: 1, seen: true },
      { file, limb: "left" },
    ]);
  });
});

describe("taking an answer back", () => {
  test("leaves the other answers, and nothing where there was no other", () => {
    const start: SessionDescription = { files: [{ file, unit: "N", swapPlates: true, columns: { left: 2 } }] };
    const after = withAnswers(start, [file], { swapPlates: null, columns: null }, [file]);
    expect(after.files).toEqual([{ file, unit: "N" }]);
    expect(withAnswers(after, [file], { unit: null }, [file])).toEqual({});
  });

  test("a file answered as a whole overrules what one of its trials was stated to be", () => {
    const start: SessionDescription = { files: [{ file, trial: 2, limb: "left", seen: true }] };
    expect(withAnswers(start, [file], { limb: "right" }, [file]).files).toEqual([
      { file, trial: 2, seen: true },
      { file, limb: "right" },
    ]);
  });
});

describe("assigning trials", () => {
  const numbers = () => [1, 2];

  test("a practice mark of one trial leaves the others as they were, and can be taken back of one of a whole file", () => {
    const numbers = () => [1, 2];
    const marked = withAssignments({}, [{ file, trial: 2, practice: true }], [file], numbers);
    expect(marked.files).toEqual([{ file, trial: 2, practice: true }]);
    const whole: SessionDescription = { files: [{ file, practice: true }] };
    expect(withAssignments(whole, [{ file, trial: 2, practice: null }], [file], numbers).files).toEqual([
      { file, trial: 1, practice: true },
    ]);
    expect(withAnswers(whole, [file], { practice: null }, [file]).files ?? []).toEqual([]);
  });

  test("each row is stated its own way, files and single trials alike", () => {
    const rows = [
      { file: "a.csv", test: "squatJump", limb: "both" },
      { file, trial: 2, limb: "left" },
    ] as const;
    expect(withAssignments({}, rows, ["a.csv", file], numbers).files).toEqual([
      { file: "a.csv", test: "squatJump", limb: "both" },
      { file, trial: 2, limb: "left" },
    ]);
  });

  test("taking a statement back at one trial leaves it to the others of its file", () => {
    const start: SessionDescription = { files: [{ file, test: "squatJump", limb: "left" }] };
    expect(withAssignments(start, [{ file, trial: 1, test: null }], [file], numbers).files).toEqual([
      { file, limb: "left" },
      { file, trial: 2, test: "squatJump" },
    ]);
  });
});

describe("taking back what was stated about a drop", () => {
  test("leaves nothing of it at the file or its trials, and the rest as it was", () => {
    const start: SessionDescription = {
      files: [
        { file, test: "dropJump", dropHeightMetres: 0.3, leadingLeg: "left" },
        { file, trial: 2, dropHeightMetres: 0.4 },
        { file: "other.csv", dropHeightMetres: 0.3 },
      ],
    };
    expect(withAnswers(start, [file], { dropHeightMetres: null }, [file, "other.csv"]).files).toEqual([
      { file, test: "dropJump", leadingLeg: "left" },
      { file: "other.csv", dropHeightMetres: 0.3 },
    ]);
  });

  test("that the session states for all hands it to the recordings it stays true for", () => {
    const start: SessionDescription = { dropHeightMetres: 0.3, files: [{ file: "own.csv", dropHeightMetres: 0.2 }] };
    const changed = withAnswers(start, [file], { dropHeightMetres: null }, [file, "other.csv", "own.csv"]);
    expect(changed).toEqual({
      files: [
        { file: "own.csv", dropHeightMetres: 0.2 },
        { file: "other.csv", dropHeightMetres: 0.3 },
      ],
    });
  });
});

describe("changing what is said about the session", () => {
  test("parts are replaced, null takes one away, and the rest stays", () => {
    const start: SessionDescription = {
      involved: "right",
      milestone: "month 6",
      simulated: true,
      files: [{ file, seen: true }],
    };
    expect(withSessionChange(start, { involved: "left", milestone: null })).toEqual({
      involved: "left",
      simulated: true,
      files: [{ file, seen: true }],
    });
  });
});

describe("stating which foot stood on which plate", () => {
  const feet = [
    { column: "left", foot: "right" },
    { column: "right", foot: "left" },
  ] as const;

  test("is said of whole files, beside what else is said of them", () => {
    const start: SessionDescription = { files: [{ file, limb: "both" }] };
    const after = withStatedPlates(start, new Map([file, "other.csv"].map((each) => [each, feet])));
    expect(after.files).toEqual([
      { file, limb: "both", plates: feet },
      { file: "other.csv", plates: feet },
    ]);
  });

  test("takes the place of every earlier statement about the file, one at a trial too", () => {
    const old = [{ column: "left", foot: "left" }] as const;
    const start: SessionDescription = {
      files: [
        { file, trial: 2, seen: true, plates: old },
        { file, plates: old },
      ],
    };
    expect(withStatedPlates(start, new Map([[file, feet]])).files).toEqual([
      { file, trial: 2, seen: true },
      { file, plates: feet },
    ]);
  });

  test("is taken away by an empty list", () => {
    const start: SessionDescription = { pain: 1, files: [{ file, plates: feet }] };
    expect(withStatedPlates(start, new Map([[file, []]]))).toEqual({ pain: 1 });
  });
});
