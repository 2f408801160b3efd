import { twoSidedT } from "./student-t.ts";

/** Two numbers, how uncertain they are, and how well that is known: all that the interval of their ratio needs. */
export interface RatioMoments {
  readonly first: number;
  readonly second: number;
  /** Variance of `first` itself (of the mean, not of single trials). */
  readonly varianceFirst: number;
  readonly varianceSecond: number;
  readonly covariance: number;
  readonly degreesOfFreedom: number;
}

/** Interval of a ratio; no limits where it is unbounded. */
export interface RatioInterval {
  readonly ratio: number;
  /** Below one the interval is bounded. */
  readonly g: number;
  readonly limits?: { readonly low: number; readonly high: number };
}

/**
 * Fieller's interval of first/second (Fieller 1954, J R Stat Soc B 16:175–185; CHECKS I1). Bounded only where the
 * second number differs from zero at this confidence (g < 1).
 */
export function ratioInterval(moments: RatioMoments, confidence: number): RatioInterval {
  const { first, second, varianceFirst, varianceSecond, covariance } = moments;
  const t = twoSidedT(confidence, moments.degreesOfFreedom);
  const ratio = first / second;
  const g = (t * t * varianceSecond) / (second * second);
  if (!(g < 1)) return { ratio, g };
  // Both products are taken about the ratio, where rounding cannot turn the root negative for equal numbers.
  const atRatio = varianceFirst - 2 * ratio * covariance + ratio * ratio * varianceSecond;
  const determinant = varianceFirst * varianceSecond - covariance * covariance;
  const root = Math.sqrt(Math.max(0, atRatio - ((t * t) / (second * second)) * determinant));
  const shift = (covariance - ratio * varianceSecond) * ((t * t) / (second * second));
  const centre = ratio - shift / (1 - g);
  const half = ((t / Math.abs(second)) * root) / (1 - g);
  return { ratio, g, limits: { low: Math.min(ratio, centre - half), high: Math.max(ratio, centre + half) } };
}

/**
 * Degrees of freedom of first − ratio·second at the estimate (Welch–Satterthwaite; CHECKS I2). Where neither side
 * varies the smaller of the two is taken; it plays no part then.
 */
export function degreesOfFreedomAtRatio(
  ratio: number,
  first: { readonly variance: number; readonly trials: number },
  second: { readonly variance: number; readonly trials: number },
): number {
  const a = first.variance;
  const b = ratio * ratio * second.variance;
  const least = Math.min(first.trials, second.trials) - 1;
  const total = a + b;
  if (!(total > 0)) return least;
  // As parts of the total, so that very small variances do not underflow when squared.
  return 1 / ((a / total) ** 2 / (first.trials - 1) + (b / total) ** 2 / (second.trials - 1));
}
