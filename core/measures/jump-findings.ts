import { velocityAt } from "../events/kinematics.ts";
import { type Finding, finding } from "../finding.ts";
import type { Limb } from "../limb.ts";
import type { Settings } from "../settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { integrateForce } from "../trial/force-signal.ts";
import { measureCatalogue } from "./catalogue.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

const flightMeasures = ["flightTime", "jumpHeightFlightTime"];
const landingMeasures = measureCatalogue
  .filter((entry) => entry.group === "landing" && entry.id !== "limbTouchdownDifference")
  .map((entry) => entry.id);

/** Identifiers of `wanted` that are not among the measures. */
function absent(wanted: readonly string[], measures: readonly Measure[]): readonly string[] {
  return wanted.filter((id) => !measures.some((measure) => measure.id === id));
}

/** What is to be said about the landing, and which measures it cost. */
export function landingFindings(
  context: MeasureContext,
  cut: JumpCut,
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const { events, motion } = context.jump;
  const { rateHz } = motion.signal;
  const twoPlates = context.limbs.length === 2 ? ["limbTouchdownDifference"] : [];
  const secondsOf = (sample: number): string => `${(sample / rateHz).toFixed(2)} s`;
  if (events.touchdown === undefined) {
    return [
      finding(
        "landing-off-plate",
        "warning",
        `No landing on the plate follows the take-off at ${secondsOf(events.takeoff)}.`,
        "Repeat the jump with a landing on the plate if flight time or landing are wanted.",
        {
          where: secondsOf(events.takeoff),
          removes: absent([...flightMeasures, ...landingMeasures, ...twoPlates], measures),
        },
      ),
    ];
  }
  if (events.landingEnd === undefined) {
    const lasts = ((cut.span.end - 1 - events.touchdown) / rateHz).toFixed(2);
    return [
      finding(
        "landing-short",
        "warning",
        `The recording ends ${lasts} s after touchdown, before the landing is over.`,
        "Keep recording for two seconds of quiet standing after the landing.",
        { where: secondsOf(events.touchdown), removes: absent(landingMeasures, measures) },
      ),
    ];
  }
  const findings: Finding[] = [];
  const missing = absent(["loadingRate"], measures);
  if (missing.length > 0) {
    findings.push(
      finding(
        "no-first-peak",
        "note",
        "The landing has no first peak of at least body weight, so it has no loading rate.",
        "Nothing needs to be done.",
        { where: secondsOf(events.touchdown), removes: missing },
      ),
    );
  }
  const stabilisation = absent(["timeToStabilisation"], measures);
  if (stabilisation.length > 0) {
    const lasts = (cut.span.end - 1 - events.touchdown) / rateHz;
    const tooShort = lasts < settings.stabilisationNeedsSeconds;
    findings.push(
      finding(
        tooShort ? "landing-short" : "landing-restless",
        "note",
        tooShort
          ? `The recording ends ${lasts.toFixed(1)} s after touchdown; a time to stabilisation needs ${settings.stabilisationNeedsSeconds} s.`
          : "Force never stays within 5 % of body weight for a second after the landing, so there is no time to stabilisation.",
        tooShort ? "Keep recording longer if this measure is wanted." : "Look at the standing after the landing.",
        { where: secondsOf(events.touchdown), removes: stabilisation },
      ),
    );
  }
  return findings;
}

/** Compares the two heights, and impulses summed from force with momentum from velocity. */
export function consistencyFindings(
  context: MeasureContext,
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const findings: Finding[] = [];
  const measured = (id: string): number | undefined => measures.find((measure) => measure.id === id)?.value;
  const byImpulse = measured("jumpHeightImpulse");
  const byFlight = measured("jumpHeightFlightTime");
  if (byImpulse !== undefined && byFlight !== undefined) {
    const difference = byFlight / byImpulse - 1;
    if (Math.abs(difference) > settings.heightsDifferFraction) {
      findings.push(
        finding(
          "heights-differ",
          "warning",
          `Jump height is ${(100 * byImpulse).toFixed(1)} cm by impulse and ${(100 * byFlight).toFixed(1)} cm by flight time.`,
          "Look at the quiet standing (weight) and at how the athlete landed (bent legs lengthen the flight).",
        ),
      );
    }
  }
  const error = selfCheckError(context);
  if (error > settings.selfCheckFraction) {
    findings.push(
      finding(
        "self-check-broken",
        "warning",
        `Impulses summed from force differ from mass times velocity change by ${error.toExponential(1)} of the push.`,
        "Please report this recording: it shows a mistake in the program.",
      ),
    );
  }
  return findings;
}

/** Largest disagreement of directly summed net impulses with m·Δv, as a part of the impulse at take-off. */
function selfCheckError(context: MeasureContext): number {
  const { motion, events } = context.jump;
  const massKg = motion.weightNewtons / motion.gravity;
  const marks = [events.onset, events.endOfUnweighting, events.lowestPosition, events.takeoff];
  const scale = massKg * Math.abs(velocityAt(motion, events.takeoff));
  let worst = 0;
  for (let index = 1; index < marks.length; index += 1) {
    const from = marks[index - 1]!;
    const to = marks[index]!;
    const direct =
      integrateForce(motion.signal, from, to) - (motion.weightNewtons * (to - from)) / motion.signal.rateHz;
    const byVelocity = massKg * (velocityAt(motion, to) - velocityAt(motion, from));
    worst = Math.max(worst, Math.abs(direct - byVelocity) / scale);
  }
  return worst;
}

/** Flights that follow the landing without quiet standing: a bounce, or further jumps. */
export function laterFlightFindings(cut: JumpCut, rateHz: number): readonly Finding[] {
  const own = cut.flight.end - cut.flight.start;
  return cut.laterFlights.map((flight) => {
    const seconds = ((flight.end - flight.start) / rateHz).toFixed(2);
    const where = `${(flight.start / rateHz).toFixed(2)} s`;
    const bounce = flight.end - flight.start < bounceFraction * own;
    return bounce
      ? finding(
          "bounce-after-landing",
          "note",
          `The athlete leaves the plate again for ${seconds} s after the landing; this is taken as a bounce, not a jump.`,
          "Nothing needs to be done unless the landing is of interest.",
          { where },
        )
      : finding(
          "several-flights",
          "warning",
          `A second flight of ${seconds} s follows without quiet standing in between; the first one was analysed.`,
          "Check that this is one jump; record jumps apart, with quiet standing between them.",
          { where },
        );
  });
}

/** A flight shorter than this part of the first is a bounce. */
const bounceFraction = 0.6;

/** What disturbs a single-leg trial: the other foot on its plate, a swing of the free leg. */
export function singleLegFindings(
  context: MeasureContext,
  otherFoot: Float64Array | undefined,
  settings: Settings,
): readonly Finding[] {
  const limb: Limb = context.limb;
  if (limb === "both") return [];
  const { events, motion } = context.jump;
  const { rateHz, force } = motion.signal;
  const findings: Finding[] = [];
  const from = Math.floor(events.onset);
  const to = Math.ceil(events.takeoff);
  const touching = otherFoot === undefined ? 0 : samplesAbove(otherFoot, from, to, settings.otherFootNewtons);
  if (touching >= settings.otherFootSeconds * rateHz && otherFoot !== undefined) {
    let most = 0;
    for (let index = from; index < to; index += 1) most = Math.max(most, otherFoot[index]!);
    findings.push(
      finding(
        "other-foot-touching",
        "warning",
        `The other foot carried up to ${most.toFixed(0)} N for ${(touching / rateHz).toFixed(2)} s before take-off.`,
        "Exclude the trial, or repeat it with the other foot off the plate.",
        { where: `${(from / rateHz).toFixed(2)} s to ${(to / rateHz).toFixed(2)} s` },
      ),
    );
  }
  const dips = countDips(
    force,
    motion.startSample,
    Math.floor(events.endOfUnweighting),
    motion.weightNewtons,
    settings,
  );
  if (dips > 1) {
    findings.push(
      finding(
        "leg-swing",
        "warning",
        `Force dips ${dips} times before the push: the free leg was swung, or the athlete started twice.`,
        "Exclude the trial, or repeat it with the free leg still.",
      ),
    );
  }
  return findings;
}

function samplesAbove(force: Float64Array, from: number, to: number, newtons: number): number {
  let count = 0;
  for (let index = from; index < to; index += 1) if (force[index]! > newtons) count += 1;
  return count;
}

function countDips(force: Float64Array, from: number, to: number, weight: number, settings: Settings): number {
  const deep = weight * (1 - settings.legSwingWeightFraction);
  let count = 0;
  let inside = false;
  for (let index = from; index <= to; index += 1) {
    if (!inside && force[index]! < deep) {
      inside = true;
      count += 1;
    } else if (inside && force[index]! > weight) inside = false;
  }
  return count;
}
