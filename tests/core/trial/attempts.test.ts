import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { brokenOffMovements } from "../../../core/trial/broken-off.ts";
import type { CutInput } from "../../../core/trial/cut-input.ts";
import { cutLandings } from "../../../core/trial/cut-landings.ts";
import { cutJumps } from "../../../core/trial/cut-trials.ts";
import { prepareRecording } from "../../../core/trial/prepare-recording.ts";
import { flightBeyondPeople, recogniseTest } from "../../../core/trial/recognise-test.ts";
import { segmentLoad } from "../../../core/trial/segment-load.ts";
import { testContradictions } from "../../../core/trial/test-contradictions.ts";
import { english } from "../../../core/words/english.ts";
import { stretches } from "./standing.ts";

// Forces of stretches joined by steps, built by hand at 1000 Hz: what must be cut follows from what was put in.
const rateHz = 1000;
const weight = 700;
type Parts = readonly (readonly [seconds: number, newtons: number])[];
const settings = defaultSettings;

const stand: Parts = [[2, weight]];
const countermovement: Parts = [
  [0.3, 350],
  [0.3, 1500],
  [0.45, 0],
  [0.3, 1600],
];
const squat: Parts = [
  [0.4, 1300],
  [0.4, 0],
  [0.3, 1600],
];
const drop: Parts = [
  [1.5, 0],
  [0.22, 2500],
  [0.5, 0],
  [0.3, 1700],
];
const landing: Parts = [
  [1.5, 0],
  [0.3, 2100],
];
const hop: Parts = [
  [0.2, 2600],
  [0.4, 0],
];
/** Stepping off: the other foot takes the load over, with a last push that exceeds body weight. */
const stepOff: Parts = [
  [0.1, 900],
  [0.5, 300],
  [2, 0],
];

function inputOf(parts: Parts): CutInput {
  const total = stretches(parts);
  return { total, rateHz, segments: segmentLoad(total, rateHz, settings), settings };
}

function recognised(parts: Parts) {
  const total = stretches(parts);
  const plates = [{ name: "force", limb: "both", proof: "stated", force: total } as const];
  const recording = { rateHz, sampleCount: total.length, timeOriginSeconds: 0, plates };
  const prepared = prepareRecording(recording, settings);
  return [...prepared.jumps, ...prepared.landings].map((cut) => ({ cut, ...recogniseTest(prepared, cut, settings) }));
}

describe("a drop jump", () => {
  const [cut, ...others] = cutJumps(inputOf([...drop, ...stand]));
  test("is one attempt that starts from a fall: no more than 1.2 s of the empty plate belong to it", () => {
    expect(others).toEqual([]);
    expect(cut?.kind).toBe("drop");
    expect(cut?.contact).toEqual({ start: 1500, end: 1720 });
    expect(cut?.fall).toEqual({ start: 300, end: 1500 });
    expect(cut?.flight).toEqual({ start: 1720, end: 2220 });
    expect(cut?.quietBefore).toEqual([]);
    expect(cut!.quietAfter.end - cut!.quietAfter.start).toBeGreaterThan(1800);
  });

  test("keeps standing earlier in the recording apart: the athlete left the plate in between", () => {
    const [later] = cutJumps(inputOf([...stand, ...stepOff, ...drop, ...stand]));
    expect(later?.kind).toBe("drop");
    expect(later?.quietBefore).toEqual([]);
    expect(later?.quietEarlier).toHaveLength(1);
  });

  test("is none where the athlete stood on the plate, whatever the label says", () => {
    const [standing] = recognised([...stand, ...countermovement, ...stand]);
    const findings = testContradictions("dropJump", standing!.cut, standing!, settings);
    expect(findings.map((each) => [each.code, each.severity])).toEqual([["test-contradicts", "refusal"]]);
  });

  test("is none where a contact of more than a second follows the empty plate", () => {
    const [walked] = cutJumps(inputOf([[1.5, 0], [1.1, 900], ...countermovement, ...stand]));
    expect(walked?.kind).toBe("standing");
  });
});

describe("long recordings", () => {
  test("hold jump, jump and drop jump as three trials; stepping on and off are none", () => {
    const parts = [[1, 0], ...stand, ...countermovement, ...stand, ...countermovement, ...stand, ...stepOff] as const;
    const cuts = cutJumps(inputOf([...parts, ...drop, ...stand, ...stepOff]));
    expect(cuts.map((cut) => cut.kind)).toEqual(["standing", "standing", "drop"]);
  });

  test("join no standing to a landing that the athlete walked away from", () => {
    const away: Parts = [...drop, [0.4, 500], [1.5, 0], [0.4, 600], ...stand];
    const [cut] = cutJumps(inputOf(away));
    expect(cut!.quietAfter.end - cut!.quietAfter.start).toBe(0);
  });

  test("hold three drop landings as three trials, and stepping onto the plate as none", () => {
    const cuts = cutLandings(
      inputOf([...landing, ...stand, ...stepOff, ...landing, ...stand, ...stepOff, ...landing, ...stand]),
    );
    expect(cuts.map((cut) => cut.kind)).toEqual(["landing", "landing", "landing"]);
    expect(cutLandings(inputOf([[1, 0], [0.2, 800], ...stand]))).toEqual([]);
  });

  test("count a plate that is left without an upward push as stepping off, even after 1.2 body weights and more", () => {
    expect(cutJumps(inputOf([...stand, ...stepOff]))).toEqual([]);
    // The same push with a landing beside the plate: momentum is upwards, so it is a jump.
    expect(cutJumps(inputOf([...stand, [0.3, 350], [0.3, 1500], [3, 0]]))).toHaveLength(1);
  });
});

describe("a movement that never leaves the plate", () => {
  test("is broken off where force dips and rises by a fifth of body weight", () => {
    const input = inputOf([...stand, [0.3, 450], [0.3, 950], ...stand]);
    expect(cutJumps(input)).toEqual([]);
    const [span, ...more] = brokenOffMovements(input);
    expect(more).toEqual([]);
    // Quiet standing is cut short by the running mean and the set-back, 60 ms at most.
    expect(Math.abs(span!.start - 2000)).toBeLessThanOrEqual(60);
    expect(Math.abs(span!.end - 2600)).toBeLessThanOrEqual(60);
  });

  test("is a weight shift below that", () => {
    expect(brokenOffMovements(inputOf([...stand, [0.3, 600], [0.3, 800], ...stand]))).toEqual([]);
  });
});

describe("the test read from the trace alone", () => {
  const cases: readonly (readonly [string, Parts, RegExp])[] = [
    ["countermovementJump", [...stand, ...countermovement, ...stand], /^standing on the plate, a dip to 5\d %/],
    ["squatJump", [...stand, ...squat, ...stand], /^standing on the plate, no dip before the push, flight 0\.40 s$/],
    ["dropJump", [...drop, ...stand], /^empty plate, contact 0\.22 s, flight 0\.50 s$/],
    ["dropLanding", [...landing, ...stand], /^empty plate, an impact, no flight after it$/],
    [
      "repeatedHops",
      [...stand, ...countermovement.slice(0, 3), ...hop, ...hop, ...hop, [0.3, 1600], ...stand],
      /^standing on the plate, 4 flights without standing between$/,
    ],
  ];
  test.each(cases)("is a %s, with its reason", (kind, parts, reason) => {
    const all = recognised(parts);
    expect(all.map((each) => each.test)).toEqual([kind]);
    expect(english.recognition(all[0]!)).toMatch(reason);
  });

  test.each(cases)("is not contradicted by the label %s", (kind, parts) => {
    const [own] = recognised(parts);
    expect(testContradictions(kind as "dropJump", own!.cut, own!, settings)).toEqual([]);
  });

  // Flight of 1.0 s is the ceiling of the settings: 9.80665 · 1.0² / 8 = 1.23 m.
  test.each<readonly [string, Parts, RegExp | undefined]>([
    ["a drop with a flight of 1.00 s", [[1.5, 0], [0.22, 2400], [1, 0], [0.3, 1600], ...stand], undefined],
    ["a drop with a flight of 1.02 s", [[1.5, 0], [0.22, 2400], [1.02, 0], [0.3, 1600], ...stand], /1\.0 s .*1\.23 m/],
    [
      "a contact after which the plate is empty for 1.5 s",
      [[1.5, 0], [0.22, 2400], [1.5, 0], [0.3, 600], ...stand],
      /1\.0 s .*1\.23 m/,
    ],
    ["a jump from standing that lands beside the plate", [...stand, [0.3, 350], [0.3, 1500], [3, 0]], undefined],
  ])("of %s is offered only where people fly so long", (_what, parts, reason) => {
    const [cut] = cutJumps(inputOf(parts));
    const said = flightBeyondPeople(cut!, rateHz, settings);
    if (reason === undefined) expect(said).toBeUndefined();
    else expect(said && english.recognition(said)).toMatch(reason);
  });

  test("refuses a label that the trace cannot be", () => {
    const [fell] = recognised([...drop, ...stand]);
    const [landed] = recognised([...landing, ...stand]);
    const [stood] = recognised([...stand, ...countermovement, ...stand]);
    const [held] = recognised([...stand, ...squat, ...stand]);
    const refused = [
      ["countermovementJump", fell],
      ["squatJump", fell],
      ["dropLanding", fell],
      ["repeatedHops", fell],
      ["dropJump", landed],
      ["repeatedHops", landed],
      ["repeatedHops", stood],
      ["dropLanding", stood],
      ["countermovementJump", held],
    ] as const;
    for (const [kind, seen] of refused) {
      const findings = testContradictions(kind, seen!.cut, seen!, settings);
      expect(findings.map((each) => each.severity)).toEqual(["refusal"]);
    }
  });
});
