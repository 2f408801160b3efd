import type { Limb } from "../ground/limb.ts";
import type { RecordingOptions } from "./act.ts";
import type { JumpOptions } from "./options.ts";
import type { Random } from "./random.ts";
import { createRandom } from "./random.ts";

/** Bounds of what is drawn; the tables of accuracy are made over these. */
export interface BatteryBounds {
  readonly limb: Limb;
  readonly plates: "one" | "two";
  /** `clean`: no noise, no sway. `noisy`: plate noise of 1.5 N and sway of 0.4 to 1.5 mm. */
  readonly kind: "clean" | "noisy";
  /** `straight`: touchdowns begin as straight lines of 10 to 30 kN/s. Absent: straight or curved, 10 to 100 kN/s. */
  readonly edges?: "straight";
  readonly massKg?: readonly [number, number];
  readonly ratesHz?: readonly number[];
}

const masses = [45, 120] as const;
const rates = [500, 600, 1000, 1200, 2000] as const;
const attempts = 500;

/** Draws until a combination is plausible and some force law can make it, so every seed gives one. */
export function firstPlausible<Options>(
  seed: number,
  draw: (random: Random) => Options,
  isPlausible: (options: Options) => boolean,
): Options {
  const random = createRandom(seed);
  for (let attempt = 0; attempt < attempts; attempt++) {
    const options = draw(random);
    try {
      if (isPlausible(options)) return options;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  throw new RangeError(`Nothing possible within these bounds for seed ${seed}.`);
}

/** Mass, rate, plates, noise and sway. */
export function drawRecording(seed: number, bounds: BatteryBounds, random: Random): RecordingOptions {
  const [lowMass, highMass] = bounds.massKg ?? masses;
  return {
    seed,
    rateHz: random.pick(bounds.ratesHz ?? rates),
    massKg: random.between(lowMass, highMass),
    limb: bounds.limb,
    plates: bounds.plates,
    ...(bounds.kind === "clean" ? {} : { plateNoiseNewtons: 1.5, swayMetres: random.between(0.0004, 0.0015) }),
  };
}

/** Shares of two legs and how far apart they leave and land; nothing for one leg. */
export function drawLimbs(
  bounds: BatteryBounds,
  random: Random,
): {
  readonly shares: Pick<JumpOptions, "rightShares">;
  readonly differences: Pick<JumpOptions, "limbTakeoffDifferenceSeconds" | "limbTouchdownDifferenceSeconds">;
} {
  if (bounds.limb !== "both") return { shares: {}, differences: {} };
  const share = (): number => random.between(0.42, 0.57);
  return {
    shares: {
      rightShares: { standing: random.between(0.47, 0.53), braking: share(), propulsion: share(), landing: share() },
    },
    differences: {
      limbTakeoffDifferenceSeconds: random.between(-0.006, 0.006),
      limbTouchdownDifferenceSeconds: random.between(-0.003, 0.003),
    },
  };
}

/** The value moved into the bounds. */
export function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
