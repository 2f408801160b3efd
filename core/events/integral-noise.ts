/** Standard uncertainty that white noise leaves in an integral over `samples` samples: σ·√(dt·T). */
export function integralNoise(noiseNewtons: number, samples: number, rateHz: number): number {
  return (noiseNewtons * Math.sqrt(Math.max(1, samples))) / rateHz;
}
