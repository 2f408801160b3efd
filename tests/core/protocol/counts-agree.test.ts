import { describe, expect, test } from "vitest";
import type { InvolvedSide, Limb } from "../../../core/ground/limb.ts";
import { startsFromBox } from "../../../core/ground/test-kind.ts";
import { countsFor } from "../../../core/protocol/counting.ts";
import { belongsTo, protocolProgress } from "../../../core/protocol/protocol-progress.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { sameBoxHeight } from "../../../core/sides/box-height.ts";
import type { Comparison } from "../../../core/sides/comparison.ts";
import { limbsOf } from "../../../core/stated/protocol.ts";
import type { Protocol, ProtocolTest } from "../../../core/stated/protocol-schema.ts";
import { uniform } from "../sides/random-numbers.ts";
import { makeSession, makeTrial, type TrialChanges } from "./make-session.ts";

const sessions = 400;

const shipped = (id: string): Protocol => {
  const protocol = shippedProtocol(id);
  if (protocol === undefined) throw new RangeError(`No protocol ${id} ships.`);
  return protocol;
};

/** As written before leading legs, practice and landings were part of a protocol. */
const asWrittenBefore = (protocol: Protocol): Protocol => ({
  ...protocol,
  tests: protocol.tests.map(({ perLeadingLeg: _leads, practice: _practice, ...entry }) => entry),
});

const protocols = [
  shipped("return-to-pivoting-sport"),
  asWrittenBefore(shipped("return-to-pivoting-sport")),
  shipped("return-to-running"),
];

/** A session of sound and flawed trials; how often something is wrong differs from session to session. */
function drawSession(seed: number): { readonly session: SessionResult; readonly protocol: Protocol } {
  const next = uniform(seed);
  const pick = <Value>(values: readonly Value[]): Value => values[Math.floor(next() * values.length)]!;
  const flawed = pick([0, 0.03, 0.15, 0.4]);
  const isFlawed = () => next() < flawed;
  const protocol = pick(protocols);
  const involved = pick<InvolvedSide | undefined>(["left", "right", "left", "right", "none", "both", undefined]);
  const loaded = new Map<string, string>();
  const trials = protocol.tests.flatMap((entry) =>
    limbsOf(entry, involved).flatMap((limb) => {
      const count = pick([0, 2, 3, 4, 4, 4, 5, 6]);
      return Array.from({ length: count }, (_, at) => {
        const trial = withoutAMeasure(
          makeTrial({
            value: (limb === involved ? 0.912 : 1) * (0.98 + 0.04 * next()),
            ...drawTrial(entry, limb, at, pick, isFlawed),
          }),
          isFlawed,
          pick,
        );
        // Single-leg trials on two plates say which foot stood where; one in the wrong place contradicts what was stated.
        if (limb === "both" || next() < 0.5) return trial;
        const plate = isFlawed() ? pick(["left", "right"]) : limb;
        loaded.set(trial.file, plate);
        const plates = (["left", "right"] as const).map((name) => ({ name, limb: name, proof: "stated" as const }));
        return { ...trial, plates };
      });
    }),
  );
  return { session: makeSession(trials, { protocol, ...(involved && { involved }) }, loaded), protocol };
}

function drawTrial(
  { test: kind, dropHeightMetres }: ProtocolTest,
  limb: Limb,
  at: number,
  pick: <Value>(values: readonly Value[]) => Value,
  isFlawed: () => boolean,
): TrialChanges {
  const box = isFlawed() ? pick([undefined, undefined, 0.45]) : dropHeightMetres;
  const lead = isFlawed()
    ? pick([undefined, "left" as const])
    : pick([at % 2 === 0, at % 2 === 0, true])
      ? "left"
      : "right";
  return {
    test: kind,
    limb,
    ...(startsFromBox(kind) && box !== undefined && { dropHeightMetres: box }),
    ...(startsFromBox(kind) && limb === "both" && lead !== undefined && { leadingLeg: lead }),
    ...(isFlawed() && { plateProof: pick(["unproved" as const, "one plate" as const]) }),
    ...(isFlawed() && { status: "refused" as const }),
    ...(isFlawed() && { excluded: { reason: "stumbled" } }),
    ...(isFlawed() && { practice: true as const }),
    ...(isFlawed() && { held: { reason: "the weight differs" } }),
  };
}

/** Some trials miss a measure on every side, as a spoiled landing or a short standing leaves them. */
function withoutAMeasure(
  trial: TrialResult,
  isFlawed: () => boolean,
  pick: <Value>(values: readonly Value[]) => Value,
): TrialResult {
  if (!isFlawed() || trial.measures.length === 0) return trial;
  const { id } = pick(trial.measures);
  return { ...trial, status: "partial", measures: trial.measures.filter((each) => each.id !== id) };
}

function comparisonsOf(entry: ProtocolTest, { comparisons }: SessionResult): readonly Comparison[] {
  return comparisons.filter(
    (each) =>
      each.role === "criterion" &&
      each.test === entry.test &&
      each.legs === entry.legs &&
      (entry.dropHeightMetres === undefined || sameBoxHeight(each.dropHeightMetres, entry.dropHeightMetres)),
  );
}

/** What a comparison holds of a trial: the value of its side, or of the left in two-leg trials. */
function valueIn(comparison: Comparison, trial: TrialResult): boolean {
  const side = trial.limb === "both" ? "left" : trial.limb;
  const summary = [comparison.first, comparison.second].find((each) => each.side === side);
  const value = trial.measures.find((each) => each.id === comparison.measure && each.side === side)?.value;
  return value !== undefined && summary?.values.includes(value) === true;
}

describe("what progress counts and what the comparison of sides uses", () => {
  const drawn = Array.from({ length: sessions }, (_, seed) => drawSession(2 * seed + 1));

  test("agree: every trial that counts for a test of the protocol is in each comparison the test is for", () => {
    let counted = 0;
    for (const { session, protocol } of drawn) {
      if (session.description.involved === undefined) continue;
      for (const entry of protocol.tests) {
        const comparisons = comparisonsOf(entry, session);
        for (const trial of session.trials.filter((each) => belongsTo(each, entry, protocol))) {
          if (!countsFor(trial, session.trials, entry.dropHeightMetres).counts) continue;
          if (trial.limb === "both" && trial.plates.length === 1) continue;
          counted += 1;
          expect(comparisons.length).toBeGreaterThan(0);
          for (const each of comparisons) expect(valueIn(each, trial), `${trial.file} in ${each.measure}`).toBe(true);
        }
      }
    }
    expect(counted).toBeGreaterThan(1000);
  });

  test("agree: progress never counts more trials of a leg than a comparison of the test uses", () => {
    for (const { session, protocol } of drawn) {
      if (session.description.involved === undefined) continue;
      for (const { entry, limbs } of protocolProgress(protocol, session).tests) {
        for (const comparison of comparisonsOf(entry, session)) {
          for (const { limb, valid } of limbs) {
            const side = limb === "both" ? comparison.first.side : limb;
            const { values } = comparison.first.side === side ? comparison.first : comparison.second;
            expect(valid).toBeLessThanOrEqual(values.length);
          }
        }
      }
    }
  });

  test("agree: a protocol that is finished with every test complete leaves no symmetry criterion unmeasured", () => {
    let complete = 0;
    for (const { session, protocol } of drawn) {
      const { involved } = session.description;
      if (involved !== "left" && involved !== "right") continue;
      for (const { entry, limbs, obstacle } of protocolProgress(protocol, session).tests) {
        if (obstacle !== "" || !limbs.every(({ state }) => state === "complete")) continue;
        if (entry.legs === "both" && session.trials.some((each) => isOnOnePlate(each, entry))) continue;
        complete += 1;
        const own = session.criteria.filter(
          ({ criterion }) =>
            criterion.kind === "symmetry" && criterion.test === entry.test && criterion.legs === entry.legs,
        );
        expect(own.length).toBeGreaterThan(0);
        for (const { criterion, status, reason } of own)
          expect(status, `${criterion.id}: ${reason}`).not.toBe("not-measured");
      }
    }
    expect(complete).toBeGreaterThan(100);
  });

  test("agree: what is practice, held, excluded or refused is in no comparison, and counts for nothing", () => {
    for (const { session } of drawn) {
      const out = session.trials.filter(
        (each) =>
          each.practice === true || each.held !== undefined || each.excluded !== undefined || each.status === "refused",
      );
      for (const trial of out) {
        expect(countsFor(trial, session.trials)).toMatchObject({ counts: false, waitsFor: [] });
        for (const each of session.comparisons) expect(each.test === trial.test && valueIn(each, trial)).toBe(false);
      }
    }
  });

  test("agree: no criterion asks for more trials than the protocol of the session still allows", () => {
    let suggested = 0;
    for (const { session, protocol } of drawn) {
      for (const { criterion, moreTrials } of session.criteria.filter((each) =>
        /^(One|Two) more/.test(each.moreTrials),
      )) {
        suggested += 1;
        const asked = moreTrials.startsWith("One") ? 1 : 2;
        const entry = protocol.tests.find((each) => each.test === criterion.test && each.legs === criterion.legs);
        expect(entry).toBeDefined();
        for (const limb of limbsOf(entry!, session.description.involved)) {
          if (!moreTrials.includes("a side") && limb !== "both" && !moreTrials.includes(limb)) continue;
          const made = session.trials.filter(
            (each) => each.limb === limb && belongsTo(each, entry!, protocol) && each.practice !== true,
          ).length;
          expect(made + asked).toBeLessThanOrEqual(entry!.mostAttempts);
        }
      }
    }
    expect(suggested).toBeGreaterThan(4);
  });
});

function isOnOnePlate(trial: TrialResult, entry: ProtocolTest): boolean {
  return trial.test === entry.test && trial.limb === "both" && trial.plates.length === 1;
}

test("A setting of the comparison is what the agreement rests on: as many trials are wanted as a criterion needs", () => {
  for (const { tests } of protocols) {
    for (const { trials } of tests) expect(trials).toBeGreaterThanOrEqual(defaultSettings.minimumTrialsPerSide);
  }
});
