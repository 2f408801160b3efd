import { describe, expect, it } from "vitest";
import type { Host } from "../../electron/host-api.ts";
import { progressWords, type TakingIn, takeIn } from "../../renderer/recordings/take-in.ts";

function fakeHost(outcomes: Readonly<Record<string, "understood" | "refused">>): { host: Host; received: string[] } {
  const received: string[] = [];
  const host: Host = {
    async call(_name, request) {
      const { path } = request as { path: string };
      received.push(path);
      return { folder: "day", outcome: outcomes[path] ?? "understood", message: `About ${path}.` } as never;
    },
  };
  return { host, received };
}

const readable = (path: string) => ({ path, read: async () => Uint8Array.of(1) });
const unreadable = (path: string) => ({ path, read: () => Promise.reject(new Error("NotFoundError")) });

describe("taking a batch of files in", () => {
  const options = { onProgress: () => {}, isCancelled: () => false, now: () => 0 };

  it("never loses the rest of the batch to a file that cannot be read or is refused", async () => {
    const { host, received } = fakeHost({ "day/b.csv": "refused" });
    const files = [unreadable("day/a.csv"), readable("day/b.csv"), readable("day/c.csv")];
    const taken = await takeIn(host, files, options);
    expect(received).toEqual(["day/b.csv", "day/c.csv"]);
    expect(taken.leftOut.map((each) => each.path)).toEqual(["day/a.csv", "day/b.csv"]);
    expect(taken.leftOut[0]!.message).toContain("could not be read");
    expect(taken).toMatchObject({ done: 3, total: 3, cancelled: false, folder: "day" });
  });

  it("stops where it is cancelled and says how far it came", async () => {
    const { host, received } = fakeHost({});
    const files = ["a", "b", "c", "d"].map(readable);
    const taken = await takeIn(host, files, { ...options, isCancelled: () => received.length === 2 });
    expect(received).toEqual(["a", "b"]);
    expect(taken).toMatchObject({ done: 2, total: 4, cancelled: true });
  });

  it("tells the time left from the files so far", async () => {
    let clock = 0;
    const told: TakingIn[] = [];
    await takeIn(fakeHost({}).host, ["a", "b", "c", "d"].map(readable), {
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
