import { expect, test } from "vitest";
import { previewWords } from "../../../renderer/athletes/backup-words.ts";

test("what it holds is said before anything is replaced by it", () => {
  const held = { schema: 1, athletes: 1, sessions: 2, recordings: 0, encrypted: true, needsPassphrase: true } as const;
  const lastChange = "2026-11-02T08:01:00.000Z";
  expect(previewWords({ ...held, lastChange, afterwards: "the register's", protectionSentence: "Said." })).toBe(
    "It holds 1 athlete, 2 sessions, 0 recordings. Last changed 2 Nov 2026, 08:01 UTC. Said.",
  );
});
