import type { JumpMotion } from "../events/jump-events.ts";
import type { ReadRecording } from "../recording/recording-as-read.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";

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
