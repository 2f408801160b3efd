import type { Limb } from "../../core/ground/limb.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import type { Measure } from "../../core/measures/measure.ts";
import type { AskedAnswer } from "../../core/protocol/asked-answers.ts";
import type { SessionProgress } from "../../core/protocol/session-progress.ts";
import type { NextRecordings } from "./stated-changes.ts";

/** One trial of the newest recording. */
export interface WatchedTrial {
  readonly trial: number;
  readonly test?: TestKind;
  readonly limb?: Limb;
  readonly practice: boolean;
  /** In the place of the limb while nobody knows which leg it was: the plate that carried it, from 1. */
  readonly plate?: number;
  readonly counts: boolean;
  /** It counts once what `questions` ask of it is answered. */
  readonly waits: boolean;
  /** Why it does not count, or what to look at although it does; empty where there is nothing to say. */
  readonly reason: string;
  /** What to do about it; empty where there is nothing to do. */
  readonly action: string;
  /** True where what stands in the way is mended by leaving the recording out. */
  readonly leaveOut: boolean;
  readonly measures: readonly Measure[];
  /** Whether to repeat it, within the protocol; empty without a protocol. */
  readonly next: string;
  /** What the trace looks like, where nobody has said which test it is. */
  readonly looksLike?: { readonly test: TestKind; readonly reason: string };
}

/** What everybody in the room may read while the register is locked: numbers alone. */
export interface WatchCounts {
  /** Recordings taken in since the watch began. */
  readonly taken: number;
  /** Recordings that came in since it was locked; they are taken in when it is unlocked. */
  readonly waiting: number;
  /** Files still being written. */
  readonly writing: number;
  /** Files of the folder that were not taken in. */
  readonly leftAside: number;
}

/**
 * A watched folder as the screen shows it during the session. While the register is locked it names nothing: no folder,
 * file, session or test.
 */
export interface WatchView {
  readonly state: "off" | "watching" | "unreachable";
  /** The folder as it was given; "" while off. */
  readonly folder: string;
  /** Rises with every change, so that a screen knows when to read the workspace again. */
  readonly revision: number;
  /** Files still being written. */
  readonly writing: readonly string[];
  /** Files of the folder that were not taken in, in sentences: what is no recording, and what is too large. */
  readonly notTaken: readonly string[];
  /** Recordings taken in since the watch began. */
  readonly taken: number;
  readonly next: NextRecordings;
  /** While the register is locked, where the person wants numbers shown then; absent otherwise. */
  readonly counts?: WatchCounts;
  /** The newest recording; absent before the first. */
  readonly newest?: {
    /** The session it belongs to. */
    readonly session: string;
    readonly file: string;
    readonly trials: readonly WatchedTrial[];
    /** Why the file could not be taken in at all; empty where it was. */
    readonly problem: string;
  };
  /** What is asked so that trials of the newest recording's session count; absent before the first. */
  readonly questions?: readonly AskedAnswer[];
  /** Weights of the newest recording's session that no one person can have, in a sentence; absent where none are. */
  readonly anotherAthlete?: string;
  /** The newest recording's session against its protocol, without what is missing; absent without a protocol. */
  readonly progress?: Omit<SessionProgress, "missing">;
  /**
   * Where the cautions stand, in no words of their own, because a board is read by everybody; absent before there is a
   * session.
   */
  readonly cautions?: {
    /** The session they belong to. */
    readonly session: string;
    /** What is to be asked before more jumps: everything, or what can have changed. */
    readonly due: readonly ("session" | "change")[];
    /** True where something other than a missing answer closes every jump. */
    readonly closed: boolean;
  };
}
