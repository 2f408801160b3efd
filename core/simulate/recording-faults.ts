import type { SimulatedPlate, SimulatedRecording } from "./countermovement-jump.ts";
import { createRandom } from "./random.ts";

/**
 * Faults of measuring put on top of a finished recording. Each returns a new recording and leaves the given one alone;
 * what really happened stays true. Times in seconds from the first sample, plates by their position from 0.
 */
type Samples = Float64Array;

function changed<Recording extends SimulatedRecording>(
  recording: Recording,
  change: (force: Samples, plate: number) => void,
  plate?: number,
): Recording {
  const plates = recording.plates.map((each, index): SimulatedPlate => {
    if (plate !== undefined && plate !== index) return each;
    const force = each.force.slice();
    change(force, index);
    return { ...each, force };
  });
  return { ...recording, plates };
}

function range(recording: SimulatedRecording, from: number, to: number): readonly [first: number, end: number] {
  const first = Math.max(0, Math.ceil(from * recording.rateHz));
  return [first, Math.min(recording.sampleCount, Math.ceil(to * recording.rateHz))];
}

/** Force is negative from an instant on, as when somebody changes a setting in mid-file. */
export function turnSignFrom<R extends SimulatedRecording>(recording: R, from: number): R {
  const [first] = range(recording, from, Number.POSITIVE_INFINITY);
  return changed(recording, (force) => {
    for (let index = first; index < force.length; index++) force[index] = -(force[index] ?? 0);
  });
}

/** Single samples that jump by so many newtons on one plate. */
export function addSpikes<R extends SimulatedRecording>(
  recording: R,
  plate: number,
  spikes: readonly { readonly at: number; readonly newtons: number }[],
): R {
  return changed(
    recording,
    (force) => {
      for (const { at, newtons } of spikes) {
        const index = Math.round(at * recording.rateHz);
        force[index] = (force[index] ?? 0) + newtons;
      }
    },
    plate,
  );
}

/** A plate shows one value from an instant on: a pulled plug, a dead amplifier. */
export function deadenPlate<R extends SimulatedRecording>(recording: R, plate: number, from: number, shows = 0): R {
  const [first] = range(recording, from, Number.POSITIVE_INFINITY);
  return changed(recording, (force) => force.fill(shows, first), plate);
}

/** Every plate reads zero for a while: samples were lost and filled. */
export function loseSamples<R extends SimulatedRecording>(recording: R, from: number, to: number): R {
  const [first, end] = range(recording, from, to);
  return changed(recording, (force) => force.fill(0, first, end));
}

/** One plate reads its empty level, noise and all, for a while: its cable has no contact. */
export function dropOutPlate<R extends SimulatedRecording>(
  recording: R,
  plate: number,
  from: number,
  to: number,
  noise: { readonly seed: number; readonly newtons: number },
): R {
  const random = createRandom(noise.seed);
  const [first, end] = range(recording, from, to);
  return changed(
    recording,
    (force) => {
      for (let index = first; index < end; index++) force[index] = noise.newtons * random.normal();
    },
    plate,
  );
}

/** An amplifier's range ends at a force on one plate, or on all; what is added behind it comes on top. */
export function limitForce<R extends SimulatedRecording>(recording: R, newtons: number, plate?: number): R {
  return changed(
    recording,
    (force) => {
      for (let index = 0; index < force.length; index++) force[index] = Math.min(newtons, force[index] ?? 0);
    },
    plate,
  );
}

/** Every plate repeats its last value for a while: the transmission hung. */
export function holdSamples<R extends SimulatedRecording>(recording: R, from: number, to: number): R {
  const [first, end] = range(recording, from, to);
  return changed(recording, (force) => force.fill(force[first] ?? 0, first, end));
}

/** A lower rate written as a higher one: each sample stands for so many. */
export function repeatSamples<R extends SimulatedRecording>(recording: R, times: number): R {
  return changed(recording, (force) => {
    for (let index = 0; index < force.length; index++) force[index] = force[index - (index % times)] ?? 0;
  });
}

/** A plate is zeroed anew in mid-file, or something is put on it. */
export function addStep<R extends SimulatedRecording>(
  recording: R,
  plate: number,
  from: number,
  newtons: number,
  to = Number.POSITIVE_INFINITY,
): R {
  const [first, end] = range(recording, from, to);
  return changed(
    recording,
    (force) => {
      for (let index = first; index < end; index++) force[index] = (force[index] ?? 0) + newtons;
    },
    plate,
  );
}

/** A wrong calibration of one plate, or of all. */
export function scaleForce<R extends SimulatedRecording>(recording: R, factor: number, plate?: number): R {
  return changed(
    recording,
    (force) => {
      for (let index = 0; index < force.length; index++) force[index] = factor * (force[index] ?? 0);
    },
    plate,
  );
}

/** Each of two plates also shows a part of the other. */
export function mixPlates<R extends SimulatedRecording>(recording: R, part: number): R {
  const [first, second] = recording.plates.map((each) => each.force);
  return changed(recording, (force, plate) => {
    const other = plate === 0 ? second : first;
    for (let index = 0; index < force.length; index++)
      force[index] = (force[index] ?? 0) + part * (other?.[index] ?? 0);
  });
}

/** From an instant on the two columns are exchanged. */
export function exchangePlatesFrom<R extends SimulatedRecording>(recording: R, from: number): R {
  const [start] = range(recording, from, Number.POSITIVE_INFINITY);
  const [first, second] = recording.plates.map((each) => each.force);
  return changed(recording, (force, plate) => {
    const other = plate === 0 ? second : first;
    for (let index = start; index < force.length; index++) force[index] = other?.[index] ?? 0;
  });
}

/** White noise on top for a while, each plate its own. */
export function addNoise<R extends SimulatedRecording>(
  recording: R,
  seed: number,
  newtons: number,
  from = 0,
  to = Number.POSITIVE_INFINITY,
): R {
  const random = createRandom(seed);
  const [first, end] = range(recording, from, to);
  return changed(recording, (force) => {
    for (let index = first; index < end; index++) force[index] = (force[index] ?? 0) + newtons * random.normal();
  });
}

/** A moving average over so many seconds: somebody smoothed before exporting. */
export function smoothForce<R extends SimulatedRecording>(recording: R, seconds: number): R {
  const half = Math.max(1, Math.round((seconds * recording.rateHz) / 2));
  return changed(recording, (force) => {
    const sums = new Float64Array(force.length + 1);
    for (let index = 0; index < force.length; index++) sums[index + 1] = (sums[index] ?? 0) + (force[index] ?? 0);
    for (let index = 0; index < force.length; index++) {
      const low = Math.max(0, index - half);
      const high = Math.min(force.length, index + half + 1);
      force[index] = ((sums[high] ?? 0) - (sums[low] ?? 0)) / (high - low);
    }
  });
}

/** Only a part of the recording; time begins anew. */
export function cutRecording(recording: SimulatedRecording, from: number, to: number): SimulatedRecording {
  const [first, end] = range(recording, from, to);
  return {
    rateHz: recording.rateHz,
    sampleCount: end - first,
    plates: recording.plates.map((each) => ({ ...each, force: each.force.slice(first, end) })),
  };
}

/** Recordings of the same plates and rate, one after the other. */
export function joinRecordings(recordings: readonly SimulatedRecording[]): SimulatedRecording {
  const first = recordings[0];
  if (first === undefined) throw new RangeError("There is nothing to join.");
  const sampleCount = recordings.reduce((sum, each) => sum + each.sampleCount, 0);
  return {
    rateHz: first.rateHz,
    sampleCount,
    plates: first.plates.map((plate, side) => {
      const force = new Float64Array(sampleCount);
      let start = 0;
      for (const each of recordings) {
        force.set(each.plates[side]?.force ?? [], start);
        start += each.sampleCount;
      }
      return { ...plate, force };
    }),
  };
}

/** A hump of force under one foot, a half sine wave: an early peak in a landing that the other foot does not have. */
export function addHump<R extends SimulatedRecording>(
  recording: R,
  plate: number,
  hump: { readonly from: number; readonly seconds: number; readonly newtons: number },
): R {
  const [first, end] = range(recording, hump.from, hump.from + hump.seconds);
  return changed(
    recording,
    (force) => {
      for (let index = first; index < end; index++) {
        const phase = (index / recording.rateHz - hump.from) / hump.seconds;
        force[index] = (force[index] ?? 0) + hump.newtons * Math.sin(Math.PI * phase);
      }
    },
    plate,
  );
}
