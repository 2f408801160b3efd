import { afterAll, describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { makeHandlers } from "../../../electron/handlers/host-handlers.ts";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { startHostWorker } from "../../../electron/worker/remote-handlers.ts";
import { WorkspaceState } from "../../../electron/workspace/workspace.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";

const noSamples = "no-such-folder";
const remote = startHostWorker({ host: "browser", sampleTraces: noSamples });
const { handlers } = remote;

afterAll(() => remote.close());

const stated = {
  folder: "",
  files: ["a.csv"],
  answers: { test: "countermovementJump", limb: "both" } as const,
};

describe("the host on a thread of its own", () => {
  test("answers as the same handlers do on this thread, bit for bit", async () => {
    const near = makeHandlers(new WorkspaceState(defaultSettings, noSamples), "browser");
    for (const side of [handlers, near])
      await side["recordings.add"]({ path: "a.csv", bytes: bytesOf(jumpText("both", 501)) });
    expect(await handlers["recordings.answer"](stated)).toEqual(await near["recordings.answer"](stated));
    const which = { folder: "", file: "a.csv", trial: 1 };
    const trace = await handlers["trials.trace"](which);
    expect(trace.total).toBeInstanceOf(Float64Array);
    expect(trace).toEqual(await near["trials.trace"](which));
  });

  test("leaves this thread free while it computes", async () => {
    let turns = 0;
    const turning = setInterval(() => (turns += 1), 1);
    for (let index = 0; index < 12; index += 1) {
      await handlers["recordings.add"]({
        path: `many/${index}.csv`,
        bytes: bytesOf(jumpText("both", 601 + 2 * index)),
      });
    }
    await handlers["workspace.show"]({ folder: "many" });
    clearInterval(turning);
    // Analysed on this thread not one turn could pass.
    expect(turns).toBeGreaterThan(5);
  });

  test("passes a refusal on as its sentence, and answers in the order of asking", async () => {
    await expect(handlers["workspace.show"]({ folder: "gone" })).rejects.toThrow(RequestRefused);
    const order: string[] = [];
    await Promise.all([
      Promise.resolve(handlers["workspace.show"]({ folder: "many" })).then(() => order.push("first")),
      Promise.resolve(handlers["workspace.read"]({})).then(() => order.push("second")),
    ]);
    expect(order).toEqual(["first", "second"]);
  });

  test("tells whoever waits when the thread has ended", async () => {
    const short = startHostWorker({ host: "browser", sampleTraces: noSamples });
    const asked = Promise.resolve(short.handlers["workspace.read"]({}));
    await asked;
    await short.close();
    await expect(short.handlers["workspace.read"]({})).rejects.toThrow("has ended");
  });
});
