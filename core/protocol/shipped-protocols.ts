import type { Protocol } from "./protocol.ts";

/** Stop rules that hold at every stage; common practice, a clinic adds its own. */
const stopRules: readonly string[] = [
  "Stop when pain rises above the clinic's limit, when the knee gives way or locks, or when it swells.",
  "Stop when the athlete asks to, or when landings lose control twice in a row.",
];

/** Protocols that ship with the program: common practice, each editable as a copy. */
export const shippedProtocols: readonly Protocol[] = [
  {
    id: "return-to-running",
    name: "Two-leg jumps before running",
    version: 1,
    stage: "Return to running",
    tests: [{ test: "countermovementJump", legs: "both", trials: 4, mostAttempts: 6 }],
    notYet: [
      { test: "countermovementJump", legs: "single", reason: "landing on one leg comes after running" },
      { test: "dropJump", legs: "both", reason: "landing from a box comes after running" },
      { test: "dropJump", legs: "single", reason: "landing on one leg from a box comes last" },
      { test: "repeatedHops", legs: "single", reason: "hopping on one leg comes after running" },
      { test: "dropLanding", legs: "single", reason: "landing on one leg from a box comes last" },
    ],
    stopRules,
  },
  {
    id: "return-to-pivoting-sport",
    name: "Jumps on two legs, on one, and from the box",
    version: 1,
    stage: "Return to pivoting sport",
    tests: [
      { test: "countermovementJump", legs: "both", trials: 4, mostAttempts: 6 },
      { test: "countermovementJump", legs: "single", trials: 4, mostAttempts: 6 },
      { test: "dropJump", legs: "both", trials: 4, mostAttempts: 6, dropHeightMetres: 0.3 },
      { test: "dropJump", legs: "single", trials: 4, mostAttempts: 6, dropHeightMetres: 0.2 },
    ],
    notYet: [],
    stopRules,
  },
];

/** A shipped protocol by its identifier; undefined where none is called so. */
export function shippedProtocol(id: string): Protocol | undefined {
  return shippedProtocols.find((protocol) => protocol.id === id);
}
