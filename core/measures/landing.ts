import { lastSample } from "../events/kinematics.ts";
import type { MeasureSide, Side } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import { type ForceExtreme, type ForceSignal, forceAt, integrateForce, maximumForce } from "../trial/force-signal.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { type ForceNoise, impulseNoise, limbNoises, peakNoise, totalNoise } from "./uncertainty/force-noise.ts";
import { peakRipple } from "./uncertainty/peak-ripple.ts";

/**
 * Measures of the landing (METHODS §5), unfiltered. Where its end is unknown, because weight or velocity is, or because
 * it never comes to rest, the largest force and its time are those of the first `landingPeakSeconds`; the rest needs the
 * end, and body weight. None where the recording does not hold that much of the landing.
 */
export function measureLanding(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { events, motion } = context.jump;
  const { takeoff, touchdown, landingEnd } = events;
  if (touchdown === undefined) return [];
  if (landingEnd === undefined) return peaksAlone(context, touchdown, takeoff === undefined, settings);
  const isFall = takeoff === undefined;
  const weight = motion.weightNewtons;
  const noises = limbNoises(context, settings);
  return [
    ...landingOf(
      motion.signal,
      totalNoise(context, settings),
      context.limb,
      touchdown,
      landingEnd,
      weight,
      isFall,
      settings,
    ),
    ...context.limbs.flatMap(({ signal }, index) => {
      const own = context.jump.contacts.find((contact) => contact.side === signal.side)?.touchdown;
      if (own === undefined || own >= landingEnd) return [];
      // One limb of two carries half the weight, so its first peak is held against half of it.
      return landingOf(signal, noises[index]!, signal.side, own, landingEnd, weight / 2, isFall, settings);
    }),
  ];
}

/** The largest force of a landing without an end, whole and of each limb. */
function peaksAlone(context: MeasureContext, touchdown: number, isFall: boolean, settings: Settings): RawMeasure[] {
  const { motion, contacts } = context.jump;
  const { rateHz } = motion.signal;
  const until = touchdown + settings.landingPeakSeconds * rateHz;
  if (until > lastSample(motion)) return [];
  const noises = limbNoises(context, settings);
  const peakOf = (signal: ForceSignal, noise: ForceNoise, side: MeasureSide, from: number): RawMeasure[] => {
    const peak = maximumForce(signal, from, until);
    return peakMeasures(
      signal,
      peak,
      from,
      until,
      noiseBeside(signal, peak, from, until, noise, isFall, settings),
      side,
      settings,
    );
  };
  return [
    ...peakOf(motion.signal, totalNoise(context, settings), context.limb, touchdown),
    ...context.limbs.flatMap(({ signal }, index) => {
      const own = contacts.find((contact) => contact.side === signal.side)?.touchdown;
      return own === undefined || own >= until ? [] : peakOf(signal, noises[index]!, signal.side, own);
    }),
  ];
}

/** A fall onto the plate shows only beside its peaks how the plate rings; after a take-off the flight has shown it. */
function noiseBeside(
  signal: ForceSignal,
  { sample }: ForceExtreme,
  from: number,
  to: number,
  noise: ForceNoise,
  isFall: boolean,
  settings: Settings,
): ForceNoise {
  return isFall ? { ...noise, point: Math.max(noise.point, peakRipple(signal, sample, from, to, settings)) } : noise;
}

function peakMeasures(
  signal: ForceSignal,
  peak: ForceExtreme,
  touchdown: number,
  until: number,
  noise: ForceNoise,
  side: MeasureSide,
  settings: Settings,
): RawMeasure[] {
  const { rateHz } = signal;
  const ofPeak = peakNoise(signal, peak, touchdown, until, noise, settings);
  return [
    { id: "peakLandingForce", side, value: peak.newtons, noise: ofPeak.newtons },
    { id: "timeToPeakLandingForce", side, value: (peak.sample - touchdown) / rateHz, noise: ofPeak.place / rateHz },
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
  const beside = (extreme: ForceExtreme): ForceNoise =>
    noiseBeside(signal, extreme, touchdown, landingEnd, noise, isFall, settings);
  const peak = maximumForce(signal, touchdown, landingEnd);
  const prominence = prominenceOf(weightNewtons, settings);
  const first = firstPeak(signal, touchdown, landingEnd, weightNewtons, prominence);
  const measures: RawMeasure[] = [
    ...peakMeasures(signal, peak, touchdown, landingEnd, beside(peak), side, settings),
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
    const doubt = settings.peakNoiseDeviations * atFirst.point;
    const others = [-doubt, doubt].map((by) =>
      firstPeak(signal, touchdown, landingEnd, weightNewtons + by, prominence + by),
    );
    const apart = Math.max(...others.map((other) => (other === undefined ? 0 : Math.abs(rateTo(other) - value))));
    const { newtons, place } = peakNoise(signal, first, touchdown, first.knownAt, atFirst, settings);
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
