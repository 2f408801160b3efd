import { describe, expect, test } from "vitest";
import { keptPerSession, readKeepOption } from "../../../electron/command/keep-option.ts";
import type { ListedSession } from "../../../electron/files/read-folder.ts";

const session = (folder: string, ...names: readonly string[]): ListedSession => ({
  folder,
  names,
  directory: "",
  unreadable: [],
  loose: false,
});
const sessions = [session("a", "left-1.csv"), session("b", "left-1.csv", "jumps.csv")];

describe("--keep", () => {
  test("names files, and with # one trial of several", () => {
    expect(readKeepOption("left-1.csv, b/jumps.csv#2")).toEqual([
      { file: "left-1.csv" },
      { file: "b/jumps.csv", trial: 2 },
    ]);
  });

  test.each(["", "left-1.csv,", "#2", "jumps.csv#0"])("%j cannot be meant", (typed) => {
    expect(() => readKeepOption(typed)).toThrow("--keep is written like");
  });

  test("keeps the trials of the session that the name says, under their names there", () => {
    const of = keptPerSession({ keep: readKeepOption("b/left-1.csv,b/jumps.csv#2") }, sessions);
    expect(sessions.map(of)).toEqual([{}, { keep: [{ file: "left-1.csv" }, { file: "jumps.csv", trial: 2 }] }]);
  });

  test("says which name is none of the recordings", () => {
    expect(() => keptPerSession({ keep: readKeepOption("left-1.csv") }, sessions)).toThrow(
      "--keep names left-1.csv, which is none of the recordings.",
    );
  });
});
