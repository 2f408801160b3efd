import { type Finding, finding } from "../ground/finding.ts";
import type { Plate } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import { meanAndDeviation } from "./force-signal.ts";
import type { SampleSpan } from "./sample-span.ts";

/** The plates with their zero removed where an empty stretch shows it. */
export interface ZeroedPlates {
  /** Newtons, in the order of the recording's plates. */
  readonly forces: readonly Float64Array[];
  /** Standard uncertainty of each plate's zero, newtons; zero where none was removed. */
  readonly uncertainties: readonly number[];
  readonly findings: readonly Finding[];
}

/** A plate's zero as a straight line, newtons and newtons a sample. */
interface ZeroLine {
  readonly atStart: number;
  readonly slope: number;
}

/** A plate's level over one empty stretch. */
interface EmptyReading {
  readonly middle: number;
  readonly samples: number;
  readonly mean: number;
  readonly deviation: number;
}

/**
 * Removes each plate's zero: its mean over the longest empty stretch, or a straight line through all of them where
 * they show a drift (METHODS §1). Of a stretch only the middle half counts, because plates ring. Nothing is removed
 * where no stretch is long and calm enough: a zero is never guessed.
 * @param steps one step of each plate's converter, newtons
 */
export function removePlateZero(
  plates: readonly Plate[],
  steps: readonly number[],
  rateHz: number,
  emptyStretches: readonly SampleSpan[],
  settings: Settings,
): ZeroedPlates {
  const findings: Finding[] = [];
  const stretches = readableStretches(emptyStretches, plates[0]!.force.length, rateHz, settings);
  const uncertainties: number[] = [];
  const forces = plates.map(({ force, name }, plate) => {
    const readings = stretches
      .map((stretch) => readEmpty(force, stretch))
      .filter((reading) => reading.deviation <= settings.plateOffsetSd);
    const [first] = readings;
    if (first === undefined) {
      uncertainties.push(0);
      return force;
    }
    const longest = readings.reduce((best, each) => (each.samples > best.samples ? each : best), first);
    const drift = driftLine(readings, settings);
    const own = zeroUncertainty(longest, rateHz, steps[plate]!, settings);
    const hidden = hiddenDrift(readings, longest, force.length, rateHz, settings);
    uncertainties.push(drift === undefined ? Math.hypot(own, wander(readings), hidden) : own);
    if (drift === undefined) {
      if (longest.mean === 0) return force;
      if (Math.abs(longest.mean) > settings.plateOffsetNewtons) findings.push(offsetFinding(name, longest.mean));
      return without(force, { atStart: longest.mean, slope: 0 });
    }
    const last = readings.at(-1)!;
    findings.push(driftFinding(name, drift.slope * (last.middle - first.middle), first.middle, last.middle, rateHz));
    const middle = drift.atStart + (drift.slope * (first.middle + last.middle)) / 2;
    if (Math.abs(middle) > settings.plateOffsetNewtons) findings.push(offsetFinding(name, middle));
    return without(force, drift);
  });
  return { forces, uncertainties, findings };
}

/** What a zero that wanders between empty stretches, by too little to be a drift, leaves elsewhere: rectangular. */
function wander(readings: readonly EmptyReading[]): number {
  const means = readings.map((reading) => reading.mean);
  return (Math.max(...means) - Math.min(...means)) / Math.sqrt(12);
}

/**
 * What a drift that nothing shows leaves in the zero: a plate that is empty once may drift all the same, one that is
 * empty in several stretches close to each other shows its drift there only. At the end of the recording furthest from
 * where the zero was read it is off by that, half as much on the average: rectangular.
 */
function hiddenDrift(
  readings: readonly EmptyReading[],
  { middle }: EmptyReading,
  sampleCount: number,
  rateHz: number,
  settings: Settings,
): number {
  const apart = (readings.at(-1)!.middle - readings[0]!.middle) / rateHz;
  const beyond = Math.max(0, Math.max(middle, sampleCount - middle) / rateHz - apart);
  return (settings.plateHiddenDrift * beyond) / 2 / Math.sqrt(3);
}

/**
 * How well the mean of an empty stretch is known: white noise over √n, and hum of which a part of a period is left over
 * (a sine of standard deviation σ over a time T at random phase: σ·√2/(2π·f·T)). Where the noise is smaller than half a
 * step of the converter it does not average the steps: the zero lies anywhere within one (rectangular).
 */
function zeroUncertainty(
  { deviation, samples }: EmptyReading,
  rateHz: number,
  step: number,
  settings: Settings,
): number {
  const seconds = samples / rateHz;
  const averaged =
    deviation * Math.hypot(1 / Math.sqrt(samples), Math.SQRT2 / (2 * Math.PI * settings.slowestMainsHz * seconds));
  return Math.hypot(averaged, deviation < step / 2 ? step / Math.sqrt(12) : 0);
}

/** A plain loop: `map` with a closure took ten times as long on a long recording. */
function without(force: Float64Array, { atStart, slope }: ZeroLine): Float64Array {
  const count = force.length;
  const result = new Float64Array(count);
  for (let index = 0; index < count; index += 1) result[index] = force[index]! - (atStart + slope * index);
  return result;
}

function readEmpty(force: Float64Array, { start, end }: SampleSpan): EmptyReading {
  const { mean, deviation } = meanAndDeviation(force, start, end);
  return { middle: (start + end - 1) / 2, samples: end - start, mean, deviation };
}

/** The middle halves of empty stretches that are long enough to read a zero from. */
function readableStretches(
  stretches: readonly SampleSpan[],
  sampleCount: number,
  rateHz: number,
  settings: Settings,
): readonly SampleSpan[] {
  return stretches.flatMap((span) => {
    const atAnEnd = span.start === 0 || span.end === sampleCount;
    const quarter = Math.floor((span.end - span.start) / 4);
    const inner = { start: span.start + quarter, end: span.end - quarter };
    const least = (atAnEnd ? settings.plateOffsetSeconds / 2 : settings.flightMinimumSeconds / 2) * rateHz;
    return inner.end - inner.start >= least ? [inner] : [];
  });
}

/**
 * The least-squares line through the empty readings, each weighted by its length; undefined where there is only one,
 * or where the line moves by less than `plateDriftNewtons` or than `plateDriftSd` of its own standard errors.
 */
function driftLine(readings: readonly EmptyReading[], settings: Settings): ZeroLine | undefined {
  if (readings.length < 2) return undefined;
  let count = 0;
  let sumMiddle = 0;
  let sumMean = 0;
  for (const { samples, middle, mean } of readings) {
    count += samples;
    sumMiddle += samples * middle;
    sumMean += samples * mean;
  }
  const centre = sumMiddle / count;
  const level = sumMean / count;
  let squares = 0;
  let products = 0;
  let noise = 0;
  for (const { samples, middle, mean, deviation } of readings) {
    squares += samples * (middle - centre) ** 2;
    products += samples * (middle - centre) * (mean - level);
    noise += samples * ((middle - centre) * deviation) ** 2;
  }
  const slope = products / squares;
  const standardError = Math.sqrt(noise) / squares;
  const moved = Math.abs(slope) * (readings.at(-1)!.middle - readings[0]!.middle);
  if (moved < settings.plateDriftNewtons || Math.abs(slope) < settings.plateDriftSd * standardError) return undefined;
  return { atStart: level - slope * centre, slope };
}

function offsetFinding(plate: string, newtons: number): Finding {
  return finding("plate-offset", "warning", { plate, newtons }, { place: { at: "plates", names: [plate] } });
}

function driftFinding(plate: string, newtons: number, from: number, to: number, rateHz: number): Finding {
  return finding(
    "plate-drift",
    "warning",
    { plate, newtons, fromSeconds: from / rateHz, toSeconds: to / rateHz },
    { place: { at: "plates", names: [plate] } },
  );
}
