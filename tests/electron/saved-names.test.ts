import { expect, test } from "vitest";
import { defaultSettings } from "../../core/settings/settings.ts";
import { fileStem } from "../../electron/files/recording-names.ts";
import { makeHandlers } from "../../electron/handlers/host-handlers.ts";
import { WorkspaceState } from "../../electron/workspace/workspace.ts";
import { directHost } from "./direct-host.ts";
import { describedSession, temporaryFolder } from "./simulated-recordings.ts";

test.each([
  ["GH-07", "GH-07"],
  ["-rf", "rf"],
  ["--out=x", "out-x"],
  [".hidden", "hidden"],
  ["-.-..x", "x"],
  ["../../etc/passwd", "etc-passwd"],
  ["\u202e\n-x", "x"],
  ["…", "unnamed"],
  ["-", "unnamed"],
  ["Łukasz 山田", "Łukasz-山田"],
])("what is saved for %j begins with %j", (typed, stem) => {
  expect(fileStem(typed)).toBe(stem);
});

test("files made of an athlete whose code begins with a dash do not", async () => {
  const folder = temporaryFolder();
  const described = describedSession();
  const session = JSON.parse(described["session.json"] ?? "") as Record<string, unknown>;
  folder.write({ ...described, "session.json": JSON.stringify({ ...session, athlete: { code: "-rf" } }) });
  const host = directHost(makeHandlers(new WorkspaceState(defaultSettings, folder.path), "browser"));
  await host.call("workspace.openDemo", {});
  for (const format of ["pdf", "html", "csv", "json"] as const) {
    const { name } = await host.call("files.make", { folder: "", format });
    expect(name).toMatch(/^rf-/);
  }
  folder.remove();
});
