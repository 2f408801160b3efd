import { describe, expect, it } from "vitest";
import { recordingByteLimit } from "../../core/recording/size-limit.ts";
import { chosenFiles, droppedFiles, FileTooLarge } from "../../renderer/recordings/dropped-files.ts";

const file = (path: string) =>
  ({
    isFile: true,
    fullPath: path,
    file: (done: (file: File) => void) => done(new File([path], path)),
  }) as unknown as FileSystemFileEntry;

/** A folder as browsers give it: in portions, until an empty one comes. */
function folder(path: string, ...portions: readonly (readonly FileSystemEntry[])[]): FileSystemEntry {
  const createReader = () => {
    const waiting = [...portions];
    return { readEntries: (done: (entries: readonly FileSystemEntry[]) => void) => done(waiting.shift() ?? []) };
  };
  return { isFile: false, fullPath: path, createReader } as unknown as FileSystemEntry;
}

const dropped = (entry: FileSystemEntry) => ({ webkitGetAsEntry: () => entry }) as unknown as DataTransferItem;

describe("files dropped on the page", () => {
  it("are found in every folder below, also where the browser gives a folder out in portions", async () => {
    const inner = folder("/day/inner", [file("/day/inner/c.csv")]);
    const outer = folder("/day", [file("/day/b.csv"), inner], [file("/day/a.csv")]);
    const found = await droppedFiles([dropped(outer), dropped(file("/loose.csv"))]);
    expect(found.map((each) => each.path)).toEqual(["day/a.csv", "day/b.csv", "day/inner/c.csv", "loose.csv"]);
    expect(new TextDecoder().decode(await found[0]!.read())).toBe("/day/a.csv");
  });

  it("begin with what describes their folder", async () => {
    const day = folder("/day", [file("/day/a.csv"), file("/day/session.json")]);
    const found = await droppedFiles([dropped(day)]);
    expect(found.map((each) => each.path)).toEqual(["day/session.json", "day/a.csv"]);
  });

  it("keep the path within a chosen folder, and only their name where they were chosen one by one", () => {
    const inFolder = Object.assign(new File([], "a.csv"), { webkitRelativePath: "day/a.csv" });
    const alone = Object.assign(new File([], "b.csv"), { webkitRelativePath: "" });
    expect(chosenFiles([inFolder, alone]).map((each) => each.path)).toEqual(["b.csv", "day/a.csv"]);
  });

  it("are not read where they are larger than one recording may be, and that is said with their name", async () => {
    const large = new File([], "large.csv");
    Object.defineProperty(large, "size", { value: recordingByteLimit + 1 });
    const [picked] = chosenFiles([large]);
    await expect(picked!.read()).rejects.toThrow(FileTooLarge);
    await expect(picked!.read()).rejects.toThrow(/^large\.csv was left out: it is larger than 64 MB/);
  });
});
