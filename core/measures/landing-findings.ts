import { type Finding, finding } from "../finding.ts";
import type { Settings } from "../settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { absentMeasures } from "./absent-measures.ts";
import { measureCatalogue } from "./catalogue.ts";
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

/** What is to be said about the landing, and which measures it cost. */
export function landingFindings(
  context: MeasureContext,
  cut: JumpCut,
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
      finding(
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
  if (events.landingEnd === undefined) {
    const lasts = ((cut.span.end - 1 - events.touchdown) / rateHz).toFixed(2);
    return [
      finding(
        "landing-short",
        "warning",
        `The recording ends ${lasts} s after touchdown, before the landing is over.`,
        "Keep recording for two seconds of quiet standing after the landing.",
        { where: secondsOf(events.touchdown), removes: absent(landingMeasures) },
      ),
    ];
  }
  const findings: Finding[] = [];
  const missing = absent(["loadingRate"]);
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
  const stabilisation = absent(["timeToStabilisation"]);
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
