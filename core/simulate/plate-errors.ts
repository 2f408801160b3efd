import type { JumpOptions } from "./options.ts";
import type { Random } from "./random.ts";

/** The options that concern the plate rather than the athlete. */
export type PlateErrorOptions = Pick<
  JumpOptions,
  | "plateNoiseNewtons"
  | "plateOffsetsNewtons"
  | "plateDriftsNewtonsPerSecond"
  | "hum"
  | "clipNewtons"
  | "quantisationNewtons"
  | "signTurned"
  | "ringing"
>;

/**
 * Puts what a real plate adds on top of the physical force, in place: ringing after the given instants (scaled by the
 * plate's part of them), white noise, a constant offset, a linear drift, hum, the end of its range, the steps of its converter, a turned
 * sign. In this order, so that clipping and steps act on everything before them.
 */
export function addPlateErrors(
  force: Float64Array,
  plate: {
    readonly index: number;
    readonly rateHz: number;
    /** Instants that set the plate ringing, and by how much (0 to 1). */
    readonly strokes: readonly { readonly time: number; readonly part: number }[];
  },
  options: PlateErrorOptions,
  random: Random,
): void {
  const noise = options.plateNoiseNewtons ?? 0;
  const offset = options.plateOffsetsNewtons?.[plate.index] ?? 0;
  const drift = options.plateDriftsNewtonsPerSecond?.[plate.index] ?? 0;
  const hum = options.hum;
  // A golden part of a turn between plates, so that the hum of two plates neither adds up nor cancels.
  const humPhase = 2 * Math.PI * ((0.1 + 0.618 * plate.index) % 1);
  const clip = options.clipNewtons ?? Number.POSITIVE_INFINITY;
  const step = options.quantisationNewtons ?? 0;
  const sign = options.signTurned === true ? -1 : 1;
  const ringing = options.ringing;
  for (let index = 0; index < force.length; index++) {
    const time = index / plate.rateHz;
    let value = (force[index] ?? 0) + offset + drift * time;
    if (hum !== undefined) value += hum.newtons * Math.sin(2 * Math.PI * hum.frequencyHz * time + humPhase);
    if (ringing !== undefined) {
      for (const stroke of plate.strokes) {
        const since = time - stroke.time;
        if (since <= 0 || since > 20 * ringing.decaySeconds) continue;
        const swing = Math.exp(-since / ringing.decaySeconds) * Math.sin(2 * Math.PI * ringing.frequencyHz * since);
        value += ringing.newtons * stroke.part * swing;
      }
    }
    if (noise > 0) value += noise * random.normal();
    value = Math.min(Math.max(value, -clip), clip);
    if (step > 0) value = step * Math.round(value / step);
    force[index] = sign * value;
  }
}
