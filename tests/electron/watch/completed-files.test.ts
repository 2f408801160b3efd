import { describe, expect, test } from "vitest";
import { CompletedFiles } from "../../../electron/watch/completed-files.ts";

const file = (path: string, size: number, changedAt = 1) => ({ path, size, changedAt });

describe("telling complete files from those being written", () => {
  test("a file is complete when two looks in a row saw it the same", () => {
    const files = new CompletedFiles();
    expect(files.look([file("a.csv", 10)])).toEqual({ complete: [], writing: ["a.csv"] });
    expect(files.look([file("a.csv", 20)])).toEqual({ complete: [], writing: ["a.csv"] });
    expect(files.look([file("a.csv", 20)])).toEqual({ complete: [file("a.csv", 20)], writing: [] });
  });

  test("the same size at another time of change is still being written", () => {
    const files = new CompletedFiles();
    files.look([file("a.csv", 20, 1)]);
    expect(files.look([file("a.csv", 20, 2)]).writing).toEqual(["a.csv"]);
  });

  test("an empty file is one that has only been opened", () => {
    const files = new CompletedFiles();
    files.look([file("a.csv", 0)]);
    expect(files.look([file("a.csv", 0)])).toEqual({ complete: [], writing: ["a.csv"] });
  });

  test("a file that was taken is left alone until it changes", () => {
    const files = new CompletedFiles();
    files.look([file("a.csv", 20)]);
    files.look([file("a.csv", 20)]);
    files.taken(file("a.csv", 20));
    expect(files.look([file("a.csv", 20)])).toEqual({ complete: [], writing: [] });
    expect(files.look([file("a.csv", 30, 5)]).writing).toEqual(["a.csv"]);
    expect(files.look([file("a.csv", 30, 5)]).complete).toEqual([file("a.csv", 30, 5)]);
  });
});
