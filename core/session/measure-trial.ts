import { detectTrial } from "../events/detect-trial.ts";
import type { DetectionInput, LimbSignal, Undetected } from "../events/detection.ts";
import type { TrialEvent } from "../events/event.ts";
import { hopLimbEvents } from "../events/hop-limb-events.ts";
import { inputUncertainties } from "../events/input-uncertainties.ts";
import type { JumpMotion } from "../events/jump-events.ts";
import { publishEvents } from "../events/publish-events.ts";
import { plateNoise, type WeightEstimate } from "../events/weigh.ts";
import type { Finding } from "../ground/finding.ts";
import { testFacts } from "../ground/test-kind.ts";
import { hopLimbTimes } from "../measures/hop-limb-times.ts";
import { bestHops, type Hop, hopsOf } from "../measures/hops.ts";
import { measureJump } from "../measures/measure-jump.ts";
import type { MeasureContext } from "../measures/raw-measure.ts";
import type { HopResult, WeightUsed } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import type { TrialDraft } from "./trial-draft.ts";
import { type SaidOfTrial, trialFindings } from "./trial-findings.ts";
import { type UnknownMotion, unknownMotion } from "./unknown-motion.ts";

/** A draft of which everything is there that events and measures need. */
export type CompleteDraft = Required<Pick<TrialDraft, "prepared" | "cut" | "test" | "limb">> & {
  readonly draft: TrialDraft;
  /** What is said of it where something about its motion is unknown. */
  readonly trial: UnknownMotion;
};

/** What force, weight and velocity make of a trial. */
export interface MeasuredDraft {
  readonly jump: JumpMotion;
  readonly events: readonly TrialEvent[];
  readonly said: SaidOfTrial;
  readonly hops: readonly HopResult[];
}

/**
 * Events, measures and what must be said about them. Contact and flight need no weight.
 * @param cause why weight and velocity are left out though something told them
 */
export function measureTrial(
  { draft, prepared, cut, test, limb, trial }: CompleteDraft,
  used: WeightUsed | undefined,
  cause: Finding | undefined,
  settings: Settings,
): MeasuredDraft | Undetected {
  const { rateHz } = prepared.recording;
  // Events, with what a person has moved.
  const known = used ?? unknownWeight;
  const limbs = limbSignals(draft);
  const still = stillWindow(draft);
  const input: DetectionInput = {
    test,
    total: prepared.total,
    limbs,
    cut,
    weight: {
      newtons: known.newtons,
      deviation: draft.weighing?.deviation ?? 0,
      ...(still === undefined ? {} : { still: still.window }),
    },
    edits: draft.edits,
    settings,
  };
  const jump = detectTrial(input);
  if ("missing" in jump) return jump;

  // Measures, each with its uncertainty.
  const quiet = (draft.still ?? draft.weighing)?.window;
  const noise = (force: Float64Array): number => (quiet === undefined ? 0 : plateNoise(force, quiet));
  const hops = hopsOf(jump, settings);
  const usedHops = bestHops(hops, limb, settings);
  const context: MeasureContext = {
    jump,
    limb,
    limbs: limbs.map((signal) => ({
      signal,
      noiseNewtons: noise(signal.force),
      zeroNewtons: prepared.zeroUncertainties[prepared.forces.indexOf(signal.force)] ?? 0,
    })),
    noiseNewtons: noise(prepared.total.force),
    zeroNewtons: Math.hypot(...prepared.zeroUncertainties),
    ...(jump.hops === undefined ? {} : { usedHops }),
  };
  const uncertainties = inputUncertainties(known, draft.balance, still, jump.anchor, draft.edits, rateHz, settings);
  const all = measureJump(context, uncertainties, settings);

  // What must be said about them.
  const measured = { draft, prepared, cut, context, measures: all, otherFoot: otherFoot(draft) };
  const unknown = cause ?? draft.heldBefore ?? unknownMotion(trial, jump);
  const said = trialFindings({ ...measured, unknown }, settings);
  const events = [
    ...publishEvents(jump, draft.edits, context.noiseNewtons, uncertainties, settings),
    ...hopLimbEvents(jump, input, uncertainties, settings),
  ];
  return { jump, events, said, hops: hops.map((hop) => hopResult(hop, usedHops, events)) };
}

/** Where nothing tells the weight: whatever rests on it comes out as no number, and is left out. */
const unknownWeight: WeightEstimate = { newtons: Number.NaN, uncertainty: Number.NaN };

/** A hop with what the bout and each limb on its own plate make of it. */
function hopResult(hop: Hop, used: readonly number[], events: readonly TrialEvent[]): HopResult {
  const limbs = hopLimbTimes(events, hop.contactIndex);
  return { ...hop, used: used.includes(hop.contactIndex), ...(limbs.length === 0 ? {} : { limbs }) };
}

/**
 * Quiet standing that gives the velocity. None after a jump whose landing exceeded the plate's range: force is missing
 * between the flight and that standing.
 */
function stillWindow({ test, prepared, cut, still }: TrialDraft): TrialDraft["still"] {
  if (still === undefined || cut === undefined || (test !== undefined && testFacts(test).flights !== "one"))
    return still;
  const clipped = prepared?.clipped.some(({ span }) => span.start >= cut.flight.end && span.end <= still.window.start);
  return clipped === true ? undefined : still;
}

/** Left and right on their own plates, in two-leg trials only. */
export function limbSignals(draft: TrialDraft): readonly LimbSignal[] {
  const { prepared, limb } = draft;
  if (prepared === undefined || limb !== "both") return [];
  const { plates, rateHz } = prepared.recording;
  const signals = plates.flatMap((plate, index) =>
    plate.limb === "both" ? [] : [{ side: plate.limb, rateHz, force: prepared.forces[index]! }],
  );
  return signals.length === 2 ? signals : [];
}

/** Force of the plate that does not carry a single-leg trial; undefined on one plate. */
function otherFoot(draft: TrialDraft): Float64Array | undefined {
  const { prepared, loadedPlate } = draft;
  if (prepared === undefined || loadedPlate === undefined) return undefined;
  const index = prepared.recording.plates.findIndex((plate) => plate.name !== loadedPlate);
  return prepared.forces[index];
}
