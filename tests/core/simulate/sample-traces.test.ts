import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { demoSessions } from "../../../build/sample-traces/demo-world.ts";
import { describeDoubtful, makeDoubtfulFiles } from "../../../build/sample-traces/doubtful.ts";
import { recordDropJumps } from "../../../build/sample-traces/record-drop-jumps.ts";
import { recordSession } from "../../../build/sample-traces/record-session.ts";
import { makeSampleFiles } from "../../../build/sample-traces/sample-files.ts";
import { analyzeSession } from "../../../core/analyze.ts";
import { sha256Hex } from "../../../core/ground/sha256.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { PerLimb } from "../../../core/simulate/truth.ts";
import { parseSessionFile } from "../../../core/stated/session-file.ts";

const folder = fileURLToPath(new URL("../../../sample-traces/", import.meta.url));
const made = makeSampleFiles();
const encoder = new TextEncoder();

function analyzeFolder(name: string) {
  const description = parseSessionFile(encoder.encode(made.get(`${name}/session.json`) ?? ""));
  expect(description.findings).toEqual([]);
  const files = [...made]
    .filter(([path]) => path.startsWith(`${name}/`) && path.endsWith(".csv"))
    .map(([path, text]) => ({ path: path.slice(name.length + 1), bytes: encoder.encode(text) }))
    .map((file) => ({ ...file, sha256: sha256Hex(file.bytes) }));
  const { result } = analyzeSession(
    {
      folder: name,
      files,
      unreadable: [],
      description: description.description,
      descriptionFindings: [],
      stated: {},
    },
    defaultSettings,
  );
  return result;
}

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

describe("sample traces", () => {
  it("in the repository are byte for byte what the script makes, and nothing else is there", () => {
    const there = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => `${entry.parentPath}/${entry.name}`.replaceAll("\\", "/").replace("//", "/"))
      .map((path) => path.slice(folder.length))
      .sort();
    expect(there).toEqual([...made.keys()].sort());
    for (const [path, text] of made) {
      if (readFileSync(folder + path, "utf8") !== text) throw new Error(`${path} differs from what the script makes`);
    }
  });

  it("stay under 26 MB", () => {
    expect([...made.values()].reduce((sum, text) => sum + encoder.encode(text).length, 0)).toBeLessThan(26e6);
  });

  it("say that they are simulated, in the README and in every session", () => {
    expect(made.get("README.md")).toContain("Everything here is simulated.");
    const sessions = [...made].filter(([path]) => path.endsWith("session.json"));
    expect(sessions).toHaveLength(demoSessions.length + 1);
    for (const [, text] of sessions) expect(JSON.parse(text)).toMatchObject({ simulated: true });
  });

  it.each(demoSessions)(
    "$folder has exactly the mean heights, times, depths and limb shares of the demo world",
    (session) => {
      const trials = recordSession(session);
      const involved = session.description.involved === "right" ? "right" : "left";
      const truths = (limb: string) => trials.filter((each) => each.limb === limb).map((each) => each.jump.truth);
      const two = truths("both");
      const { twoLegs, oneLeg } = session;
      expect(two).toHaveLength(4);
      expect(mean(two.map((truth) => 100 * truth.jumpHeightMetres))).toBeCloseTo(twoLegs.heightCm, 9);
      expect(mean(two.map((truth) => truth.timeToTakeoffSeconds))).toBeCloseTo(twoLegs.seconds, 9);
      // Sway at the lowest position moves the true depth by up to a millimetre a trial.
      expect(Math.abs(mean(two.map((truth) => 100 * truth.depthMetres)) - twoLegs.depthCm)).toBeLessThan(0.1);
      const share = (values: PerLimb): number => values[involved] / (values.left + values.right);
      const wanted = (index: number): number => index / (100 + index);
      const shares = (of: (truth: (typeof two)[number]) => PerLimb): number =>
        mean(two.map((truth) => share(of(truth))));
      expect(shares((truth) => truth.phases.braking.grossImpulse)).toBeCloseTo(wanted(twoLegs.braking), 9);
      expect(shares((truth) => truth.phases.propulsion.grossImpulse)).toBeCloseTo(wanted(twoLegs.propulsion), 9);
      expect(shares((truth) => truth.phases.landing.peakForce)).toBeCloseTo(wanted(twoLegs.landingPeak), 6);
      for (const limb of ["left", "right"] as const) {
        const single = truths(limb);
        expect(single).toHaveLength(oneLeg === undefined ? 0 : 4);
        if (oneLeg === undefined) continue;
        expect(mean(single.map((truth) => 100 * truth.jumpHeightMetres))).toBeCloseTo(oneLeg[limb].heightCm, 9);
      }
    },
  );

  it.each(demoSessions.filter((session) => session.drops !== undefined))(
    "$folder has the mean drop-jump heights, contact times and reactive strength indices of the demo world",
    (session) => {
      const drops = recordDropJumps(session);
      expect(drops).toHaveLength(12);
      for (const limb of ["both", "left", "right"] as const) {
        const wanted = session.drops?.[limb];
        if (wanted === undefined) throw new Error("this session has drop jumps");
        const truths = drops.filter((each) => each.limb === limb).map((each) => each.jump.truth);
        expect(truths).toHaveLength(4);
        const height = mean(truths.map((truth) => 100 * truth.jumpHeightFlightTimeMetres));
        const contact = mean(truths.map((truth) => truth.contactSeconds));
        // To the last digit of the table.
        expect(height.toFixed(1)).toBe(wanted.heightCm.toFixed(1));
        expect(contact.toFixed(3)).toBe(wanted.contactSeconds.toFixed(3));
        expect(mean(truths.map((truth) => truth.reactiveStrengthIndex))).toBeCloseTo(
          wanted.heightCm / 100 / wanted.contactSeconds,
          9,
        );
        const effective = mean(truths.map((truth) => truth.dropHeightEffectiveMetres));
        expect(effective).toBeCloseTo(wanted.dropHeightEffectiveMetres ?? (limb === "both" ? 0.27 : 0.17), 9);
      }
    },
  );

  it("lead off the box with the left and the right leg in turn, and that leg lands first", () => {
    for (const session of demoSessions) {
      const both = recordDropJumps(session).filter((each) => each.limb === "both");
      if (session.drops !== undefined) {
        expect(both.map((each) => each.leadingLeg)).toEqual(["left", "right", "left", "right"]);
      }
      for (const { leadingLeg, jump } of both) {
        const { left, right } = jump.truth.limbEvents;
        expect((left?.touchdown ?? 0) < (right?.touchdown ?? 0)).toBe(leadingLeg === "left");
      }
    }
  });

  it("spread the single-leg reactive strength index by 8 % within a session", () => {
    const [session] = demoSessions;
    if (session === undefined) throw new Error("there are sessions");
    const indices = recordDropJumps(session)
      .filter((each) => each.limb === "left")
      .map((each) => each.jump.truth.reactiveStrengthIndex);
    const deviation = Math.sqrt(indices.reduce((sum, each) => sum + (each - mean(indices)) ** 2, 0) / 3);
    // Height and contact are drawn to make 8 % to first order; their ratio differs from that by a few tenths.
    expect(Math.abs(deviation / mean(indices) - 0.08)).toBeLessThan(0.005);
  });

  it("spread within a session by 3 % of height with two legs and 5 % with one", () => {
    const trials = recordSession(demoSessions[0]!);
    for (const [limb, wanted] of [
      ["both", 0.03],
      ["left", 0.05],
      ["right", 0.05],
    ] as const) {
      const heights = trials.filter((each) => each.limb === limb).map((each) => each.jump.truth.jumpHeightMetres);
      const middle = mean(heights);
      const deviation = Math.sqrt(heights.reduce((sum, each) => sum + (each - middle) ** 2, 0) / 3);
      expect(deviation / middle).toBeCloseTo(wanted, 9);
    }
  });

  it("involved single-leg pushes peak at 1.5 to 1.9 body weights after a minimum of 0.55 to 0.8", () => {
    for (const session of demoSessions) {
      const { involved } = session.description;
      if (involved !== "left" && involved !== "right") continue;
      if (session.description.milestone === "pre-injury") continue;
      for (const { limb, jump } of recordSession(session)) {
        if (limb !== involved) continue;
        const { bodyWeightNewtons, events, phases } = jump.truth;
        const least = Math.min(
          ...Array.from({ length: 900 }, (_, index) =>
            jump.forceAt(events.firstMovement + ((events.lowestPosition - events.firstMovement) * index) / 900),
          ),
        );
        const peak = Math.max(phases.braking.peakForce.both, phases.propulsion.peakForce.both) / bodyWeightNewtons;
        expect(least / bodyWeightNewtons).toBeGreaterThan(0.55);
        expect(least / bodyWeightNewtons).toBeLessThan(0.8);
        expect(peak).toBeGreaterThan(1.5);
        expect(peak).toBeLessThan(1.9);
      }
    }
  });
});

/** Trials of the demo world that bring a finding because of what the athlete did: contacts above 0.25 s, a low drop. */
const findingsOfAthletes: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    [1, 2, 3, 4].flatMap((trial) => [
      [`maren-tveitlund/4-month-7/drop-jump-both-${trial}.csv`, "slow-contact"],
      [`maren-tveitlund/4-month-7/drop-jump-right-${trial}.csv`, "drop-height-off"],
    ]),
  ),
  "jonas-ekre/1-month-6/drop-jump-both-4.csv": "slow-contact",
};

describe("what the analysis makes of the sample traces", () => {
  it.each(demoSessions.filter((session) => session.facedWrongWay !== true))(
    "$folder is analysed without a finding but those the athlete brought",
    ({ folder: name }) => {
      const result = analyzeFolder(name);
      expect(result.findings).toEqual([]);
      for (const trial of result.trials) {
        expect(`${trial.file}: ${trial.status} ${trial.findings.map((each) => each.code).join(" ")}`).toBe(
          `${trial.file}: analysed ${findingsOfAthletes[`${name}/${trial.file}`] ?? ""}`,
        );
      }
    },
  );

  it.each(demoSessions.filter((session) => session.drops !== undefined))(
    "$folder: the measured means of the drop jumps are those of the demo world",
    (session) => {
      const result = analyzeFolder(session.folder);
      for (const limb of ["both", "left", "right"] as const) {
        const wanted = session.drops?.[limb];
        if (wanted === undefined) throw new Error("this session has drop jumps");
        const trials = result.trials.filter((trial) => trial.test === "dropJump" && trial.limb === limb);
        expect(trials).toHaveLength(4);
        const measured = (id: string): number =>
          mean(
            trials.map(
              (trial) => trial.measures.find((each) => each.id === id && each.side === limb)?.value ?? Number.NaN,
            ),
          );
        // Noise and sway move the mean of four trials by a few tenths of a per cent.
        expect(Math.abs(measured("contactTime") / wanted.contactSeconds - 1)).toBeLessThan(0.004);
        expect(Math.abs(measured("jumpHeightFlightTime") / (wanted.heightCm / 100) - 1)).toBeLessThan(0.006);
        expect(
          Math.abs((measured("reactiveStrengthIndex") * wanted.contactSeconds) / (wanted.heightCm / 100) - 1),
        ).toBeLessThan(0.006);
      }
    },
  );

  it("the session that faced the wrong way contradicts its plates and weighs one trial low", () => {
    const result = analyzeFolder("maren-tveitlund/3-month-5-5");
    // A hand on a rail carried 3.4 %: standing after the jump tells the weight, so that nobody else is suspected.
    expect(result.findings.map((each) => each.code)).toEqual(["plates-contradict"]);
    const differing = result.trials.filter((trial) =>
      trial.findings.some((each) => each.code === "held-while-weighed"),
    );
    expect(differing.map((trial) => trial.file)).toEqual(["countermovement-both-3.csv"]);
    expect(result.gate.open).toBe(false);
  });

  it("each doubtful file brings exactly the one finding it was made for", () => {
    const result = analyzeFolder("doubtful");
    const doubtful = makeDoubtfulFiles();
    expect(result.findings).toEqual([]);
    expect(describeDoubtful(doubtful).files).toHaveLength(doubtful.length);
    const found = result.trials.map(
      (trial) => `${trial.file}: ${trial.findings.map((each) => `${each.code} ${each.severity}`).join(", ")}`,
    );
    expect(found).toEqual(doubtful.map((each) => `${each.file}: ${each.code} ${each.severity}`).sort());
  });
});
