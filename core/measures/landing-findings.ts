import { knowsVelocity } from "../events/kinematics.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { Place } from "../ground/place.ts";
import type { Settings } from "../settings/settings.ts";
import type { ClippedSpan } from "../trial/clipping.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { absentMeasures } from "./absent-measures.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

const flightMeasures: readonly MeasureId[] = [
  "flightTime",
  "jumpHeightFlightTime",
  "reactiveStrengthIndex",
  "dropHeightByFlightTime",
  "dropHeightDifference",
];
const landingMeasures = measureCatalogue
  .filter((entry) => entry.group === "landing" && entry.id !== "limbTouchdownDifference")
  .map((entry) => entry.id);

/**
 * What is to be said about the landing, and which measures it cost.
 * @param clipped stretches in which a plate's range was exceeded
 */
export function landingFindings(
  context: MeasureContext,
  cut: JumpCut,
  clipped: readonly ClippedSpan[],
  expected: readonly MeasureId[],
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const { events, motion, hops } = context.jump;
  const { rateHz } = motion.signal;
  if (hops !== undefined) return [];
  const absent = (wanted: readonly MeasureId[]): readonly MeasureId[] => absentMeasures(wanted, expected, measures);
  const placeOf = (sample: number): Place => ({ at: "time", seconds: sample / rateHz, decimals: 2 });
  if (events.touchdown === undefined) {
    const takeoff = events.takeoff ?? cut.flight.start;
    return [
      finding(
        "landing-off-plate/no-landing",
        "warning",
        { takeoffSeconds: takeoff / rateHz },
        {
          place: placeOf(takeoff),
          removes: absent([...flightMeasures, ...landingMeasures, "limbTouchdownDifference"]),
        },
      ),
    ];
  }
  // Without velocity the landing has no end; what withholds the velocity says so.
  if (!knowsVelocity(motion)) return [];
  if (events.landingEnd === undefined) {
    const seconds = (cut.span.end - 1 - events.touchdown) / rateHz;
    const stoodStill = cut.quietAfter.end > cut.quietAfter.start;
    const cutShort = !stoodStill && seconds < settings.stabilisationNeedsSeconds;
    const { touchdown } = events;
    const optional = { place: placeOf(touchdown), removes: absent(landingMeasures) };
    if (clipped.some(({ span }) => span.end > touchdown && span.start < cut.span.end)) {
      return [finding("event-not-found/clipped-landing", "warning", {}, optional)];
    }
    return cutShort
      ? [finding("landing-short/cut-short", "warning", { seconds }, optional)]
      : [finding("event-not-found/landing-end", "warning", {}, optional)];
  }
  const findings: Finding[] = [];
  const missing = absent(["loadingRate"]);
  if (missing.length > 0) {
    findings.push(finding("no-first-peak", "note", {}, { place: placeOf(events.touchdown), removes: missing }));
  }
  const stabilisation = absent(["timeToStabilisation"]);
  if (stabilisation.length > 0) {
    const seconds = (cut.span.end - 1 - events.touchdown) / rateHz;
    const neededSeconds = settings.stabilisationNeedsSeconds;
    const optional = { place: placeOf(events.touchdown), removes: stabilisation };
    findings.push(
      seconds < neededSeconds
        ? finding("landing-short/stabilisation", "note", { seconds, neededSeconds }, optional)
        : finding("landing-restless", "note", {}, optional),
    );
  }
  return findings;
}
