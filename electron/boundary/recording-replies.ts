import type { OtherKind } from "../../core/recording/other-kinds.ts";
import type { PlateOutline } from "../../core/recording/outline-plate.ts";
import type { RecordingView } from "./workspace-view.ts";

/** A stretch of a file as text. */
export interface FileLines {
  /** Number of the first line given, from 1. */
  readonly first: number;
  readonly lines: readonly string[];
  /** Lines in the whole file. */
  readonly total: number;
}

/** The force of a whole file as it was understood, thinned out for drawing. */
export interface RecordingOutline {
  readonly plates: readonly PlateOutline[];
  readonly durationSeconds: number;
  /** The trials cut from it, by their seconds in the recording. */
  readonly trials: readonly { readonly trial: number; readonly from: number; readonly to: number }[];
}

/** What became of one file that was handed in. */
export interface TakenFile {
  /** The session it went to. */
  readonly folder: string;
  readonly outcome: RecordingView["outcome"] | "session" | "left aside";
  readonly message: string;
  /** What it is, where it is no recording and was left aside. */
  readonly kind?: OtherKind;
  /** Open recordings with the same bytes, elsewhere. */
  readonly sameAs: readonly string[];
}

/** Where a folder of a batch is now. */
export interface BatchPlace {
  readonly folder: string;
  readonly session: string;
  readonly message: string;
}
