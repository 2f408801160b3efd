import { describe, expect, test } from "vitest";
import { sampleTracesFolder } from "../../electron/program/program-folders.ts";
import { openWorkspace } from "../../electron/workspace/open-workspace.ts";

describe("the first start", () => {
  test("opens the demo world on the latest session of an athlete with an involved side", () => {
    const opened = openWorkspace(sampleTracesFolder()).read();
    expect([opened.demo, opened.folder]).toEqual([true, "maren-tveitlund/6-month-11"]);
    // The demo world: Maren Tveitlund six sessions, Jonas Ekre two, Aila Rusten two; and one of doubtful recordings.
    expect(opened.sessions.map((each) => each.title).toSorted()).toEqual([
      ...Array(2).fill("Aila Rusten"),
      ...Array(2).fill("Jonas Ekre"),
      ...Array(6).fill("Maren Tveitlund"),
      "nobody",
    ]);
  });

  test("every session of the demo world is described, says that it is simulated, and leaves no entry unused", () => {
    const workspace = openWorkspace(sampleTracesFolder());
    for (const { folder } of workspace.read().sessions) {
      const { result } = workspace.analysis(folder);
      expect(result.trials.length, folder).toBeGreaterThan(0);
      expect(result.description.simulated, folder).toBe(true);
      const codes = result.findings.map((each) => each.code);
      expect(codes, folder).not.toContain("session-unreadable");
      expect(codes, folder).not.toContain("session-entry-unused");
    }
  });

  test("starts empty where the demo's recordings are missing, and then says so when asked for them", () => {
    const workspace = openWorkspace("no-such-folder");
    expect(workspace.read().sessions).toEqual([]);
    expect(() => workspace.openDemo()).toThrow("The demo recordings are missing from this installation.");
  });
});
