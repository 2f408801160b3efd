import { expect, test } from "vitest";
import { killRounds } from "./kill-rounds.ts";

test("killed at ten random moments of imports, edits, erasures, migrations and backups, nothing acknowledged is lost", async () => {
  const { faults, rounds, acknowledged } = await killRounds(10);
  expect(faults).toEqual([]);
  expect(rounds).toBe(10);
  // It was at work when it was killed.
  expect(acknowledged.noted + acknowledged.imported).toBeGreaterThan(5);
});
