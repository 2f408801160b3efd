import { type Finding, finding } from "../finding.ts";
import type { BodyMass } from "../recording/body-mass.ts";
import type { Settings } from "../settings.ts";
import type { WeightEstimate } from "./weigh.ts";

/** Body weight of an athlete over a session. */
export interface SessionWeight {
  readonly newtons: number;
  /** Standard uncertainty, newtons. */
  readonly uncertainty: number;
  readonly trials: number;
}

/**
 * Pools the weighings of a session (METHODS §2): the mean, weighted by 1/u², of those that agree with their median
 * within the session tolerance. One hand on a rail does not move it.
 * @returns undefined with fewer than two weighings.
 */
export function poolWeights(weighings: readonly WeightEstimate[], settings: Settings): SessionWeight | undefined {
  if (weighings.length < 2) return undefined;
  const sorted = weighings.map((each) => each.newtons).sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const median = sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
  const agreeing = weighings.filter(
    (each) => Math.abs(each.newtons - median) <= settings.weightToleranceSession * median,
  );
  if (agreeing.length < 2) return undefined;
  let weights = 0;
  let sum = 0;
  for (const each of agreeing) {
    const weight = 1 / each.uncertainty ** 2;
    weights += weight;
    sum += weight * each.newtons;
  }
  const newtons = sum / weights;
  const uncertainty = Math.hypot(1 / Math.sqrt(weights), settings.weighingFloorFraction * newtons);
  return { newtons, uncertainty, trials: agreeing.length };
}

/** What is said about the athlete's mass outside the force. */
interface SaidMasses {
  readonly enteredMassKg?: number;
  readonly header?: BodyMass;
}

/** Says where a trial's own weighing disagrees with the session's, or with an entered mass or the header's. */
export function compareWeights(
  own: WeightEstimate,
  session: SessionWeight | undefined,
  { enteredMassKg, header }: SaidMasses,
  settings: Settings,
): readonly Finding[] {
  const findings: Finding[] = [];
  const massKg = own.newtons / settings.gravity;
  if (session !== undefined) {
    const difference = own.newtons / session.newtons - 1;
    if (Math.abs(difference) > settings.weightToleranceSession) {
      findings.push(
        finding(
          "weight-differs",
          "warning",
          `This trial weighs the athlete at ${massKg.toFixed(1)} kg, ${Math.abs(100 * difference).toFixed(1)} % ${difference < 0 ? "below" : "above"} the other trials of the session.`,
          "Look at the standing before the jump: a hand on a rail or a foot off the plate. Exclude the trial if so.",
        ),
      );
    }
  }
  // One sentence is enough: where the session disagrees, its other trials are the better witness.
  if (findings.length > 0) return findings;
  if (enteredMassKg !== undefined && Math.abs(massKg - enteredMassKg) > settings.weightToleranceEnteredKg) {
    findings.push(
      finding(
        "weight-differs",
        "warning",
        `This trial weighs the athlete at ${massKg.toFixed(1)} kg; the entered mass is ${enteredMassKg.toFixed(1)} kg.`,
        "Check the entered mass, the force unit and the plate's zero.",
      ),
    );
  }
  if (header !== undefined && Math.abs(massKg - header.massKg) > settings.weightToleranceEnteredKg) {
    findings.push(
      finding(
        "weight-differs",
        "warning",
        `This trial weighs the athlete at ${massKg.toFixed(1)} kg; the header says ${header.massKg.toFixed(1)} kg (${header.source}).`,
        "Check that the file is this athlete's, the force unit and the plate's zero.",
      ),
    );
  }
  return findings;
}
