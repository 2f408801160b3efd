import type { MeasureSide } from "../limb.ts";
import type { Settings } from "../settings.ts";
import { type ForceSignal, forceAt, integrateForce, maximumForce } from "../trial/force-signal.ts";
import { integralNoise, type MeasureContext, type RawMeasure } from "./raw-measure.ts";

/** Measures of the landing (METHODS §5), unfiltered; none where the recording holds no complete landing. */
export function measureLanding(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { events, motion } = context.jump;
  const { touchdown, landingEnd } = events;
  if (touchdown === undefined || landingEnd === undefined) return [];
  const weight = motion.weightNewtons;
  return [
    ...landingOf(motion.signal, context.noiseNewtons, context.limb, touchdown, landingEnd, weight, settings),
    ...context.limbs.flatMap(({ signal, noiseNewtons }) => {
      const own = context.jump.contacts.find((contact) => contact.side === signal.side)?.touchdown;
      if (own === undefined || own >= landingEnd) return [];
      // One limb of two carries half the weight, so its first peak is held against half of it.
      return landingOf(signal, noiseNewtons, signal.side, own, landingEnd, weight / 2, settings);
    }),
  ];
}

function landingOf(
  signal: ForceSignal,
  noise: number,
  side: MeasureSide,
  touchdown: number,
  landingEnd: number,
  weightNewtons: number,
  settings: Settings,
): RawMeasure[] {
  const { rateHz } = signal;
  const peak = maximumForce(signal, touchdown, landingEnd);
  const first = firstPeak(signal, touchdown, landingEnd, weightNewtons, settings);
  const measures: RawMeasure[] = [
    { id: "peakLandingForce", side, value: peak.newtons, noise },
    { id: "timeToPeakLandingForce", side, value: (peak.sample - touchdown) / rateHz, noise: 0 },
    {
      id: "landingImpulse",
      side,
      value: integrateForce(signal, touchdown, landingEnd),
      noise: integralNoise(noise, landingEnd - touchdown, rateHz),
    },
  ];
  if (first !== undefined) {
    const seconds = (first - touchdown) / rateHz;
    measures.push({
      id: "loadingRate",
      side,
      value: (forceAt(signal, first) - forceAt(signal, touchdown)) / seconds,
      noise: (Math.SQRT2 * noise) / seconds,
    });
  }
  return measures;
}

/** Sample of the first local maximum of at least the weight, from which force falls by the prominence. */
function firstPeak(
  signal: ForceSignal,
  touchdown: number,
  landingEnd: number,
  weightNewtons: number,
  settings: Settings,
): number | undefined {
  const prominence = settings.firstPeakProminenceFraction * weightNewtons;
  let highest = Number.NEGATIVE_INFINITY;
  let at = touchdown;
  for (let index = Math.ceil(touchdown); index <= Math.floor(landingEnd); index += 1) {
    const force = signal.force[index]!;
    if (force > highest) {
      highest = force;
      at = index;
    } else if (highest >= weightNewtons && highest - force >= prominence) {
      return at;
    }
  }
  return undefined;
}
