import type { RecordingOptions } from "../../../core/simulate/act.ts";
import type { Random } from "../../../core/simulate/random.ts";

/** What a plate and its electronics add, and the sampling rates they are drawn from. */
export interface Condition {
  readonly name: string;
  /** Absent: every rate the simulator draws, 500 to 2000 Hz. */
  readonly ratesHz?: readonly number[];
  /** Drawn anew for each trial; outranks what the simulator draws. */
  readonly plate: (random: Random) => Partial<RecordingOptions>;
}

const quietNoiseNewtons = 1.5;

function ringing(random: Random): NonNullable<RecordingOptions["ringing"]> {
  return {
    newtons: random.between(15, 60),
    frequencyHz: random.between(60, 180),
    decaySeconds: random.between(0.008, 0.025),
  };
}

function hum(random: Random): NonNullable<RecordingOptions["hum"]> {
  return { newtons: random.between(8, 15), frequencyHz: 50 };
}

function maybe(random: Random, chance: number): boolean {
  return random.uniform() < chance;
}

/** Good trials: ordinary plates, each with an offset, a small drift or a converter's steps as plates have them. */
export const goodCondition: Condition = {
  name: "good trials, 500 to 2000 Hz",
  plate: (random) => ({
    plateNoiseNewtons: random.between(0.3, 2.5),
    plateOffsetsNewtons: [random.between(-25, 25), random.between(-25, 25)],
    ...(maybe(random, 0.3)
      ? { plateDriftsNewtonsPerSecond: [random.between(-0.05, 0.05), random.between(-0.05, 0.05)] }
      : {}),
    ...(maybe(random, 0.5) ? { quantisationNewtons: random.between(0.2, 1.5) } : {}),
  }),
};

/** Conditions under which a measure must be right within its uncertainty, or warned of. */
export const accuracyConditions: readonly Condition[] = [
  { name: "1000 Hz", ratesHz: [1000], plate: () => ({ plateNoiseNewtons: quietNoiseNewtons }) },
  { name: "500 Hz", ratesHz: [500], plate: () => ({ plateNoiseNewtons: quietNoiseNewtons }) },
  { name: "200 Hz", ratesHz: [200], plate: () => ({ plateNoiseNewtons: quietNoiseNewtons }) },
  { name: "noise of 8 N", ratesHz: [1000], plate: () => ({ plateNoiseNewtons: 8 }) },
  {
    name: "hum of 8 to 15 N",
    ratesHz: [1000],
    plate: (random) => ({ plateNoiseNewtons: quietNoiseNewtons, hum: hum(random) }),
  },
  {
    name: "ringing of 15 to 60 N",
    ratesHz: [1000],
    plate: (random) => ({ plateNoiseNewtons: quietNoiseNewtons, ringing: ringing(random) }),
  },
  {
    name: "mixture",
    ratesHz: [200, 250, 400, 500, 1000, 2000],
    plate: (random) => ({
      plateNoiseNewtons: random.between(0.5, 8),
      plateOffsetsNewtons: [random.between(-25, 25), random.between(-25, 25)],
      ...(maybe(random, 0.4) ? { hum: hum(random) } : {}),
      ...(maybe(random, 0.4) ? { ringing: ringing(random) } : {}),
      ...(maybe(random, 0.4) ? { quantisationNewtons: random.between(0.2, 3) } : {}),
    }),
  },
];
