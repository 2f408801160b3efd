import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Limb } from "../../core/ground/limb.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { sharedFolder } from "../worked/worked-example.ts";
import type { PlainTrial } from "./plain-values.ts";

const standardGravity = 9.80665;

/** Any recording in memory as the oracle wants it. */
export function plainTrial(
  recording: {
    readonly rateHz: number;
    readonly plates: readonly { readonly limb: Limb; readonly force: ArrayLike<number> }[];
  },
  limb: Limb,
): PlainTrial {
  return {
    rateHz: recording.rateHz,
    plates: recording.plates.map((plate) => ({ limb: plate.limb, samples: Array.from(plate.force) })),
    limb,
    gravity: standardGravity,
  };
}

/** A worked example's columns, split at commas: the oracle reads nothing through the program's readers. */
export function plainWorkedExample(file: string): PlainTrial {
  const lines = readFileSync(join(sharedFolder, "worked-examples", file), "utf8")
    .trim()
    .split(/\r?\n/);
  const names = lines[0]!.split(",");
  const rows = lines.slice(1).map((line) => line.split(",").map(Number));
  const column = (word: string): number[] => {
    const at = names.findIndex((name) => name.toLowerCase().includes(word));
    return rows.map((row) => row[at]!);
  };
  return {
    rateHz: 1000,
    plates: [
      { limb: "left", samples: column("left") },
      { limb: "right", samples: column("right") },
    ],
    limb: "both",
    gravity: standardGravity,
  };
}

/** The same trial as the program would hold it after import. */
export function recordingOf({ rateHz, plates }: PlainTrial): SimulatedRecording {
  return {
    rateHz,
    sampleCount: plates[0]!.samples.length,
    plates: plates.map(({ limb, samples }) => ({ name: limb, limb, force: Float64Array.from(samples) })),
  };
}
