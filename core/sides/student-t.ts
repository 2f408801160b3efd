/** ln Γ(x + ½) − ln Γ(x): shifted up to where the asymptotic series is exact, so that nothing large cancels. */
function logGammaHalfStep(x: number): number {
  let shift = 0;
  let at = x;
  while (at < 20) {
    shift += Math.log(at / (at + 0.5));
    at += 1;
  }
  const inverse = 1 / at;
  const square = inverse * inverse;
  // Coefficients: expansion of ln Γ(x + ½) − ln Γ(x) by Stirling's series with Bernoulli numbers (from memory).
  const series = inverse * (-1 / 8 + square * (1 / 192 + square * (-1 / 640 + square * (17 / 14336))));
  return shift + 0.5 * Math.log(at) + series;
}

/** Sum of 1 + r₀ + r₀r₁ + … for positive ratios that end below one. */
function positiveSeries(ratio: (term: number) => number): number {
  let sum = 1;
  let product = 1;
  for (let term = 0; product > sum * 1e-17; term += 1) {
    product *= ratio(term);
    sum += product;
  }
  return sum;
}

/** Density of Student's t at t ≥ 0. */
function density(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom === Infinity) return Math.exp(-t * t * 0.5) / Math.sqrt(2 * Math.PI);
  const half = degreesOfFreedom / 2;
  const constant = logGammaHalfStep(half) - 0.5 * Math.log(Math.PI * degreesOfFreedom);
  return Math.exp(constant - (half + 0.5) * Math.log1p((t * t) / degreesOfFreedom));
}

/**
 * Probability that |T| stays below t ≥ 0. The incomplete beta function as one of its two series of positive terms,
 * chosen so that it converges at least like a half to the n-th power (Abramowitz and Stegun 26.5.4, from memory).
 */
function centralProbability(t: number, degreesOfFreedom: number): number {
  const height = density(t, degreesOfFreedom);
  if (degreesOfFreedom === Infinity) {
    return 2 * t * height * positiveSeries((term) => (t * t) / (3 + 2 * term));
  }
  const part = (t * t) / (degreesOfFreedom + t * t);
  if (part <= 0.5) {
    return 2 * t * height * positiveSeries((term) => ((degreesOfFreedom + 1 + 2 * term) / (3 + 2 * term)) * part);
  }
  const rest = 1 - part;
  const tail = positiveSeries((term) => ((degreesOfFreedom + 1 + 2 * term) / (degreesOfFreedom + 2 + 2 * term)) * rest);
  return 1 - (2 * t * height * tail) / degreesOfFreedom;
}

/**
 * The t for which |T| stays below it with the given probability: the factor of a two-sided interval.
 * Newton's steps within a bracket that is halved whenever a step would leave it.
 *
 * @param confidence two-sided probability, 0 < confidence < 1
 * @param degreesOfFreedom any positive number, also a fraction (Welch–Satterthwaite), or Infinity for the normal case
 * @throws RangeError outside those ranges: a mistake of ours
 */
export function twoSidedT(confidence: number, degreesOfFreedom: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`Confidence cannot be ${confidence}.`);
  if (!(degreesOfFreedom > 0)) throw new RangeError(`Degrees of freedom cannot be ${degreesOfFreedom}.`);
  let low = 0;
  let high = 1;
  while (centralProbability(high, degreesOfFreedom) < confidence) {
    low = high;
    high *= 2;
  }
  let t = low > 0 ? low : confidence / (2 * density(0, degreesOfFreedom));
  for (let step = 0; step < 200; step += 1) {
    const error = centralProbability(t, degreesOfFreedom) - confidence;
    if (error < 0) low = t;
    else high = t;
    const newton = t - error / (2 * density(t, degreesOfFreedom));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= 1e-15 * t) return next;
    t = next;
  }
  return t;
}

/**
 * Quantile of Student's t.
 * @param probability lower-tail probability, 0 < probability < 1
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Probability cannot be ${probability}.`);
  if (probability === 0.5) return 0;
  const factor = twoSidedT(Math.abs(2 * probability - 1), degreesOfFreedom);
  return probability < 0.5 ? -factor : factor;
}
