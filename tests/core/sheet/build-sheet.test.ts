import { describe, expect, test } from "vitest";
import { intervalCaution, standingCautions } from "../../../core/criteria/cautions.ts";
import { returnToPivotingSport } from "../../../core/criteria/return-to-pivoting-sport.ts";
import { engineVersion } from "../../../core/ground/version.ts";
import { withTestAdded } from "../../../core/protocol/added-tests.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import { defaultSettings, settingsHash, settingsWith } from "../../../core/settings/settings.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import type { Protocol } from "../../../core/stated/protocol-schema.ts";
import { english } from "../../../core/words/english.ts";
import { stoppedGate } from "../gate/gates.ts";
import {
  bothInvolvedSession,
  exampleComparison,
  exampleComparisons,
  exampleCriterionResult,
  exampleDescription,
  exampleSession,
  exampleTrial,
  healthySession,
  stoppedSession,
} from "./example-session.ts";
import { firstPage, sheetTexts, tableRows } from "./sheet-text.ts";

const sheetOf = (session: SessionResult) => buildSheet(session, defaultSettings);
const nothing = exampleSession({ description: {}, trials: [], comparisons: [], criteria: [] });
const notMeasured = exampleSession({
  comparisons: [],
  criteria: [
    exampleCriterionResult(0, {
      status: "not-measured",
      reason: "No single-leg countermovement jump has this measure.",
    }),
    exampleCriterionResult(1, { status: "met", estimate: 97, reason: "The index is 97 %." }),
    exampleCriterionResult(3, { status: "no-reference", reason: "No earlier value is known." }),
  ],
});

const kinds: readonly (readonly [string, SessionResult])[] = [
  ["an involved side", exampleSession()],
  ["nobody injured", healthySession()],
  ["both knees involved", bothInvolvedSession()],
  ["a stopped session", stoppedSession()],
  ["nothing recorded", nothing],
  ["criteria not measured", notMeasured],
  ["the shipped criteria", exampleSession({ criteriaSet: returnToPivotingSport })],
];

describe("every sheet", () => {
  // Words that never describe an athlete.
  const forbidden = /\b(cleared|safe|ready|passed|failed|fit|approved|normal|at risk|recommended)\b/i;

  test.each(kinds)("with %s keeps clear of the words a calculation aid may not say", (_kind, session) => {
    expect(sheetTexts(sheetOf(session)).filter((text) => forbidden.test(text))).toEqual([]);
  });

  test("would be caught saying one of them", () => {
    const session = exampleSession({ gate: stoppedGate("she is not cleared") });
    expect(sheetTexts(sheetOf(session)).some((text) => forbidden.test(text))).toBe(true);
  });

  test.each(kinds)("with %s says the standing cautions and leaves the decision to the clinician", (_kind, session) => {
    const first = firstPage(sheetOf(session));
    const texts = sheetTexts(first);
    for (const caution of [...standingCautions, intervalCaution]) expect(texts.join("\n")).toContain(caution);
    expect(texts).toContain("Decision of the treating clinician");
    expect(texts.join("\n")).toContain("The treating clinician decides, writes and signs.");
    const lines = first.blocks.find((block) => block.kind === "write-in");
    expect(lines?.kind === "write-in" && lines.items.map((item) => item.name)).toEqual([
      "Decision",
      "Name",
      "Date",
      "Signature",
    ]);
  });

  test.each(kinds)("with %s names engine, settings and criteria set at its foot", (_kind, session) => {
    const { footer } = sheetOf(session);
    expect(footer).toContain(`Counterpoise ${engineVersion}`);
    expect(footer).toContain(settingsHash(defaultSettings).slice(0, 12));
    expect(footer).toContain(session.criteriaSet.name);
  });

  test.each(kinds)("with %s has tables whose rows have as many cells as there are columns", (_kind, session) => {
    const tables = sheetOf(session).blocks.filter((block) => block.kind === "table");
    const uneven = tables.filter((table) => table.rows.some((row) => row.cells.length !== table.columns.length));
    expect(uneven).toEqual([]);
    expect(tables.filter((table) => table.rows.length === 0)).toEqual([]);
  });

  test("never shows a hyphen as minus, an undefined or a not-a-number", () => {
    const texts = kinds.flatMap(([, session]) => sheetTexts(sheetOf(session)));
    expect(texts.filter((text) => /(^|[\s|])-\d|undefined|NaN|Infinity|\[object/.test(text))).toEqual([]);
  });
});

describe("the first page", () => {
  const page = sheetTexts(firstPage(sheetOf(exampleSession())));

  test("says who was tested, when, at which milestone and with which knee", () => {
    expect(page).toContain("Athlete: Maren Tveitlund, code GHK-07; female, born 2003, handball");
    expect(page).toContain("Session of 14 October 2026 · Month 7, team training without contact");
    expect(page).toContain(
      "The knee itself: pain 1 of 10, met; pain the next day not measured; effusion none, met; no giving way, met",
    );
    expect(page).toContain("Cautions: answered, 14 October 2026");
  });

  test("counts what was tested, trial by trial", () => {
    expect(page).toContain(
      "Countermovement jump, two legs: 3 trials used and 1 excluded. Single-leg: left 3 trials used; right 3 trials used.",
    );
    expect(page).toContain("1 recording could not be analysed; the following pages say why.");
    expect(page).toContain("Which foot stood on which plate is proved by single-leg trials of the session.");
  });

  test("gives each criterion its status word and its reason", () => {
    const rows = tableRows(sheetOf(exampleSession()), "Criteria as they stand today");
    expect(rows.map((row) => row[1])).toEqual([
      "not met",
      "not met",
      "too close to call (91\u00a0%, leaning met)",
      "not met",
    ]);
    expect(rows[0]?.[0]).toBe("Jump height symmetry, single-leg countermovement jump at least 90\u00a0%");
    expect(rows[0]?.[2]).toContain("symmetry overstates recovery");
  });

  test("says what is missing: undecided questions, trials nobody looked at, what a plate cannot measure", () => {
    expect(page).toContain(
      "Propulsion impulse symmetry, two-leg countermovement jump: More trials today cannot settle this.",
    );
    expect(page).toContain("Nobody has yet looked at the events of 1 of the trials used.");
    expect(page.some((text) => text.startsWith("What no force plate measures:"))).toBe(true);
    const missing = sheetTexts(firstPage(sheetOf(notMeasured)));
    expect(missing).toContain("Not measured today: Jump height symmetry, single-leg countermovement jump.");
    expect(missing.some((text) => text.startsWith("No earlier value to hold against: Jump height, single-leg"))).toBe(
      true,
    );
  });

  test("says what the protocol of the session still wants, and nothing where it has none", () => {
    const protocol = shippedProtocol("return-to-running");
    if (protocol === undefined) throw new Error("The protocol ships with the program.");
    const planned = exampleSession({ trials: [], description: { ...exampleDescription, protocol } });
    const line = (session: SessionResult) =>
      sheetTexts(firstPage(sheetOf(session))).filter((text) => text.startsWith("Missing in the protocol"));
    expect(line(planned)).toEqual([
      "Missing in the protocol “Two-leg jumps before running”: Four valid countermovement jumps.",
    ]);
    expect(line(exampleSession())).toEqual([]);
  });

  test("says what was tested before the protocol of the session has it, practice jumps too, and who added a test", () => {
    const running = shippedProtocol("return-to-running");
    const before = shippedProtocol("pre-operative");
    const [entry] = before?.mayAdd ?? [];
    if (running === undefined || before === undefined || entry === undefined) throw new Error("Both ship.");
    const tested = (protocol: Protocol) =>
      sheetTexts(firstPage(sheetOf(exampleSession({ description: { ...exampleDescription, protocol } }))));
    const single = exampleSession().trials.filter((trial) => trial.limb === "left" || trial.limb === "right").length;
    expect(single).toBeGreaterThan(0);
    expect(tested(running)).toContain(
      `Single-leg countermovement jump is not done at this stage (landing on one leg comes after running), and ${single} were recorded.`,
    );
    expect(tested(withTestAdded(before, entry, "Ida Lund"))).toContain(
      "Single-leg countermovement jump with the uninvolved leg was added to the protocol by Ida Lund.",
    );
  });

  test("lists practice jumps beside the attempts, uncounted, and uses them for nothing", () => {
    const [first, ...rest] = exampleSession().trials.filter((trial) => trial.limb === "both");
    if (first === undefined) throw new Error("The example has two-leg jumps.");
    const sheet = sheetOf(exampleSession({ trials: [{ ...first, practice: true }, ...rest] }));
    const all = tableRows(sheet, "Countermovement jump, two legs: every attempt");
    expect(all[0]?.[0]).toBe("–");
    expect(all[0]?.at(-1)).toBe("practice jump");
    expect(all[1]?.[0]).toBe("1");
    expect(sheetTexts(firstPage(sheet)).some((text) => text.includes("1 practice jump not counted"))).toBe(true);
  });

  test("counts criteria that lack the same, where naming each again would hide what else is missing", () => {
    const undecided = exampleSession().criteria.map((each) => ({
      ...each,
      status: "too-close-to-call" as const,
      moreTrials: "More trials today cannot settle this.",
    }));
    const open = sheetTexts(firstPage(sheetOf(exampleSession({ criteria: undecided }))));
    expect(open).toContain("Each of the 4 criteria that are too close to call: More trials today cannot settle this.");
    const unmeasured = undecided.map((each) => ({ ...each, status: "not-measured" as const, moreTrials: "" }));
    const missing = sheetTexts(firstPage(sheetOf(exampleSession({ criteria: unmeasured }))));
    expect(missing).toContain("Not measured today: 4 of the 4 criteria above.");
  });

  test("of a stopped session says so, withholds every status once and why", () => {
    const sheet = sheetOf(stoppedSession());
    const caution = sheet.blocks.find((block) => block.kind === "paragraph" && block.tone === "caution");
    expect(caution?.kind === "paragraph" && caution.text).toBe(
      "Statuses are withheld today. The session was stopped: Pain 5 of 10 in the single-leg trials. Pain 5 of 10 is above the limit, the program's default (3; 2 for single-leg and drop tests). Effusion 1+ is above the limit, the program's default (trace). What was measured is on the following pages.",
    );
    const rows = tableRows(sheet, "Criteria as they stand today");
    expect(rows.map((row) => row.slice(0, 2))).toEqual([["All 4 criteria of the set", "withheld today"]]);
  });

  test("names what nobody stated instead of leaving it out", () => {
    const texts = sheetTexts(firstPage(sheetOf(nothing)));
    for (const text of [
      "Athlete: not stated",
      "Involved side: not stated",
      "Date of the session not stated",
      "Body mass: not measured",
      "The knee itself: pain not recorded; effusion not recorded",
      "Cautions: no record that they were asked",
      "No recording was found.",
      "The involved side is not stated.",
      "The involved side is not stated, so no criterion is held against the session.",
    ]) {
      expect(texts).toContain(text);
    }
  });

  test("gives the body mass that one weighing with a hand on a rail does not move", () => {
    const mass = (kg: number) => ({
      measures: [{ id: "bodyMass", side: "both", value: kg, unit: "kg", uncertainty: 0.02 } as const],
    });
    // By hand: the mean of the four would be 67.4 kg.
    const trials = [68, 65.7, 68, 68].map((kg, at) => exampleTrial(`${at}.csv`, "both", 0.24, mass(kg)));
    const texts = sheetTexts(firstPage(sheetOf(exampleSession({ trials }))));
    expect(texts.find((each) => each.startsWith("Body mass"))).toMatch(/: 68\.0\skg, on the plates$/);
  });

  test.each(["unproved", "contradicted"] as const)(
    "says beside two-leg values whose plates are %s that it is so",
    (plates) => {
      const comparison = exampleComparison("brakingImpulse", "both", [93], [109], { plates, basis: "plates" });
      const texts = sheetTexts(sheetOf(exampleSession({ comparisons: [comparison] })));
      const proved = exampleComparison("brakingImpulse", "both", [93], [109], { plates: "proved" });
      const said = comparison.intervalNote;
      expect(texts.filter((each) => each.includes(said))).toHaveLength(1);
      expect(sheetTexts(sheetOf(exampleSession({ comparisons: [proved] }))).join(" ")).not.toContain(said);
    },
  );

  test("says when the sides of the plates are unproved or contradicted", () => {
    const plates = [
      { name: "1", limb: "left", proof: "unproved" },
      { name: "2", limb: "right", proof: "stated" },
    ] as const;
    const told = (feet: "unproved" | "contradicted") => [exampleTrial("a.csv", "both", 0.3, { plates, feet })];
    const trials = told("unproved");
    const comparisons = [exampleComparison("brakingImpulse", "both", [93], [109], { plates: "unproved" })];
    const unproved = sheetTexts(firstPage(sheetOf(exampleSession({ trials, comparisons }))));
    expect(unproved).toContain(
      "Which foot stood on which plate is not proved, so two-leg jumps are told by plate and have no index.",
    );
    expect(unproved.some((text) => text.startsWith("Proof of which foot stood on which plate:"))).toBe(true);
    const contradicted = exampleSession({
      trials: told("contradicted"),
      comparisons: [exampleComparison("brakingImpulse", "both", [93], [109], { plates: "contradicted" })],
    });
    expect(sheetTexts(firstPage(sheetOf(contradicted))).join("\n")).toContain(
      "Single-leg trials contradict which foot",
    );
  });
});

describe("the pages of numbers", () => {
  const twoLegs = "Countermovement jump, two legs: limbs compared within each jump";
  const singleLeg = "Countermovement jump, single-leg: trials of one limb against trials of the other";

  test("put both values, index, interval and status of a comparison on one line", () => {
    // By hand from the example: means 93.1 and 109.47 N·s, index 85.05 %, interval ± 2 %.
    expect(tableRows(sheetOf(exampleSession()), twoLegs)[0]).toEqual([
      `${english.measures.fullLabel("brakingImpulse")} N·s`,
      "93.1",
      "109.5",
      "85\u00a0%",
      "83 to 87",
      "not met",
    ]);
  });

  test("draw threshold and both intervals, in the involved limb's colour only where a limb is involved", () => {
    const lineOf = (session: SessionResult) => {
      const table = sheetOf(session).blocks.find((block) => block.kind === "table" && block.caption === singleLeg);
      return table?.kind === "table" ? table.rows[0]?.line : undefined;
    };
    const [comparison] = exampleComparisons;
    expect(lineOf(exampleSession())).toEqual({
      index: comparison?.index,
      thick: { low: comparison?.intervals[0]?.low, high: comparison?.intervals[0]?.high },
      thin: { low: comparison?.intervals[1]?.low, high: comparison?.intervals[1]?.high },
      threshold: 90,
      limb: "involved",
    });
    const healthy = lineOf(healthySession());
    expect(healthy).toBeDefined();
    expect(healthy).not.toHaveProperty("limb");
    expect(healthy).not.toHaveProperty("threshold");
    expect(lineOf(bothInvolvedSession())).toBeUndefined();
  });

  test("never name or colour a side as involved where nobody or both are injured", () => {
    for (const session of [healthySession(), bothInvolvedSession()]) {
      const tables = sheetOf(session).blocks.filter((block) => block.kind === "table");
      const limbs = tables.flatMap((table) => [
        ...table.columns.map((column) => column.limb),
        ...table.rows.flatMap((row) => row.cells.map((cell) => cell.limb)),
      ]);
      expect(limbs).toContain("left");
      expect(limbs.filter((limb) => limb === "involved" || limb === "uninvolved")).toEqual([]);
      expect(tables.flatMap((table) => table.columns.map((column) => column.text)).join()).not.toContain("involved");
    }
  });

  test("give values only, no index and no line, where both knees are involved", () => {
    expect(tableRows(sheetOf(bothInvolvedSession()), singleLeg)).toEqual([
      ["Jump height, by impulse cm", "14.0", "11.7"],
    ]);
  });

  test("give times as a difference with a true minus", () => {
    const { index: _index, ...rest } = exampleComparison("timeToTakeoff", "single", [0.72], [0.78], {
      unit: "s",
      intervals: [],
      role: "information",
    });
    const session = exampleSession({ comparisons: [{ ...rest, difference: -0.06 }] });
    expect(tableRows(sheetOf(session), singleLeg)[0]?.slice(3)).toEqual(["\u22120.060\u00a0s", "", "right minus left"]);
  });

  test("name the weaker side in words where nobody is injured", () => {
    // By hand: left over right is above 100 % in the example, so the right is the lower one.
    expect(tableRows(sheetOf(healthySession()), singleLeg)[0]?.[5]).toBe("right");
    expect(sheetTexts(sheetOf(healthySession()))).toContain("Jump height, by impulse: The right is weaker.");
  });

  test("say why an interval is missing or not what it usually is", () => {
    const note = "One trial a side: the interval holds measurement uncertainty only, not the spread between trials.";
    const comparison = exampleComparison("jumpHeightImpulse", "single", [0.115], [0.142], {
      intervalFrom: "measurement uncertainty",
      intervalNote: note,
    });
    expect(sheetTexts(sheetOf(exampleSession({ comparisons: [comparison] })))).toContain(note);
    const open = exampleComparison("jumpHeightImpulse", "single", [0.115], [0.142], {
      intervals: [],
      intervalNote: "Interval unbounded at 80 % and 95 %.",
    });
    const sheet = sheetOf(exampleSession({ comparisons: [open] }));
    expect(sheetTexts(sheet)).toContain("Interval unbounded at 80 % and 95 %.");
    expect(tableRows(sheet, singleLeg)[0]?.[4]).toBe("unbounded");
  });

  test("show an index just short of its threshold with the digits that tell it apart", () => {
    const comparison = exampleComparison("jumpHeightImpulse", "single", [0.1392], [0.155]);
    // By hand: 100 × 0.1392 / 0.155 = 89.806 %.
    expect(tableRows(sheetOf(exampleSession({ comparisons: [comparison] })), singleLeg)[0]?.[3]).toBe("89.8\u00a0%");
  });

  test("set values beside earlier ones with their date and today's part of them", () => {
    // By hand: 11.7 of 15.0 cm is 78 %, 14.0 of 15.6 cm 90 %.
    expect(tableRows(sheetOf(exampleSession()), "Values beside earlier ones")).toEqual([
      [
        "Jump height, by impulse, single-leg cm",
        "11.7",
        "14.0",
        "15.0 today 78\u00a0%",
        "15.6 today 90\u00a0%",
        "pre-injury, 20 August 2025",
      ],
    ]);
    // By hand: 93.1 and 109.47 N·s over 68.6 kg.
    expect(tableRows(sheetOf(exampleSession()), "Values per kilogram of body mass")[0]).toEqual([
      `${english.measures.fullLabel("brakingImpulse")}, two legs N·s/kg`,
      "1.36",
      "1.60",
    ]);
  });

  test("list every attempt with its uncertainty and whether it counts", () => {
    expect(tableRows(sheetOf(exampleSession()), "Countermovement jump, two legs: every attempt")).toEqual([
      ["1", "two-leg-1.csv", "26.1 ± 0.2", "0.73 ± 0.03", "used"],
      ["2", "two-leg-2.csv", "26.6 ± 0.2", "0.73 ± 0.03", "used; event moved by hand"],
      ["3", "two-leg-3.csv", "25.2 ± 0.2", "0.73 ± 0.03", "excluded: step before the dip"],
      ["4", "two-leg-4.csv", "26.9 ± 0.2", "0.73 ± 0.03", "used; some measures could not be made"],
    ]);
    const single = tableRows(sheetOf(exampleSession()), "Countermovement jump, single-leg: every attempt");
    expect(single.map((row) => `${row[2]} ${row[0]} ${row[5]}`)).toContain("right 2 used; not looked at yet");
    expect(tableRows(sheetOf(exampleSession()), "Recordings that could not be analysed")).toEqual([
      ["two-leg-5.csv", "Not analysed. The force never leaves the plate, so there is no jump to measure."],
    ]);
  });

  test("use the trials that count for the values of both legs together", () => {
    const caption = "Countermovement jump, two legs: both legs together";
    // By hand: 26.1, 26.6 and 26.9 cm; the excluded 25.2 cm is not in them. Mean 26.53, median 26.6.
    expect(tableRows(sheetOf(exampleSession()), caption)[0]).toEqual([
      "Jump height, by impulse cm",
      "26.5",
      "26.1",
      "26.9",
      "3",
    ]);
    const median = buildSheet(exampleSession(), settingsWith({ trialStatistic: "median" }));
    expect(tableRows(median, caption)[0]?.[1]).toBe("26.6");
    const best = buildSheet(exampleSession(), settingsWith({ trialStatistic: "best" }));
    expect(tableRows(best, caption)[0]).toEqual(["Jump height, by impulse cm", "26.1", "26.9", "3"]);
  });

  test("say every finding in words, with its place and what to do, equal ones once", () => {
    const finding = exampleSession().trials[3]?.findings ?? [];
    const trials = ["a.csv", "b.csv"].map((file) => exampleTrial(file, "both", 0.3, { findings: finding }));
    const texts = sheetTexts(sheetOf(exampleSession({ trials })));
    expect(texts).toContain(
      "a.csv, 3.7 s to 4.0 s, b.csv, 3.7 s to 4.0 s: Quiet standing after landing lasts 0.3\u00a0s, so landing measures are missing. Record two seconds of standing still after landing.",
    );
  });

  test("tell trials of one file apart by their number", () => {
    const trials = [1, 2].map((trial) => exampleTrial("a.csv", "both", 0.3, { trial }));
    const rows = tableRows(
      sheetOf(exampleSession({ trials })),
      "Countermovement jump, two legs: every attempt, all used",
    );
    expect(rows.map((row) => row[1])).toEqual(["a.csv, trial 1", "a.csv, trial 2"]);
  });

  test("say of every attempt by itself what became of it where they differ", () => {
    const rows = tableRows(sheetOf(exampleSession()), "Countermovement jump, two legs: every attempt");
    expect(new Set(rows.map((row) => row.at(-1))).size).toBeGreaterThan(1);
  });

  test("never break a unit behind its slash, and leave other slashes alone", () => {
    const trials = [exampleTrial("left/right N/A.csv", "both", 0.3, { test: "dropJump" })];
    const { blocks } = sheetOf(exampleSession({ trials }));
    const all = JSON.stringify(blocks);
    expect(all).toContain("Reactive strength index, m/\u2060s");
    expect(all).toContain("N·s/\u2060kg");
    expect(all).toContain("9.80665 m/\u2060s²");
    expect(all).not.toMatch(/[mNWs]\/(?:s|kg)(?!\p{L})/u);
    expect(all).toContain("left/right N/A.csv");
  });
});

describe("simulated recordings", () => {
  test("are said to be so, real ones are not", () => {
    expect(sheetOf(exampleSession()).banner).toContain("Simulated");
    const real = { ...exampleDescription, simulated: false };
    expect(sheetOf(exampleSession({ description: real })).banner).toBe("");
  });
});
