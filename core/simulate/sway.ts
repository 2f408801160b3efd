import type { Displacement, Jet } from "./displacement.ts";
import { quinticStep } from "./displacement.ts";
import type { Random } from "./random.ts";

/** One sinusoid of the sway. */
export interface SwayComponent {
  readonly frequencyHz: number;
  readonly amplitudeMetres: number;
  readonly phaseRadians: number;
}

/** Sway of quiet standing before it is gated. */
export interface Sway {
  readonly components: readonly SwayComponent[];
  /** Amplitude falls with this power of frequency; at least 2. */
  readonly fallPower: number;
  readonly displacementRmsMetres: number;
  readonly velocityRmsMetresPerSecond: number;
}

/** The spectrum sway is drawn from; frequencies in hertz, velocity RMS in m/s. */
export const swaySpectrum = {
  componentCount: 12,
  bandHz: [0.2, 6],
  /** Amplitude falls with frequency to a power drawn between these. */
  fallPowers: [2, 2.6],
  /** The lowest frequency is drawn this many decades above the lower end of the band at most, evenly in its logarithm. */
  lowestDecades: 0.8,
  velocityRms: [0.001, 0.006],
} as const;

const { componentCount, bandHz, velocityRms, fallPowers, lowestDecades } = swaySpectrum;

/**
 * Draws sway as a sum of sinusoids between 0.2 and 6 Hz (or in another band) whose amplitude falls with the square of
 * frequency or faster, of the wanted displacement RMS (0.2 to 2 mm) and a velocity RMS between 1 and 6 mm/s: the lowest
 * frequency is drawn again until the velocity lies there.
 * @throws RangeError outside 0.2 to 2 mm.
 */
export function drawSway(
  random: Random,
  displacementRmsMetres: number,
  [lowestFrequencyHz, highestFrequencyHz]: readonly [number, number] = bandHz,
): Sway {
  if (displacementRmsMetres < 0.0002 || displacementRmsMetres > 0.002) {
    throw new RangeError(`Sway of ${displacementRmsMetres} m lies outside 0.0002 to 0.002 m.`);
  }
  // A narrower band keeps as large a part of its logarithm for the lowest frequency.
  const narrower = Math.log10(highestFrequencyHz / lowestFrequencyHz) / Math.log10(bandHz[1] / bandHz[0]);
  const decades = lowestDecades * narrower;
  for (let attempt = 0; attempt < 1000; attempt++) {
    const fallPower = random.between(...fallPowers);
    const lowest = lowestFrequencyHz * 10 ** random.between(0, decades);
    const raw = Array.from({ length: componentCount }, (_, index) => {
      const frequencyHz = lowest * (highestFrequencyHz / lowest) ** ((index + random.uniform()) / componentCount);
      return { frequencyHz, amplitude: frequencyHz ** -fallPower, phaseRadians: 2 * Math.PI * random.uniform() };
    });
    const scale = displacementRmsMetres / Math.sqrt(raw.reduce((sum, each) => sum + each.amplitude ** 2 / 2, 0));
    const components = raw.map(({ frequencyHz, amplitude, phaseRadians }) => ({
      frequencyHz,
      amplitudeMetres: scale * amplitude,
      phaseRadians,
    }));
    const velocityRmsMetresPerSecond = Math.sqrt(
      components.reduce((sum, each) => sum + (2 * Math.PI * each.frequencyHz * each.amplitudeMetres) ** 2 / 2, 0),
    );
    if (velocityRmsMetresPerSecond >= velocityRms[0] && velocityRmsMetresPerSecond <= velocityRms[1]) {
      return { components, fallPower, displacementRmsMetres, velocityRmsMetresPerSecond };
    }
  }
  throw new RangeError(`No sway of ${displacementRmsMetres} m has a velocity between 1 and 6 mm/s.`);
}

/** When the sway is there: it fades out over the first stretch and comes back over the second. */
export interface SwayGate {
  readonly fadeStart: number;
  readonly fadeSeconds: number;
  readonly returnStart: number;
  readonly returnSeconds: number;
}

/**
 * Sway as a displacement on the recording's clock. With gates (in rising order) it is full in quiet standing, fades out during the push
 * by a quintic step, is exactly zero from before take-off until the landing has come to rest, and comes back while the
 * body rises to standing. So nothing moves the centre of mass in flight but gravity, and the wanted take-off velocity
 * is met exactly. Derivatives are those of the product, so force and motion agree to rounding.
 */
export function swayDisplacement(sway: Sway, ...gates: readonly SwayGate[]): Displacement {
  const gateAt = (time: number): Jet => {
    let open = 1;
    let first = 0;
    let second = 0;
    for (const gate of gates) {
      if (isFullyOpen(gate, time)) continue;
      const fade = quinticStep(time, gate.fadeStart, gate.fadeSeconds);
      const back = quinticStep(time, gate.returnStart, gate.returnSeconds);
      open = open - fade[0] + back[0];
      first += back[1] - fade[1];
      second += back[2] - fade[2];
    }
    return [open, first, second];
  };
  const waves = sway.components.map(({ frequencyHz, amplitudeMetres, phaseRadians }) => ({
    angular: 2 * Math.PI * frequencyHz,
    amplitudeMetres,
    phaseRadians,
  }));
  const position = (time: number): number => {
    let sum = 0;
    for (const each of waves) sum += each.amplitudeMetres * Math.sin(each.angular * time + each.phaseRadians);
    return sum;
  };
  const velocity = (time: number): number => {
    let sum = 0;
    for (const each of waves) {
      sum += each.angular * (each.amplitudeMetres * Math.cos(each.angular * time + each.phaseRadians));
    }
    return sum;
  };
  const acceleration = (time: number): number => {
    let sum = 0;
    for (const each of waves) {
      const sine = each.amplitudeMetres * Math.sin(each.angular * time + each.phaseRadians);
      sum -= each.angular * each.angular * sine;
    }
    return sum;
  };
  const isGone = (time: number): boolean =>
    gates.some((gate) => time >= gate.fadeStart + gate.fadeSeconds && time <= gate.returnStart);
  /** Nothing where the sway is gone, and alone where it is whole: its other derivatives need not be found there. */
  const read = (time: number, alone: (time: number) => number, gated: (time: number, gate: Jet) => number): number => {
    if (isGone(time)) return 0;
    return gates.every((gate) => isFullyOpen(gate, time)) ? alone(time) : gated(time, gateAt(time));
  };
  return {
    position: (time) => read(time, position, (at, g) => g[0] * position(at)),
    velocity: (time) => read(time, velocity, (at, g) => g[1] * position(at) + g[0] * velocity(at)),
    acceleration: (time) =>
      read(time, acceleration, (at, g) => g[2] * position(at) + 2 * g[1] * velocity(at) + g[0] * acceleration(at)),
    breaks: gates.flatMap((gate) => [
      gate.fadeStart,
      gate.fadeStart + gate.fadeSeconds,
      gate.returnStart,
      gate.returnStart + gate.returnSeconds,
    ]),
  };
}

/** Before it begins to close, or once it is wide open again. */
function isFullyOpen(gate: SwayGate, time: number): boolean {
  return time <= gate.fadeStart || time >= gate.returnStart + gate.returnSeconds;
}
