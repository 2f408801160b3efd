import type { Limb, Side } from "../../../core/ground/limb.ts";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import type { Measure } from "../../../core/measures/measure.ts";
import type { PlateProof } from "../../../core/recording/recording.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { concludeSession } from "../../../core/session/conclude-session.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { comparableMeasures } from "../../../core/sides/comparable-measures.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { weighSession } from "../../../core/weight/session-weighing.ts";
import { notKnown } from "../gate/gates.ts";
import { makeMeasure } from "../sides/make-trials.ts";

/** What a made trial may be told; the rest is that of a sound trial. */
export type TrialChanges = Partial<Omit<TrialResult, "measures">> & {
  /** Every value of the trial lies about it; each trial of a test has its own, so that values tell trials apart. */
  readonly value?: number;
  /** How it is known which foot stood on which of two plates; "one plate": both legs on one. */
  readonly plateProof?: PlateProof | "one plate";
};

let made = 0;

/** A trial as the analysis would give it, with every measure its comparisons need. */
export function makeTrial({ value = 1 + made * 1e-4, plateProof = "stated", ...changes }: TrialChanges): TrialResult {
  const { test = "dropJump", limb = "left", status = "analysed" } = changes;
  const onTwo = limb === "both" && plateProof !== "one plate";
  made += 1;
  return {
    file: `trial-${made}.csv`,
    sha256: made.toString(16).padStart(64, "0"),
    trial: 1,
    test,
    limb,
    plates: onTwo
      ? (["left", "right"] as const).map((side) => ({ name: side, limb: side, proof: plateProof as PlateProof }))
      : [{ name: "plate", limb: "both", proof: "stated" }],
    span: { start: 0, end: 4000 },
    events: [],
    measures: status === "refused" ? [] : measuresOf(test, limb, onTwo, value),
    findings: [],
    seen: false,
    edits: [],
    ...changes,
    status,
  };
}

export function makeTrials(count: number, changes: TrialChanges): readonly TrialResult[] {
  return Array.from({ length: count }, () => makeTrial(changes));
}

function measuresOf(test: TestKind, limb: Limb, onTwo: boolean, value: number): readonly Measure[] {
  const legs = limb === "both" ? "both" : "single";
  const compared = comparableMeasures.filter((each) => each.legs === legs && each.tests.includes(test));
  const whole = [
    "jumpHeightImpulse",
    "jumpHeightFlightTime",
    "reactiveStrengthIndex",
    "reactiveStrengthIndexBestFive",
  ] as const;
  const sides: readonly Side[] = ["left", "right"];
  return [
    ...(legs === "single"
      ? compared.map(({ measure }) => makeMeasure(measure, limb, value))
      : ([...whole, "peakLandingForce"] as const).map((id) => makeMeasure(id, "both", value))),
    ...(onTwo
      ? compared.flatMap(({ measure }) =>
          sides.map((side) => makeMeasure(measure, side, side === "left" ? value : 1.02 * value)),
        )
      : []),
    ...(test === "dropJump" && legs === "single" ? [makeMeasure("dropHeightEffective", limb, 0.2)] : []),
  ];
}

/**
 * A session of made trials, concluded as every session is: plates proved, sides compared, criteria evaluated.
 * @param loadedPlates the plate that bore a single-leg trial, by file: it says which foot stood there
 */
export function makeSession(
  trials: readonly TrialResult[],
  description: SessionDescription = {},
  loadedPlates: ReadonlyMap<string, string> = new Map(),
): SessionResult {
  return concludeSession(
    {
      folder: "",
      description: { involved: "left", ...notKnown, ...description },
      stated: {},
      descriptionFindings: [],
    },
    {
      analyzed: trials.map((result) => {
        const loadedPlate = loadedPlates.get(result.file);
        return { result, evidence: { limbFromPlates: false, ...(loadedPlate !== undefined && { loadedPlate }) } };
      }),
      weighing: weighSession([], undefined, defaultSettings),
      unreadable: [],
      repeated: [],
    },
    defaultSettings,
  );
}
