import { expect, test } from "vitest";
import { analyzeSession } from "../../../../core/analyze.ts";
import type { TrialResult } from "../../../../core/result/trial-result.ts";
import type { SessionInput } from "../../../../core/session/session-input.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";
import { simulateCountermovementJump } from "../../../../core/simulate/countermovement-jump.ts";
import { standingFile } from "../../bytes/c3d/standing-file.ts";
import { writeC3d } from "../../bytes/c3d/write-c3d.ts";

const jump = simulateCountermovementJump({
  seed: 101,
  rateHz: 1000,
  massKg: 68,
  limb: "both",
  plates: "two",
  jumpHeightMetres: 0.25,
  swayMetres: 0.0005,
  plateNoiseNewtons: 1.5,
});

/** A force in halves of a newton, so that counts and decimals hold the very same number. */
const halves = (force: number): number => Math.round(2 * force) / 2;

const samplesPerFrame = 10;
const frames = Math.floor(jump.sampleCount / samplesPerFrame);
const forceAt = (plate: number, sample: number): number => halves(jump.plates[plate]?.force[sample] ?? 0);

function analysed(path: string, bytes: Uint8Array): TrialResult {
  const input: SessionInput = {
    folder: "",
    files: [{ path, bytes, sha256: path }],
    unreadable: [],
    description: {},
    descriptionFindings: [],
    stated: { test: "countermovementJump", limb: "both" },
  };
  const [trial] = analyzeSession(input, defaultSettings).result.trials;
  if (trial === undefined) throw new Error(`${path} holds no trial.`);
  return trial;
}

test.each([
  ["Intel", "integer", 2, false],
  ["DEC", "float", 3, false],
  ["SGI", "integer", 1, true],
] as const)(
  "a simulated jump in C3D (%s, %s, type %d, action %s) has the measures and events of the same jump as text, digit for digit",
  (byteOrder, dataType, type, holdsAction) => {
    const rows = Array.from({ length: frames * samplesPerFrame }, (_, sample) =>
      [(sample / 1000).toFixed(3), forceAt(0, sample).toFixed(1), forceAt(1, sample).toFixed(1)].join(","),
    );
    const text = analysed("jump.csv", new TextEncoder().encode(`time (s),left (N),right (N)\n${rows.join("\n")}\n`));
    const platforms = [0, 1].map((plate) => ({ type, upward: (sample: number) => forceAt(plate, sample) }));
    const file = standingFile({ byteOrder, dataType, frames, samplesPerFrame, platforms, holdsAction });
    const c3d = analysed("jump.c3d", writeC3d(file));
    expect(text.status).toBe("analysed");
    expect(text.measures.length).toBeGreaterThan(20);
    expect(c3d.status).toBe("analysed");
    expect(c3d.measures).toEqual(text.measures);
    expect(c3d.events).toEqual(text.events);
    expect(c3d.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
      ["force platform 1", "left", "unproved"],
      ["force platform 2", "right", "unproved"],
    ]);
  },
);
