import { describe, expect, test } from "vitest";
import { EditHistory, type EditStep } from "../../electron/edit-history.ts";
import { answerWords, sessionChangeWords, trialChangeWords } from "../../electron/edit-words.ts";

const step = (words: string): EditStep => ({
  folder: "a",
  words,
  before: { description: {}, findings: [] },
  after: { description: { note: words }, findings: [] },
});

describe("the history of edits", () => {
  test("says in words what would be taken back and done again", () => {
    const history = new EditHistory();
    history.record(step("first"));
    history.record(step("second"));
    expect([history.undoWords, history.redoWords]).toEqual(["second", ""]);
    expect(history.undo()?.words).toBe("second");
    expect([history.undoWords, history.redoWords]).toEqual(["first", "second"]);
    expect(history.redo()?.words).toBe("second");
    expect([history.undoWords, history.redoWords]).toEqual(["second", ""]);
  });

  test("a new edit after undo forgets what was undone", () => {
    const history = new EditHistory();
    history.record(step("first"));
    history.undo();
    history.record(step("other"));
    expect(history.redo()).toBeUndefined();
    expect(history.undoWords).toBe("other");
  });

  test("has nothing to give when it is empty", () => {
    const history = new EditHistory();
    expect([history.undo(), history.redo(), history.undoWords, history.redoWords]).toEqual([
      undefined,
      undefined,
      "",
      "",
    ]);
  });
});

describe("words of an edit", () => {
  const file = "countermovement-both-2.csv";
  const takeoff = { name: "takeoff", time: 3.2 } as const;

  test("name the events that moved, and only those", () => {
    const before = [takeoff, { name: "onset", time: 2 } as const];
    const after = [{ ...takeoff, time: 3.205 }, { name: "onset", time: 2 } as const];
    expect(trialChangeWords(file, 1, { events: after }, before)).toBe(
      "Move take-off, countermovement-both-2.csv trial 1",
    );
  });

  test("tell one event's return from the return of all", () => {
    const touchdown = { name: "touchdown", time: 4 } as const;
    expect(trialChangeWords(file, 1, { events: [touchdown] }, [takeoff, touchdown])).toBe(
      `Reset take-off to detected, ${file} trial 1`,
    );
    expect(trialChangeWords(file, 1, { events: [] }, [takeoff])).toBe(`Reset events to detected, ${file} trial 1`);
  });

  test("name exclusions, seen marks, answers and changed parts", () => {
    expect(trialChangeWords(file, 2, { excluded: { reason: "slipped" } }, [])).toBe(`Exclude, ${file} trial 2`);
    expect(trialChangeWords(file, 2, { excluded: null, seen: true }, [])).toBe(
      `Include again and mark as seen, ${file} trial 2`,
    );
    expect(answerWords(["a.csv"])).toBe("Answer for a.csv");
    expect(answerWords(["a.csv", "b.csv", "c.csv"])).toBe("Answer for 3 recordings");
    expect(sessionChangeWords({ milestone: "month 6", involved: "left", massKg: 70 })).toBe(
      "Change milestone, involved side and body mass",
    );
  });
});
