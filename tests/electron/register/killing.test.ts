import { expect, test } from "vitest";
import { killRounds } from "./killing/kill-rounds.ts";

/** Forty programs are started and ended; on a machine that is busy with something else that takes its time. */
const patienceMilliseconds = 300_000;

test(
  "killed twenty times, between two steps or at any moment, a register keeps everything it promises",
  async () => {
    const rounds = await killRounds(20, { seed: 20_261_130 });
    expect(
      rounds.flatMap(({ operation, step, again, faults }) => faults.map((each) => [operation, step, again, each])),
    ).toEqual([]);
    // They fell where they were meant to, at work and not behind it.
    expect(rounds.filter(({ step }) => step !== undefined).length).toBeGreaterThan(7);
    expect(new Set(rounds.map(({ operation }) => operation)).size).toBeGreaterThan(10);
  },
  patienceMilliseconds,
);
