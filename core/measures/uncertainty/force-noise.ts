import { emptyLevel } from "../../events/contact-edge.ts";
import { integralNoise } from "../../events/integral-noise.ts";
import type { JumpEvents } from "../../events/jump-events.ts";
import type { Settings } from "../../settings/settings.ts";
import type { ForceExtreme, ForceSignal } from "../../trial/force-signal.ts";
import type { MeasureContext } from "../raw-measure.ts";

/** What a plate adds to one signal, standard uncertainties in newtons. */
export interface ForceNoise {
  /** White noise, which integrals average. */
  readonly white: number;
  /** Whatever moves one sample: white noise, hum, a plate that rings, and the plate's zero. */
  readonly point: number;
  /** The plate's zero alone, which nothing averages. */
  readonly zero: number;
}

/** The total's noise. */
export function totalNoise(context: MeasureContext, settings: Settings): ForceNoise {
  return noisesOf(context, settings).total;
}

/** The noise of each limb's own plate, in the order of the context's limbs. */
export function limbNoises(context: MeasureContext, settings: Settings): readonly ForceNoise[] {
  return noisesOf(context, settings).limbs;
}

interface Noises {
  readonly total: ForceNoise;
  readonly limbs: readonly ForceNoise[];
}

/** Every family of measures asks for the same noises, a dozen times a trial; they follow from the context alone. */
const found = new WeakMap<MeasureContext, Noises>();

function noisesOf(context: MeasureContext, settings: Settings): Noises {
  const known = found.get(context);
  if (known !== undefined) return known;
  const { jump, limbs, noiseNewtons, zeroNewtons } = context;
  const noises: Noises = {
    total: forceNoise(jump.motion.signal, noiseNewtons, zeroNewtons, jump.events, settings),
    limbs: limbs.map((limb) => forceNoise(limb.signal, limb.noiseNewtons, limb.zeroNewtons, jump.events, settings)),
  };
  found.set(context, noises);
  return noises;
}

function forceNoise(
  signal: ForceSignal,
  white: number,
  zero: number,
  events: JumpEvents,
  settings: Settings,
): ForceNoise {
  return { white, zero, point: Math.hypot(Math.max(white, emptyNoise(signal, events, settings)), zero) };
}

/** What noise and zero leave in a gross impulse over so many samples, N·s. */
export function impulseNoise({ white, zero }: ForceNoise, samples: number, rateHz: number): number {
  return Math.hypot(integralNoise(white, samples, rateHz), (zero * samples) / rateHz);
}

/** Deviation of the empty plate beside the jump: in the middle of the flight, or while it still rings, if that is more. */
function emptyNoise(signal: ForceSignal, { takeoff, touchdown }: JumpEvents, settings: Settings): number {
  const { rateHz } = signal;
  if (touchdown === undefined) return 0;
  if (takeoff === undefined) {
    const end = Math.floor(touchdown - settings.fallNoiseBeforeSeconds * rateHz);
    const start = end - Math.ceil(settings.fallNoiseSeconds * rateHz);
    return start < 0 ? 0 : emptyLevel(signal, { start, end }, settings).deviation;
  }
  const flight = { start: Math.ceil(takeoff), end: Math.floor(touchdown) };
  if (flight.end - flight.start < settings.noiseFlightSeconds * rateHz) return 0;
  const middle = emptyLevel(signal, flight, settings);
  const first = flight.start + Math.ceil(settings.ringsAfterSeconds * rateHz);
  const last = Math.min(flight.end, first + Math.ceil(settings.ringsForSeconds * rateHz));
  let squares = 0;
  for (let index = first; index < last; index += 1) squares += (signal.force[index]! - middle.newtons) ** 2;
  return Math.max(middle.deviation, Math.sqrt(squares / (last - first)));
}

/** How well a largest force and its place are known, k = 1. */
export interface PeakNoise {
  readonly newtons: number;
  /** Samples. */
  readonly place: number;
}

/**
 * What noise and sampling leave in the largest force of [from, to] and in its place. Of the samples that may be the
 * true peak the noise lifts one: the largest of m deviations is expected σ·√(2 ln m) above none at most, which is known,
 * is not corrected and so counts in full (JCGM 100:2008, F.2.4.5). Between samples the force may have been larger by the
 * rise of a parabola through the three beside the peak, and the place lies anywhere from half a sample before the first to
 * half a sample behind the last that may be the peak: rectangular (4.3.7).
 */
export function peakNoise(
  { force }: ForceSignal,
  peak: ForceExtreme,
  from: number,
  to: number,
  noise: ForceNoise,
  settings: Settings,
): PeakNoise {
  const least = peak.newtons - settings.peakNoiseDeviations * noise.point;
  let count = 0;
  let before = 0;
  let behind = 0;
  for (let index = Math.ceil(from); index <= Math.floor(to); index += 1) {
    if (force[index]! < least) continue;
    count += 1;
    before = Math.max(before, peak.sample - index);
    behind = Math.max(behind, index - peak.sample);
  }
  const lifted = noise.point * Math.sqrt(2 * Math.log(Math.max(1, count)));
  const centre = Math.round(peak.sample);
  const here = force[centre]!;
  const bent = 2 * here - (force[centre - 1] ?? here) - (force[centre + 1] ?? here);
  const missed = Math.max(0, bent) / 8;
  return {
    newtons: Math.hypot(noise.point, lifted, missed / Math.sqrt(3)),
    place: (Math.max(before, behind) + 0.5) / Math.sqrt(3),
  };
}
