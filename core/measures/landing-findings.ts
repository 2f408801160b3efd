import { knowsVelocity } from "../events/kinematics.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import type { ClippedSpan } from "../trial/clipping.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { absentMeasures } from "./absent-measures.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

const flightMeasures = [
  "flightTime",
  "jumpHeightFlightTime",
  "reactiveStrengthIndex",
  "dropHeightByFlightTime",
  "dropHeightDifference",
];
const landingMeasures = measureCatalogue
  .filter((entry) => entry.group === "landing" && entry.id !== "limbTouchdownDifference")
  .map((entry) => entry.id);

/** Why a landing has no end, by cause: code, sentence, what to do. */
const endNotFound = {
  clipped: [
    "event-not-found",
    "Force beyond the plate's range is missing from the landing, so velocity does not return to zero after touchdown and the landing has no end.",
    "Widen the measuring range of the plate, then record again.",
  ],
  cutShort: (seconds: number) =>
    [
      "landing-short",
      `The recording ends ${seconds.toFixed(2)} s after touchdown, before the landing is over.`,
      "Keep recording for two seconds of quiet standing after the landing.",
    ] as const,
  unexplained: [
    "event-not-found",
    "Velocity does not return to zero after touchdown although the recording goes on, so the landing has no end.",
    "Look at the weight and at the events of this trial.",
  ],
} as const;

/**
 * What is to be said about the landing, and which measures it cost.
 * @param clipped stretches in which a plate's range was exceeded
 */
export function landingFindings(
  context: MeasureContext,
  cut: JumpCut,
  clipped: readonly ClippedSpan[],
  expected: readonly string[],
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const { events, motion, hops } = context.jump;
  const { rateHz } = motion.signal;
  if (hops !== undefined) return [];
  const absent = (wanted: readonly string[]): readonly string[] => absentMeasures(wanted, expected, measures);
  const secondsOf = (sample: number): string => `${(sample / rateHz).toFixed(2)} s`;
  if (events.touchdown === undefined) {
    return [
      proseFinding(
        "landing-off-plate",
        "warning",
        `No landing on the plate follows the take-off at ${secondsOf(events.takeoff ?? cut.flight.start)}.`,
        "Repeat the jump with a landing on the plate if flight time or landing are wanted.",
        {
          where: secondsOf(events.takeoff ?? cut.flight.start),
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
    const [code, message, action] = clipped.some(({ span }) => span.end > touchdown && span.start < cut.span.end)
      ? endNotFound.clipped
      : cutShort
        ? endNotFound.cutShort(seconds)
        : endNotFound.unexplained;
    const optional = { where: secondsOf(touchdown), removes: absent(landingMeasures) };
    return [proseFinding(code, "warning", message, action, optional)];
  }
  const findings: Finding[] = [];
  const missing = absent(["loadingRate"]);
  if (missing.length > 0) {
    findings.push(
      proseFinding(
        "no-first-peak",
        "note",
        "The landing has no first peak of at least body weight, so it has no loading rate.",
        "Nothing needs to be done.",
        { where: secondsOf(events.touchdown), removes: missing },
      ),
    );
  }
  const stabilisation = absent(["timeToStabilisation"]);
  if (stabilisation.length > 0) {
    const lasts = (cut.span.end - 1 - events.touchdown) / rateHz;
    const tooShort = lasts < settings.stabilisationNeedsSeconds;
    findings.push(
      proseFinding(
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
