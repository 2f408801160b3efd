import type { Settings } from "../settings/settings.ts";
import { meanAndDeviation, meanOf } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import type { WeighingSecond } from "./weighing-second.ts";

/** Body weight from quiet standing. */
export interface Weighing {
  readonly newtons: number;
  /** Standard uncertainty, newtons. */
  readonly uncertainty: number;
  /** Standard deviation of force in the window, newtons. */
  readonly deviation: number;
  /** Standard uncertainty of the velocity that the window's mean is taken to be zero, m/s. */
  readonly velocityUncertainty: number;
  /** The causes of both: a trend of velocity moves the weight, and the velocity where the window is off its middle. */
  readonly causes: readonly WeighingShift[];
  /** Standard deviation of the position in quiet standing about its middle, m. */
  readonly positionUncertainty: number;
  readonly window: SampleSpan;
}

/** One estimate of body weight, newtons, with its standard uncertainty. */
export type WeightEstimate = Pick<Weighing, "newtons" | "uncertainty">;

/** What one cause does to weight (newtons) and to the velocity in the first window (m/s) together, k = 1. */
export interface WeighingShift {
  readonly weightNewtons: number;
  readonly startVelocity: number;
}

/** Body weight from quiet standing at both ends. */
export interface MomentumBalance extends WeightEstimate {
  /** The window in which velocity is zero by this balance. */
  readonly still: SampleSpan;
  /**
   * A velocity left in either window moves the weight, and that in the first the velocity too. Only a part of the floor
   * is among them: what it stands for beyond sway, as a plate's zero, is in force and weight alike and moves no velocity.
   */
  readonly ends: readonly WeighingShift[];
}

/**
 * Mean force over a window of quiet standing, with its uncertainty (METHODS §2). The mean net force over a stretch of
 * length T is m·(v_end − v_start)/T, so u(W) = m·√2·SD(v_sway)/T; T and the sway, from integrating detrended force, are
 * those of the calm standing that vouches for the window. Plate noise over √n is added, and a floor for sway slower
 * than the stretch, which detrending hides. A window shorter than `weighingSeconds` shows too little of the sway: there
 * the force's own deviation is added, as fully correlated for the missing part (which only enlarges the uncertainty).
 */
export function weigh(
  total: Float64Array,
  rateHz: number,
  { window, calm }: WeighingSecond,
  plateNoise: number,
  settings: Settings,
): Weighing {
  const { mean, deviation } = meanAndDeviation(total, window.start, window.end);
  const count = calm.end - calm.start;
  const seconds = count / rateHz;
  const mass = mean / settings.gravity;
  const sway = swayDeviations(total, rateHz, calm, mass, settings);
  const missing = Math.max(0, 1 - seconds / settings.weighingSeconds);
  const trend = endsOf(sway, seconds);
  // Mean velocity over the calm standing, and what its trend makes of that at the window's own middle.
  const meanVelocity = (Math.SQRT2 * sway.position) / seconds;
  const offMiddle = (trend * (middle(window) - middle(calm))) / rateHz;
  const otherwise = Math.hypot(
    plateNoise / Math.sqrt(count),
    settings.weighingFloorFraction * mean,
    deviation * Math.sqrt(missing),
  );
  return {
    newtons: mean,
    uncertainty: Math.hypot(mass * trend, otherwise),
    deviation,
    velocityUncertainty: Math.hypot(meanVelocity, offMiddle),
    causes: [
      // Velocity that rises by the trend is taken for weight, and is above zero where the window lies behind the middle.
      { weightNewtons: mass * trend, startVelocity: -offMiddle },
      { weightNewtons: otherwise, startVelocity: 0 },
      { weightNewtons: 0, startVelocity: meanVelocity },
    ],
    positionUncertainty: sway.position,
    window,
  };
}

/**
 * Standard uncertainty of the mean acceleration over T seconds of sway, m/s²: the smaller of √2·SD(v)/T (METHODS §2) and
 * 12·SD(x)/T², what a sinusoid faster than the stretch leaves in a line of least squares through its velocity.
 */
function endsOf(sway: { readonly velocity: number; readonly position: number }, seconds: number): number {
  return Math.min((Math.SQRT2 * sway.velocity) / seconds, (12 * sway.position) / (seconds * seconds));
}

/**
 * Momentum balance (METHODS §2): mean velocity is zero in quiet standing before and after the jump, so with
 * P(t) = ∫F dt, W = (mean P over the second window − mean P over the first) / (mean t of the second − of the first).
 * Window means average the sway out. u(W) = m·√(s₁² + s₂²)/(t̄₂ − t̄₁) with sᵢ the velocity uncertainty of each window.
 */
export function balanceMomentum(
  total: Float64Array,
  rateHz: number,
  before: Weighing,
  after: Weighing,
  settings: Settings,
): MomentumBalance {
  const step = 1 / rateHz;
  let impulse = 0;
  let meanBefore = 0;
  let meanAfter = 0;
  const last = after.window.end - 1;
  for (let index = before.window.start; index <= last; index += 1) {
    if (index > before.window.start) impulse += ((total[index - 1]! + total[index]!) / 2) * step;
    if (index < before.window.end) meanBefore += impulse;
    if (index >= after.window.start) meanAfter += impulse;
  }
  meanBefore /= before.window.end - before.window.start;
  meanAfter /= after.window.end - after.window.start;
  const apart = (middle(after.window) - middle(before.window)) * step;
  const newtons = (meanAfter - meanBefore) / apart;
  const massKg = newtons / settings.gravity;
  const [first, second] = [before.velocityUncertainty, after.velocityUncertainty];
  const fromSway = (massKg * Math.hypot(first, second)) / apart;
  const uncertainty = Math.hypot(fromSway, settings.weighingFloorFraction * newtons);
  // A part of the floor is sway too slow to show, which acts through the same two windows.
  const larger = Math.hypot(1, (settings.weighingFloorSwayPart * settings.weighingFloorFraction * newtons) / fromSway);
  const part = (velocity: number): number => (larger * massKg * velocity) / apart;
  return {
    newtons,
    uncertainty,
    still: before.window,
    ends: [
      { weightNewtons: part(first), startVelocity: larger * first },
      { weightNewtons: part(second), startVelocity: 0 },
    ],
  };
}

function middle(window: SampleSpan): number {
  return (window.start + window.end - 1) / 2;
}

/** Standard deviations of sway velocity (m/s) and position (m), the force's own trend removed, above their floors. */
function swayDeviations(
  total: Float64Array,
  rateHz: number,
  window: SampleSpan,
  mass: number,
  settings: Settings,
): { readonly velocity: number; readonly position: number } {
  const count = window.end - window.start;
  const step = 1 / rateHz;
  const mean = meanOf(total, window.start, window.end);
  const slope = forceTrend(total, window, mean);
  const velocities = new Float64Array(count);
  let velocity = 0;
  let before = 0;
  let sumVelocity = 0;
  let squaresVelocity = 0;
  for (let index = 0; index < count; index += 1) {
    const net = (total[window.start + index]! - mean - slope * (index - (count - 1) / 2)) / mass;
    if (index > 0) velocity += ((before + net) / 2) * step;
    before = net;
    velocities[index] = velocity;
    sumVelocity += velocity;
    squaresVelocity += velocity * velocity;
  }
  // Position is counted without the mean velocity.
  const meanVelocity = sumVelocity / count;
  let position = 0;
  let sumPosition = 0;
  let squaresPosition = 0;
  for (let index = 0; index < count; index += 1) {
    position += (velocities[index]! - meanVelocity) * step;
    sumPosition += position;
    squaresPosition += position * position;
  }
  const deviation = (sum: number, squares: number): number =>
    Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2));
  return {
    velocity: Math.hypot(deviation(sumVelocity, squaresVelocity), settings.weighingSwayVelocity),
    position: Math.hypot(deviation(sumPosition, squaresPosition), settings.weighingSwayDisplacement),
  };
}

/** Least-squares slope of force over a window, newtons a sample. */
function forceTrend(total: Float64Array, window: SampleSpan, mean: number): number {
  const count = window.end - window.start;
  const centre = (count - 1) / 2;
  let covariance = 0;
  for (let index = 0; index < count; index += 1) {
    covariance += (index - centre) * (total[window.start + index]! - mean);
  }
  return covariance / ((count * (count * count - 1)) / 12);
}

/**
 * Standard deviation of the plate's white noise in newtons, from second differences inside quiet standing: they
 * cancel whatever moves slowly. Var(second difference) = 6·σ².
 */
export function plateNoise(total: Float64Array, window: SampleSpan): number {
  let squares = 0;
  for (let index = window.start + 1; index < window.end - 1; index += 1) {
    squares += (total[index - 1]! - 2 * total[index]! + total[index + 1]!) ** 2;
  }
  const count = window.end - window.start - 2;
  return count > 0 ? Math.sqrt(squares / count / 6) : 0;
}
