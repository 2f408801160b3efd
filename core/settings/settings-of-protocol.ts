import { type ChoiceSetting, number } from "./setting-entry.ts";

/** A week after the operation. */
const week = (value: number, reason: string) => number(value, "wk", 0, 104, reason);

/** Settings of how often a test is done and of when it is safe. */
export const settingsOfProtocol = {
  minimumTrialsPerSide: number(3, "1", 1, 20, "Fewer sound trials a side are not compared."),
  maximumTrialsPerSide: number(
    6,
    "1",
    1,
    30,
    "Most attempts a side in a session without a protocol, whose own most attempts count else; more are never suggested.",
  ),
  suggestedTrialsPerSide: number(
    2,
    "1",
    0,
    10,
    "More trials are suggested only where at most this many a side would probably settle a question.",
  ),
  gateEffusionGrade: {
    default: "trace",
    choices: ["none", "trace", "1+", "2+", "3+"],
    reason: "Effusion above this grade closes every jump test (common practice).",
  } as ChoiceSetting,
  gatePain: number(
    3,
    "1",
    0,
    10,
    "Pain (0 to 10) above this closes every jump test; the clinic's own limit (common practice).",
  ),
  gatePainSingleLegAndDrop: number(
    2,
    "1",
    0,
    10,
    "Pain (0 to 10) above this closes single-leg and drop tests; the clinic's own limit (common practice).",
  ),
  earliestWeekTwoLegJump: week(12, "Two-leg jumps from this week after the operation (common practice)."),
  earliestWeekTwoLegJumpRepaired: week(16, "The same with meniscus or cartilage repaired, or where that is not known."),
  earliestWeekTwoLegDropOrHops: week(16, "Two-leg drop tests and hops from this week (common practice)."),
  earliestWeekTwoLegDropOrHopsRepaired: week(24, "The same with a repair, or where that is not known."),
  earliestWeekSingleLegJump: week(16, "Single-leg jumps and hops from this week (common practice)."),
  earliestWeekSingleLegJumpRepaired: week(24, "The same with a repair, or where that is not known."),
  earliestWeekSingleLegDrop: week(24, "Single-leg drop tests from this week (common practice)."),
  earliestWeekSingleLegDropRepaired: week(28, "The same with a repair, or where that is not known."),
  landingsTwoLegADay: number(30, "1", 0, 500, "Landings on two legs in one day (common practice)."),
  landingsPerLegADay: number(26, "1", 0, 500, "Landings on each single leg in one day (common practice)."),
  dropTestsClosedBelowYears: number(
    16,
    "1",
    0,
    30,
    "Below this age, in years, drop tests are closed until a clinician opens them (common practice).",
  ),
  halvedLandingsBelowYears: number(16, "1", 0, 30, "Below this age, in years, landings are halved (common practice)."),
} as const;
