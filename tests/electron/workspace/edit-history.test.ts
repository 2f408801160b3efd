import { describe, expect, test } from "vitest";
import { EditHistory, type EditStep, type NumberedStep } from "../../../electron/workspace/edit-history.ts";
import { answerWords, sessionChangeWords, trialChangeWords } from "../../../electron/workspace/edit-words.ts";

const stepOf = (folder: string, words: string): EditStep => ({
  reach: { folder },
  words,
  before: { description: {}, findings: [] },
  after: { description: { note: words }, findings: [] },
});
const beyond = (words: string): EditStep => ({ reach: { beyond: "the record of athlete A-1" }, words, sequence: 7 });

function taken(step: NumberedStep | undefined): NumberedStep {
  if (step === undefined) throw new Error("There is no step.");
  return step;
}

const undo = (history: EditHistory, shown: string) => history.undone(taken(history.lastDone(shown)));
const redo = (history: EditHistory, shown: string) => history.redone(taken(history.lastUndone(shown)));
const words = (history: EditHistory, shown: string) => [
  history.lastDone(shown)?.words,
  history.lastUndone(shown)?.words,
];

describe("the history of edits", () => {
  test("offers the newest step and what was taken back last, and nothing where there is nothing", () => {
    const history = new EditHistory();
    expect(words(history, "a")).toEqual([undefined, undefined]);
    history.record(stepOf("a", "first"));
    history.record(stepOf("a", "second"));
    expect(words(history, "a")).toEqual(["second", undefined]);
    undo(history, "a");
    expect(words(history, "a")).toEqual(["first", "second"]);
    redo(history, "a");
    expect(words(history, "a")).toEqual(["second", undefined]);
  });

  test("offers the newest step of the session shown, never one of another session", () => {
    const history = new EditHistory();
    history.record(stepOf("a", "of a"));
    history.record(stepOf("b", "of b"));
    expect(words(history, "a")).toEqual(["of a", undefined]);
    undo(history, "a");
    expect(words(history, "a")).toEqual([undefined, "of a"]);
    expect(words(history, "b")).toEqual(["of b", undefined]);
    // what another session does meanwhile forgets nothing
    history.record(stepOf("b", "of b too"));
    expect(words(history, "a")).toEqual([undefined, "of a"]);
  });

  test("offers what reaches beyond sessions everywhere, with the newest of the session alone beside it", () => {
    const history = new EditHistory();
    history.record(stepOf("a", "of a"));
    history.record(beyond("of an athlete"));
    expect(words(history, "a")).toEqual(["of an athlete", undefined]);
    expect(words(history, "b")).toEqual(["of an athlete", undefined]);
    expect([history.lastDoneWithin("a")?.words, history.lastDoneWithin("b")?.words]).toEqual(["of a", undefined]);
  });

  test("a new edit after undo forgets what was undone of its session, and one beyond sessions all of it", () => {
    const history = new EditHistory();
    for (const folder of ["a", "b"]) {
      history.record(stepOf(folder, `of ${folder}`));
      undo(history, folder);
    }
    history.record(stepOf("a", "other"));
    expect(words(history, "a")).toEqual(["other", undefined]);
    expect(words(history, "b")).toEqual([undefined, "of b"]);
    history.record(beyond("of an athlete"));
    expect(words(history, "b")).toEqual(["of an athlete", undefined]);
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
