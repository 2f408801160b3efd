import { analyzeSession } from "../../../core/analyze.ts";
import type { Limb, Side } from "../../../core/ground/limb.ts";
import { sha256Hex } from "../../../core/ground/sha256.ts";
import type { SessionAnalysis } from "../../../core/session/session-analysis.ts";
import { defaultSettings, type Settings } from "../../../core/settings/settings.ts";
import { type SimulatedRecording, simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { createRandom, type Random } from "../../../core/simulate/random.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import type { StatedOptions } from "../../../core/stated/stated-options.ts";

/** Gain of each plate: what it reads over what acts on it. */
export interface PlateGainOfEach {
  readonly left: number;
  readonly right: number;
}

/** One simulated recording with the truth it was made from. */
export interface SimulatedTrial {
  readonly file: string;
  readonly limb: Limb;
  readonly bytes: Uint8Array;
  /** Rise of the centre of mass, v²/2g. */
  readonly heightMetres: number;
  readonly massKg: number;
}

/** An athlete as far as a session needs one. */
export interface SimulatedAthlete {
  readonly seed: number;
  readonly massKg: number;
  /** Mean single-leg heights. */
  readonly heights: Readonly<Record<Side, number>>;
  /** Mean height of single-leg drop jumps; absent: none are made. */
  readonly dropHeights?: Readonly<Record<Side, number>>;
  /** Trials of each kind and limb. */
  readonly trials: number;
  readonly twoLegTrials: number;
  readonly plateNoiseNewtons?: number;
  /** Drop jumps end so soon after their last touchdown: too soon, and nobody stands still. */
  readonly dropsEndAfterSeconds?: number;
}

const rateHz = 1000;
const box = 0.2;

/** The recordings of one athlete's session on two plates with these gains; two legs, each leg, each leg off a box. */
export function simulateSession(athlete: SimulatedAthlete, gains: PlateGainOfEach, prefix = ""): SimulatedTrial[] {
  const random = createRandom(athlete.seed);
  const made: SimulatedTrial[] = [];
  const add = (kind: string, limb: Limb, number: number, recording: SimulatedRecording, heightMetres: number): void => {
    made.push({
      file: `${prefix}${kind}-${limb}-${number}.csv`,
      limb,
      bytes: written(recording, gains),
      heightMetres,
      massKg: athlete.massKg,
    });
  };
  for (let number = 1; number <= athlete.twoLegTrials; number += 1) {
    const height = 0.28 * (1 + 0.03 * random.normal());
    add(
      "countermovement",
      "both",
      number,
      simulateCountermovementJump(standing(athlete, random, "both", height)),
      height,
    );
  }
  for (const limb of ["left", "right"] as const) {
    for (let number = 1; number <= athlete.trials; number += 1) {
      const height = athlete.heights[limb] * (1 + 0.05 * random.normal());
      add(
        "countermovement",
        limb,
        number,
        simulateCountermovementJump(standing(athlete, random, limb, height)),
        height,
      );
    }
    if (athlete.dropHeights === undefined) continue;
    for (let number = 1; number <= athlete.trials; number += 1) {
      const height = athlete.dropHeights[limb] * (1 + 0.05 * random.normal());
      const drop = simulateDropJump({
        ...common(athlete, random, limb),
        boxHeightMetres: box,
        dropHeightEffectiveMetres: 0.17 * (1 + 0.02 * random.normal()),
        jumpHeightMetres: height,
        contactSeconds: 0.33 * (1 + 0.03 * random.normal()),
        quietSecondsAfter: 2.5,
        ...(athlete.dropsEndAfterSeconds === undefined
          ? {}
          : { endsAfterTouchdownSeconds: athlete.dropsEndAfterSeconds }),
      });
      add("drop-jump", limb, number, drop, height);
    }
  }
  return made;
}

function common({ massKg, plateNoiseNewtons = 1 }: SimulatedAthlete, random: Random, limb: Limb) {
  return {
    seed: 1 + 2 * Math.floor(1e8 * random.uniform()),
    rateHz,
    massKg,
    limb,
    plates: "two",
    swayMetres: random.between(0.0003, 0.0008),
    plateNoiseNewtons,
  } as const;
}

function standing(athlete: SimulatedAthlete, random: Random, limb: Limb, jumpHeightMetres: number) {
  return {
    ...common(athlete, random, limb),
    jumpHeightMetres,
    quietSecondsBefore: random.between(1.5, 2.5),
    quietSecondsAfter: random.between(1, 2),
    ...(limb === "both" ? { rightShares: { standing: 0.49, braking: 0.48, propulsion: 0.485, landing: 0.48 } } : {}),
  };
}

/** The recording as a table of two force columns. */
function written({ plates, sampleCount }: SimulatedRecording, gains: PlateGainOfEach): Uint8Array {
  const lines = ["time (s),left (N),right (N)"];
  for (let index = 0; index < sampleCount; index += 1) {
    const cells = plates.map(({ limb, force }) => ((force[index] ?? 0) * gains[limb as Side]).toFixed(2));
    lines.push(`${(index / rateHz).toFixed(3)},${cells.join(",")}`);
  }
  return new TextEncoder().encode(`${lines.join("\n")}\n`);
}

/** A session analysed as the program does. */
export function analyzeSimulated(
  trials: readonly SimulatedTrial[],
  description: SessionDescription = {},
  stated: StatedOptions = {},
  settings: Settings = defaultSettings,
): SessionAnalysis {
  return analyzeSession(
    {
      folder: "",
      files: trials.map(({ file, bytes }) => ({ path: file, bytes, sha256: sha256Hex(file) })),
      unreadable: [],
      description: {
        involved: "right",
        dropHeightMetres: box,
        cautions: { answers: [{ notKnown: true, by: "the simulator" }] },
        plates: [
          { column: "left", foot: "left" },
          { column: "right", foot: "right" },
        ],
        ...description,
      },
      descriptionFindings: [],
      stated,
    },
    settings,
  );
}
