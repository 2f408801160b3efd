import type { MeasureSide, Side } from "../limb.ts";
import type { Settings } from "../settings.ts";
import { type ForceExtreme, type ForceSignal, forceAt, integrateForce, maximumForce } from "../trial/force-signal.ts";
import { type ForceNoise, impulseNoise, limbNoises, peakDeviations, peakNoise, totalNoise } from "./force-noise.ts";
import { peakRipple } from "./peak-ripple.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";

/** Measures of the landing (METHODS §5), unfiltered; none where the recording holds no complete landing. */
export function measureLanding(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { events, motion } = context.jump;
  const { takeoff, touchdown, landingEnd } = events;
  if (touchdown === undefined || landingEnd === undefined) return [];
  // After a take-off the empty plate shows how it rings. A fall onto it shows that only beside the peaks.
  const isFall = takeoff === undefined;
  const weight = motion.weightNewtons;
  const noises = limbNoises(context);
  return [
    ...landingOf(motion.signal, totalNoise(context), context.limb, touchdown, landingEnd, weight, isFall, settings),
    ...context.limbs.flatMap(({ signal }, index) => {
      const own = context.jump.contacts.find((contact) => contact.side === signal.side)?.touchdown;
      if (own === undefined || own >= landingEnd) return [];
      // One limb of two carries half the weight, so its first peak is held against half of it.
      return landingOf(signal, noises[index]!, signal.side, own, landingEnd, weight / 2, isFall, settings);
    }),
  ];
}

function landingOf(
  signal: ForceSignal,
  noise: ForceNoise,
  side: MeasureSide,
  touchdown: number,
  landingEnd: number,
  weightNewtons: number,
  isFall: boolean,
  settings: Settings,
): RawMeasure[] {
  const { rateHz } = signal;
  const beside = ({ sample }: ForceExtreme): ForceNoise =>
    isFall ? { ...noise, point: Math.max(noise.point, peakRipple(signal, sample, touchdown, landingEnd)) } : noise;
  const peak = maximumForce(signal, touchdown, landingEnd);
  const prominence = prominenceOf(weightNewtons, settings);
  const first = firstPeak(signal, touchdown, landingEnd, weightNewtons, prominence);
  const ofPeak = peakNoise(signal, peak, touchdown, landingEnd, beside(peak));
  const measures: RawMeasure[] = [
    { id: "peakLandingForce", side, value: peak.newtons, noise: ofPeak.newtons },
    { id: "timeToPeakLandingForce", side, value: (peak.sample - touchdown) / rateHz, noise: ofPeak.place / rateHz },
    {
      id: "landingImpulse",
      side,
      value: integrateForce(signal, touchdown, landingEnd),
      noise: impulseNoise(noise, landingEnd - touchdown, rateHz),
    },
  ];
  if (first !== undefined) {
    const seconds = (first.sample - touchdown) / rateHz;
    const rateTo = (to: ForceExtreme): number =>
      ((to.newtons - forceAt(signal, touchdown)) * rateHz) / (to.sample - touchdown);
    const value = rateTo(first);
    // Noise that could make or hide the first peak makes the rate to the other one possible (rectangular).
    const atFirst = beside(first);
    const doubt = peakDeviations * atFirst.point;
    const others = [-doubt, doubt].map((by) =>
      firstPeak(signal, touchdown, landingEnd, weightNewtons + by, prominence + by),
    );
    const apart = Math.max(...others.map((other) => (other === undefined ? 0 : Math.abs(rateTo(other) - value))));
    const { newtons, place } = peakNoise(signal, first, touchdown, first.knownAt, atFirst);
    const spread = Math.hypot(newtons, noise.point, (value * place) / rateHz) / seconds;
    measures.push({ id: "loadingRate", side, value, noise: Math.hypot(spread, apart / Math.sqrt(3)) });
  }
  return measures;
}

/** When each limb's force has its first landing peak, seconds from its own touchdown; only limbs that have one. */
export function firstPeakTimes(
  { jump, limbs }: MeasureContext,
  settings: Settings,
): readonly { readonly limb: Side; readonly seconds: number }[] {
  const { landingEnd } = jump.events;
  if (landingEnd === undefined) return [];
  const halfWeight = jump.motion.weightNewtons / 2;
  return limbs.flatMap(({ signal }) => {
    const touchdown = jump.contacts.find((contact) => contact.side === signal.side)?.touchdown;
    if (touchdown === undefined || touchdown >= landingEnd) return [];
    const first = firstPeak(signal, touchdown, landingEnd, halfWeight, prominenceOf(halfWeight, settings));
    return first === undefined ? [] : [{ limb: signal.side, seconds: (first.sample - touchdown) / signal.rateHz }];
  });
}

function prominenceOf(weightNewtons: number, settings: Settings): number {
  return settings.firstPeakProminenceFraction * weightNewtons;
}

/** The first local maximum of at least some force, from which it falls by the prominence, and where it has. */
function firstPeak(
  signal: ForceSignal,
  touchdown: number,
  landingEnd: number,
  leastNewtons: number,
  prominence: number,
): (ForceExtreme & { readonly knownAt: number }) | undefined {
  let highest = Number.NEGATIVE_INFINITY;
  let at = touchdown;
  for (let index = Math.ceil(touchdown); index <= Math.floor(landingEnd); index += 1) {
    const force = signal.force[index]!;
    if (force > highest) {
      highest = force;
      at = index;
    } else if (highest >= leastNewtons && highest - force >= prominence) {
      return { newtons: highest, sample: at, knownAt: index };
    }
  }
  return undefined;
}
