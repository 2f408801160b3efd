import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { recordingBytes, temporaryFolder } from "../register/register-world.ts";
import { runInProcess } from "./run-in-process.ts";

test.each([
  ["of no JSON", '{"athlete":{"code":"A-1"},"date":"2026-05-01",}'],
  ["with a word that nobody knows", '{"athlete":{"code":"A-1"},"involved":"rigth","date":"2026-05-01"}'],
])("importing a folder with a session.json %s says so beside the result and asks for eyes", async (_what, text) => {
  const folder = join(temporaryFolder(), "visit");
  mkdirSync(folder);
  writeFileSync(join(folder, "jump.csv"), recordingBytes(1));
  writeFileSync(join(folder, "session.json"), text);
  const { code, out, err } = await runInProcess(
    "register",
    "import",
    folder,
    "--register",
    join(temporaryFolder(), "r.sqlite"),
  );
  expect(code).toBe(1);
  expect(out).toContain("added, 1 recording");
  expect(err).toContain("session.json");
});
