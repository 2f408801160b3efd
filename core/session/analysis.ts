import type { JumpMotion } from "../events/jump-events.ts";
import type { Finding } from "../ground/finding.ts";
import type { InvolvedSide, Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { RecordingFile } from "../recording/file.ts";
import type { FileReading } from "../recording/file-reading.ts";
import type { Recording } from "../recording/recording.ts";
import type { LayoutAnswers } from "../recording/request.ts";
import type { SessionResult, TrialResult } from "../result/result.ts";
import type { Layout } from "../stated/layout.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import type { EarlierMass } from "./mass-since-last.ts";

/** What was stated outside the files (command line options); it outranks session.json. */
export interface StatedOptions {
  readonly test?: TestKind;
  readonly limb?: Limb;
  readonly layout?: LayoutAnswers;
  readonly massKg?: number;
  readonly dropHeightMetres?: number;
  readonly leadingLeg?: Side;
  readonly involved?: InvolvedSide;
  /** Trials of the session kept in means although their weight differs. */
  readonly keep?: readonly KeptTrial[];
  /** Who states that what was not asked of the cautions is not known. */
  readonly cautionsNotKnownBy?: string;
  /** Local gravity in m/s², stated or from latitude and altitude. */
  readonly gravity?: number;
}

/** A trial that a person keeps; every trial of the file where none is named. */
export interface KeptTrial {
  /** Relative to its session's folder, forward slashes. */
  readonly file: string;
  /** Counted from 1. */
  readonly trial?: number;
}

/** A file that could not be read at all (a dangling link, no permission); it becomes a refused trial. */
export interface UnreadableFile {
  /** Relative to its session's folder, forward slashes. */
  readonly path: string;
  /** A plain clause that completes "… because it": "points to a file that is not there". */
  readonly reason: string;
}

/** One folder of recordings, as bytes. */
export interface SessionInput {
  /** Relative to the argument it was found under; "" for loose files. */
  readonly folder: string;
  readonly files: readonly RecordingFile[];
  readonly unreadable: readonly UnreadableFile[];
  readonly description: SessionDescription;
  /** Findings made while reading session.json. */
  readonly descriptionFindings: readonly Finding[];
  readonly stated: StatedOptions;
  /** Saved layouts; each answers for every file of its shape what was not stated for the file. */
  readonly layouts?: readonly Layout[];
  /** Body mass of the athlete's last session before this one; absent where it is not known. */
  readonly earlierMass?: EarlierMass;
}

/** What is said about a session: everything but its files. */
export type SessionStatements = Omit<SessionInput, "files" | "unreadable">;

/** A file as it was read, before any trial is looked at. */
export interface ReadRecording {
  readonly file: RecordingFile;
  /** What was understood; absent when the file is neither table nor C3D. */
  readonly reading?: FileReading | undefined;
  /** Absent when the file was refused. */
  readonly recording?: Recording | undefined;
  /** Refusals and warnings about the file as a whole. */
  readonly findings: readonly Finding[];
}

/** A session's result with the recordings behind it, so that a screen can draw them. */
export interface SessionAnalysis {
  readonly result: SessionResult;
  readonly recordings: ReadonlyMap<string, ReadRecording>;
  /** The motion behind every trial that has one, by `trialKey`; made when it is asked for where curves are not kept. */
  readonly trials: ReadonlyMap<string, { readonly jump?: AnalyzedJump | undefined }>;
}

/** What a screen needs to draw a trial that was analysed. */
export interface AnalyzedJump {
  readonly prepared: PreparedRecording;
  readonly cut: JumpCut;
  readonly jump: JumpMotion;
  /** The plate that alone carried it, by its place from 1; absent on one plate and where both carried. */
  readonly loadedPlate?: number;
}

/** Names a trial within its session. */
export function trialKey(file: string, trial: number): string {
  return `${file} ${trial}`;
}

/** Curves of one trial for drawing. All arrays span `startSample` to the end of the trial, one value a sample. */
export interface TrialTrace {
  readonly trial: TrialResult;
  readonly rateHz: number;
  readonly startSample: number;
  /** Total force in newtons, plate zero removed. */
  readonly total: Float64Array;
  /** Force of each plate; one entry where one plate was used. */
  readonly plates: readonly { readonly name: string; readonly limb: Limb; readonly force: Float64Array }[];
  /** Total force after the display filter, newtons. */
  readonly filtered: Float64Array;
  /** Metres a second, upward positive; NaN before the weighing window starts. Empty when the trial has no weight. */
  readonly velocity: Float64Array;
  /** Metres from the position at onset, of drop tests and hops in the final standing. Empty when the trial has none. */
  readonly displacement: Float64Array;
  /** Watts. Empty when the trial has no velocity. */
  readonly power: Float64Array;
  readonly phases: readonly TrialPhase[];
}

/** One phase of a trial, from event to event. */
export interface TrialPhase {
  readonly name: "weighing" | "unweighting" | "braking" | "propulsion" | "flight" | "landing" | "contact";
  readonly startSeconds: number;
  readonly endSeconds: number;
}
