import { percentDigits } from "../ground/format-number.ts";
import type { Side } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import type { ComparableTrial } from "./comparable-trial.ts";
import { covariance, mean } from "./trial-statistic.ts";

/** Measures whose status rests on one of the two heights of single-leg trials. */
const restingOnHeight: ReadonlySet<string> = new Set([
  "jumpHeightImpulse",
  "jumpHeightFlightTime",
  "reactiveStrengthIndex",
]);

/**
 * Why a symmetry that rests on single-leg height is not decided: the index by impulse and the index by flight time of
 * the same trials contradict each other beyond their joint uncertainty (METHODS §8). In it: the trials' own scatter or
 * measurement uncertainty, whichever is larger, and that the legs may land in different postures, which flight time
 * takes for height.
 * @returns a sentence; undefined where they agree or one of them is missing
 */
export function heightContradiction(
  measure: MeasureId,
  trials: readonly ComparableTrial[],
  firstSide: Side,
  settings: Settings,
): string | undefined {
  if (!restingOnHeight.has(measure)) return undefined;
  const first = heightsOf(trials, firstSide);
  const second = heightsOf(trials, firstSide === "left" ? "right" : "left");
  if (first === undefined || second === undefined) return undefined;
  const apart = first.logRatio - second.logRatio;
  const posture = settings.landingPostureMetres / (first.height + second.height);
  const joint = Math.sqrt(first.variance + second.variance + posture ** 2);
  if (!(Math.abs(apart) > settings.heightIndicesSd * joint)) return undefined;
  const index = (of: "impulse" | "flight"): string => percentDigits((100 * first[of]) / second[of]);
  return `By impulse the index of height is ${index("impulse")} %, by flight time ${index("flight")} % in the same trials: they are ${percentDigits(100 * Math.abs(Math.expm1(apart)))} % apart, more than both together leave open (± ${percentDigits(100 * joint)} %), so neither decides. Look at the weighings and landings of these trials.`;
}

interface SideHeights {
  /** Mean of ln(height by impulse / height by flight time), with the variance of that mean. */
  readonly logRatio: number;
  readonly variance: number;
  /** Mean heights, metres. */
  readonly impulse: number;
  readonly flight: number;
  readonly height: number;
}

function heightsOf(trials: readonly ComparableTrial[], side: Side): SideHeights | undefined {
  const pairs = trials
    .filter((trial) => trial.limb === side && !trial.excluded)
    .flatMap(({ measures }) => {
      const [impulse, flight] = ["jumpHeightImpulse", "jumpHeightFlightTime"].map((id) =>
        measures.find((each) => each.id === id && each.side === side),
      );
      if (impulse === undefined || flight === undefined || !(impulse.value > 0) || !(flight.value > 0)) return [];
      return [{ impulse, flight }];
    });
  if (pairs.length === 0) return undefined;
  const ratios = pairs.map(({ impulse, flight }) => Math.log(impulse.value / flight.value));
  const measured = mean(
    pairs.map(
      ({ impulse, flight }) =>
        ((impulse.uncertainty ?? 0) / impulse.value) ** 2 + ((flight.uncertainty ?? 0) / flight.value) ** 2,
    ),
  );
  const scattered = pairs.length < 2 ? 0 : covariance(ratios, ratios);
  const [impulse, flight] = [
    mean(pairs.map((each) => each.impulse.value)),
    mean(pairs.map((each) => each.flight.value)),
  ];
  return {
    logRatio: mean(ratios),
    variance: Math.max(measured, scattered) / pairs.length,
    impulse,
    flight,
    height: (impulse + flight) / 2,
  };
}
