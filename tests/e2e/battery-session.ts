import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Limb } from "../../core/ground/limb.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { drawDropLanding, drawHops, drawSquatJump } from "../../core/simulate/draw-battery.ts";
import { drawDropJump } from "../../core/simulate/draw-drop.ts";
import type { BatteryBounds } from "../../core/simulate/draw-parts.ts";
import { simulateDropJump } from "../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../core/simulate/drop-landing.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../core/simulate/squat-jump.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../core/stated/session.ts";

interface Simulated {
  readonly rateHz: number;
  readonly sampleCount: number;
  readonly plates: readonly { readonly force: Float64Array }[];
}

interface BatteryFile {
  readonly entry: FileEntry;
  readonly recording: Simulated;
}

const massKg = 70;

const bounds = (limb: Limb): BatteryBounds => ({
  limb,
  plates: "two",
  kind: "noisy",
  massKg: [massKg, massKg],
  ratesHz: [1000],
});

const limbs: readonly Limb[] = ["both", "left", "right"];

/** One recording of every test and limb; the last says of itself to be another test than it is. */
function batteryFiles(): readonly BatteryFile[] {
  const files = limbs.flatMap((limb, at): readonly BatteryFile[] => {
    const drop = drawDropJump(701 + at, bounds(limb));
    const landing = drawDropLanding(711 + at, bounds(limb));
    const lead = limb === "both" ? ({ leadingLeg: "left" } as const) : {};
    return [
      {
        entry: { file: `squat-${limb}.csv`, test: "squatJump", limb },
        recording: simulateSquatJump(drawSquatJump(721 + at, bounds(limb))),
      },
      {
        entry: { file: `drop-${limb}.csv`, test: "dropJump", limb, dropHeightMetres: drop.boxHeightMetres, ...lead },
        recording: simulateDropJump({ ...drop, ...lead }),
      },
      {
        entry: { file: `hops-${limb}.csv`, test: "repeatedHops", limb },
        recording: simulateHops(drawHops(731 + at, bounds(limb))),
      },
      {
        entry: {
          file: `landing-${limb}.csv`,
          test: "dropLanding",
          limb,
          dropHeightMetres: landing.boxHeightMetres,
          ...lead,
        },
        recording: simulateDropLanding({ ...landing, ...lead }),
      },
    ];
  });
  const standing = { seed: 741, rateHz: 1000, massKg, limb: "both", plates: "two", jumpHeightMetres: 0.25 } as const;
  return [
    ...files,
    {
      entry: { file: "said-to-be-a-drop.csv", test: "dropJump", limb: "both" },
      recording: simulateCountermovementJump({ ...standing, swayMetres: 0.0005, plateNoiseNewtons: 1.5 }),
    },
  ];
}

/** Writes a session that holds every test into a new folder of this name, and returns its path. */
export function writeBatterySession(parent: string, name: string): string {
  const folder = join(parent, name);
  mkdirSync(folder);
  const files = batteryFiles();
  for (const { entry, recording } of files) writeFileSync(join(folder, entry.file), textOf(recording));
  const description: SessionDescription = {
    athlete: { code: "GH-99", name: "Nobody at All" },
    involved: "right",
    date: "2026-10-14",
    milestone: "every test",
    massKg,
    plates: [
      { column: "left", foot: "left" },
      { column: "right", foot: "right" },
    ],
    pain: 0,
    effusion: "none",
    simulated: true,
    files: files.map(({ entry }) => entry),
  };
  writeFileSync(join(folder, "session.json"), JSON.stringify(description));
  return folder;
}

function textOf({ rateHz, sampleCount, plates }: Simulated): string {
  const lines = Array.from({ length: sampleCount }, (_, at) =>
    [(at / rateHz).toFixed(3), ...plates.map(({ force }) => (force[at] ?? 0).toFixed(1))].join(","),
  );
  return `time (s),left (N),right (N)\n${lines.join("\n")}\n`;
}
