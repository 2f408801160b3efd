import { readFileSync } from "node:fs";
import { integrate, positionAt, velocityAt } from "../../core/events/kinematics.ts";
import { integrateForce } from "../../core/trial/force-signal.ts";

/** SciPy's integrals of forces joined by straight lines; the calls stand in the file. */
export interface IntegrationVectors {
  readonly scipy: string;
  readonly weightNewtons: number;
  readonly gravity: number;
  readonly cases: readonly {
    readonly name: string;
    readonly rateHz: number;
    readonly force: readonly number[];
    readonly impulse: readonly number[];
    readonly doubleImpulse: readonly number[];
    readonly samples: readonly number[];
    readonly velocity: readonly number[];
    readonly position: readonly number[];
  }[];
}

/** The committed vectors. */
export function committedIntegrationVectors(): IntegrationVectors {
  return JSON.parse(readFileSync(new URL("integration-vectors.json", import.meta.url), "utf8")) as IntegrationVectors;
}

/** Largest difference between the program's integrals and SciPy's, each relative to the largest value of its curve. */
export function worstIntegrationDifference(vectors: IntegrationVectors): number {
  let worst = 0;
  const compare = (ours: readonly number[], expected: readonly number[]): void => {
    const size = Math.max(...expected.map(Math.abs), Number.MIN_VALUE);
    if (ours.length !== expected.length) throw new RangeError("Curves of different length cannot be compared.");
    for (const [index, value] of ours.entries()) worst = Math.max(worst, Math.abs(value - expected[index]!) / size);
  };
  for (const { rateHz, force, impulse, doubleImpulse, samples, velocity, position } of vectors.cases) {
    const signal = { rateHz, force: Float64Array.from(force) };
    const span = { start: 0, end: force.length };
    const motion = integrate(signal, span, vectors.weightNewtons, vectors.gravity);
    compare([...motion.impulse], impulse);
    compare([...motion.doubleImpulse], doubleImpulse);
    compare(
      impulse.map((_, index) => integrateForce(signal, 0, index)),
      impulse,
    );
    if (Math.max(...velocity.map(Math.abs)) < restMetresPerSecond) continue;
    compare(
      samples.map((sample) => velocityAt(motion, sample)),
      velocity,
    );
    compare(
      samples.map((sample) => positionAt(motion, sample)),
      position,
    );
  }
  return worst;
}

/** Slower than this a body stands still: what is left of its velocity is rounding, which has no size to compare with. */
const restMetresPerSecond = 1e-9;
