import { describe, expect, it } from "vitest";
import type { Host } from "../../electron/boundary/host-api.ts";
import { addedWords } from "../../renderer/recordings/added-words.ts";
import { FileTooLarge } from "../../renderer/recordings/dropped-files.ts";
import { progressWords, type TakingIn, takeIn, takeOne, withRetried } from "../../renderer/recordings/take-in.ts";

type Outcome = "understood" | "refused";

function fakeHost(outcomes: Readonly<Record<string, Outcome>>): { host: Host; received: string[]; ended: string[] } {
  const received: string[] = [];
  const ended: string[] = [];
  const host: Host = {
    async call(name, request) {
      if (name === "recordings.endBatch") {
        ended.push((request as { batch: string }).batch);
        const message = "Another session “day” is open already; this one stands beside it as “day (2)”.";
        return { places: [{ folder: "day", session: "day (2)", message }] } as never;
      }
      const { path } = request as { path: string };
      received.push(path);
      return { folder: "day", outcome: outcomes[path] ?? "understood", message: `About ${path}.`, sameAs: [] } as never;
    },
  };
  return { host, received, ended };
}

const readable = (path: string) => ({ path, read: async () => Uint8Array.of(1) });
const unreadable = (path: string) => ({ path, read: () => Promise.reject(new Error("NotFoundError")) });

describe("taking a batch of files in", () => {
  const options = { batch: "first", onProgress: () => {}, isCancelled: () => false, now: () => 0 };

  it("never loses the rest of the batch to a file that cannot be read or is refused", async () => {
    const { host, received } = fakeHost({ "day/b.csv": "refused" });
    const files = [unreadable("day/a.csv"), readable("day/b.csv"), readable("day/c.csv")];
    const taken = await takeIn(host, files, options);
    expect(received).toEqual(["day/b.csv", "day/c.csv"]);
    expect(taken.files.map((each) => each.outcome)).toEqual(["refused", "refused", "understood"]);
    expect(taken.files[0]!.message).toContain("could not be read");
    expect(taken.cancelled).toBe(false);
  });

  it("says of a file that is too large what it is, and takes the others in", async () => {
    const { host, received } = fakeHost({});
    const large = { path: "day/a.csv", read: () => Promise.reject(new FileTooLarge("a.csv was left out.")) };
    const taken = await takeIn(host, [large, readable("day/b.csv")], options);
    expect(received).toEqual(["day/b.csv"]);
    expect(taken.files.map(({ outcome, message }) => [outcome, message])).toEqual([
      ["refused", "a.csv was left out."],
      ["understood", "About day/b.csv."],
    ]);
    const added = await Promise.all([large, readable("day/b.csv")].map((each) => takeOne(host, each, "")));
    expect(addedWords(added)).toBe("1 recording taken in. a.csv was left out.");
  });

  it("ends the batch, also a cancelled one, and knows where its folder went and which files were not read", async () => {
    const { host, received, ended } = fakeHost({});
    const files = ["day/a", "day/b", "day/c", "day/d"].map(readable);
    const taken = await takeIn(host, files, { ...options, isCancelled: () => received.length === 2 });
    expect(ended).toEqual(["first"]);
    expect(taken.cancelled).toBe(true);
    expect(taken.files.map((each) => each.folder)).toEqual(["day (2)", "day (2)", undefined, undefined]);
    expect(taken.files.map((each) => each.outcome)).toEqual(["understood", "understood", "not read", "not read"]);
    expect(taken.places).toEqual([expect.stringContaining("stands beside it as “day (2)”")]);
  });

  it("is joined by what came of the files that were tried again", async () => {
    const files = [readable("day/a.csv"), readable("day/b.csv")];
    const first = await takeIn(fakeHost({ "day/b.csv": "refused" }).host, files, options);
    const again = await takeIn(fakeHost({}).host, files.slice(1), options);
    expect(withRetried(first, again).files.map((each) => each.outcome)).toEqual(["understood", "understood"]);
  });

  it("tells the time left from the files so far", async () => {
    let clock = 0;
    const told: TakingIn[] = [];
    await takeIn(fakeHost({}).host, ["a", "b", "c", "d"].map(readable), {
      batch: "timed",
      onProgress: (progress) => told.push(progress),
      isCancelled: () => false,
      now: () => {
        clock += 1000;
        return clock;
      },
    });
    // by hand: the fake clock gives each file one second, three files are left after the first
    expect(told[1]).toEqual({ done: 1, total: 4, secondsLeft: 3 });
    expect(progressWords(told[1]!)).toBe("1 of 4, about 3 s left");
    expect(progressWords(told[4]!)).toBe("4 of 4");
  });
});
