import type { Dialect } from "../../../../build/sample-traces/write-delimited.ts";
import { commaDialect, writeDelimited } from "../../../../build/sample-traces/write-delimited.ts";
import type { RecordedActs } from "../../../../core/simulate/act.ts";
import type { SimulatedJump, SimulatedRecording } from "../../../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../../../core/simulate/countermovement-jump.ts";
import type { SimulatedDropJump } from "../../../../core/simulate/drop-jump.ts";
import { simulateDropJump } from "../../../../core/simulate/drop-jump.ts";
import type { DropJumpOptions } from "../../../../core/simulate/drop-options.ts";
import type { JumpOptions } from "../../../../core/simulate/options.ts";
import { createRandom } from "../../../../core/simulate/random.ts";
import type { FileEntry } from "../../../../core/stated/file-entry.ts";

/** One file as the program gets it. */
export interface FaultyFile {
  readonly text: string;
  /** What `session.json` says of it. */
  readonly said: Pick<FileEntry, "test" | "limb" | "dropHeightMetres" | "leadingLeg">;
  /** The body mass entered for the session, where the fault can only be seen against it. */
  readonly massKg?: number;
}

/** A kind of bad trial, and one near it that is sound (or sound enough to be analysed without this fault). */
export interface FaultyKind {
  readonly kind: string;
  readonly fault: string;
  readonly nearMiss: string;
  readonly bad: (seed: number) => FaultyFile;
  readonly near: (seed: number) => FaultyFile;
}

export type Said = FaultyFile["said"];
export const saidJump: Said = { test: "countermovementJump", limb: "both" };
export const saidSingle: Said = { test: "countermovementJump", limb: "left" };
export const saidDrop: Said = { test: "dropJump", limb: "both", dropHeightMetres: 0.3, leadingLeg: "left" };
export const saidSquat: Said = { test: "squatJump", limb: "both" };
export const saidHops: Said = { test: "repeatedHops", limb: "both" };

/** Mass, sway and noise of an athlete who differs with the seed; plates at 1000 Hz. */
export function athlete(seed: number) {
  const random = createRandom(seed ^ 0x1f83d9ab);
  return {
    seed,
    rateHz: 1000,
    massKg: random.between(50, 105),
    limb: "both",
    plates: "two",
    swayMetres: random.between(0.0004, 0.001),
    plateNoiseNewtons: 1.2,
    quietSecondsAfter: random.between(2.5, 2.8),
  } as const;
}

/** A sound two-leg countermovement jump on two plates, changed as asked. */
export function jumpOf(seed: number, changes: Partial<JumpOptions> = {}): SimulatedJump {
  const random = createRandom(seed ^ 0x5be0cd19);
  return simulateCountermovementJump({
    ...athlete(seed),
    jumpHeightMetres: random.between(0.2, 0.36),
    quietSecondsBefore: random.between(2.1, 2.4),
    ...changes,
  });
}

/** A sound single-leg countermovement jump of the left leg on two plates. */
export function singleOf(seed: number, changes: Partial<JumpOptions> = {}): SimulatedJump {
  const random = createRandom(seed ^ 0x5be0cd19);
  return jumpOf(seed, {
    limb: "left",
    jumpHeightMetres: random.between(0.1, 0.17),
    timeToTakeoffSeconds: random.between(0.85, 0.95),
    ...changes,
  });
}

/** A sound two-leg drop jump from 0.30 m on two plates. */
export function dropOf(seed: number, changes: Partial<DropJumpOptions> = {}): SimulatedDropJump {
  const random = createRandom(seed ^ 0x428a2f98);
  return simulateDropJump({
    ...athlete(seed),
    emptySecondsBefore: random.between(0.8, 1.2),
    boxHeightMetres: 0.3,
    dropHeightEffectiveMetres: random.between(0.255, 0.285),
    jumpHeightMetres: random.between(0.18, 0.3),
    contactSeconds: random.between(0.19, 0.235),
    leadingLeg: "left",
    ...changes,
  });
}

/** The recording as comma-separated text with what is said about it. */
export function written(
  recording: SimulatedRecording | RecordedActs<unknown>,
  said: Said,
  dialect: Partial<Dialect> = {},
): FaultyFile {
  return { text: writeDelimited(recording, { ...commaDialect, ...dialect }), said };
}

/** The same file in a session whose body mass was entered, to the nearest half kilogram. */
export function withMass(file: FaultyFile, massKg: number): FaultyFile {
  return { ...file, massKg: Math.round(2 * massKg) / 2 };
}

/** The same file with its lines changed; line 0 is the header. */
export function withLines(file: FaultyFile, change: (lines: readonly string[]) => readonly string[]): FaultyFile {
  return { ...file, text: change(file.text.split("\n")).join("\n") };
}
